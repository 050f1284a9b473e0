using System.Globalization;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Tides;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Shell.Maps;
using NodaTime;

namespace Foreshore.Guide.Tides;

/// <summary>What speaks against a station before it is stored, in words ready to print. Nothing of it forbids storing it.</summary>
internal static class StationDoubts
{
    /// <summary>The coarse coast is good to a kilometre; a gauge ten from it stands on no open shore that is drawn.</summary>
    private const double ShoreMetres = 10_000;

    /// <summary>A tide may fall this much below a datum that is meant as its lowest, by years of mean sea level: mine.</summary>
    private const double UnderLowestMetres = 0.3;

    private static readonly Duration SoonOver = Duration.FromDays(60);

    /// <summary>What most of a tide is made of anywhere on Earth: common practice, no source.</summary>
    private static readonly string[] Principal = ["M2", "S2", "N2", "K2", "K1", "O1", "P1", "Q1"];

    /// <param name="tide">The station's.</param>
    /// <param name="places">The guide's places; none is an answer too.</param>
    /// <param name="year">Highest and lowest of the current year; null for a table that does not hold it.</param>
    /// <param name="zone">Of the times printed.</param>
    /// <param name="now">The present.</param>
    public static IReadOnlyList<string> Of(PlaceTide tide, IReadOnlyList<(string Name, Position Position)> places, TideYear? year, DateTimeZone zone, Instant now) =>
        [.. Where(tide.Station, places), .. tide.Source is TableTide table ? Table(table, zone, now) : Constituents(tide.Station), .. Heights(tide.Station, year)];

    private static IEnumerable<string> Where(TideStation station, IReadOnlyList<(string Name, Position Position)> places)
    {
        var nearest = places.Select(place => (place.Name, Geodesic.Between(place.Position, station.Position).Metres)).OrderBy(one => one.Metres).FirstOrDefault();
        if (nearest is (not null, > NearStation.MostMetres))
            yield return $"It lies {PlaceWords.Distance(nearest.Metres)} from {nearest.Name}, the nearest place of this guide: that is another sea, and no place here can go by it. Look whether latitude and longitude are changed over, or a sign is lost.";
        else if (nearest is (not null, > NearStation.HeadlandMetres))
            yield return $"It lies {PlaceWords.Distance(nearest.Metres)} from {nearest.Name}, the nearest place of this guide: across a headland or up an estuary the tide can be another.";

        // At the poles there is no box to draw; no gauge stands there either.
        var box = MapBox.Around(Math.Clamp(station.LatitudeDegrees, -89, 89), station.LongitudeDegrees, 2 * ShoreMetres);
        var coast = Coastline.ClippedTo(box, 0);
        if (coast.Shore.Count == 0)
        {
            yield return coast.Land.Count > 0 ? "It lies more than 10 km inland by the coarse coast that is known here. Look at latitude and longitude; a gauge far up a river tells little of the open coast."
                : "It lies more than 10 km from any land by the coarse coast that is known here, which leaves out small islands. Look at latitude and longitude.";
        }

        if (NearStation.MayLieInland(station.Name))
            yield return NearStation.InlandName;
    }

    private static IEnumerable<string> Constituents(TideStation station)
    {
        var missing = Principal.Except(station.ConstituentNames).ToList();
        if (missing.Count > 0)
            yield return $"It has no {string.Join(", ", missing)}: what they carry is missing from every height and time. Short records leave them out; look whether the table is whole.";
    }

    private static IEnumerable<string> Table(TableTide table, DateTimeZone zone, Instant now)
    {
        var last = table.Valid.End;
        var until = string.Create(CultureInfo.InvariantCulture, $"{TideWords.DayAndMonth(last.InZone(zone).Date)} {last.InZone(zone).Year}");
        if (last <= now)
            yield return $"The table ended on {until}: of now and later it says nothing, and places that go by it are not judged.";
        else if (last - now < SoonOver)
            yield return $"The table ends on {until}: after that places that go by it are not judged, until a new one is added.";
        if (table.Valid.Start > now)
            yield return $"The table begins on {TideWords.DayAndMonth(table.Valid.Start.InZone(zone).Date)} {table.Valid.Start.InZone(zone).Year.ToString(CultureInfo.InvariantCulture)}: before that nothing is known.";
    }

    private static IEnumerable<string> Heights(TideStation station, TideYear? year)
    {
        if (year is null)
            yield break;
        if (year.Highest.Metres - year.Lowest.Metres < NearStation.LittleRangeMetres)
            yield return "Its whole range is under 0.3 m: wind and air pressure move the water more than the tide does.";
        if (station.ChartDatum == "LAT" && year.Lowest.Metres < -UnderLowestMetres)
            yield return $"The water falls to {TideWords.Metres(year.Lowest.Metres)} this year, under a datum that is meant to be its lowest. Look at the mean sea level and at the datum.";
    }
}
