using Foreshore.Almanac.Checks;
using Foreshore.Almanac.Sun;

namespace Foreshore.Almanac.Earth;

internal sealed class EarthChecks : IChecks
{
    public IEnumerable<Check> All()
    {
        var lines = PublishedTable.Read("Earth/geodesic-lines.csv");
        yield return Check.Against(lines, "Earth: geodesic, length", "m", "0.00000002 m", (log, row) =>
        {
            var (a, b) = Ends(row);
            log.Compare(row.Number("metres"), Geodesic.Between(a, b).Metres, 2e-8);
        });
        yield return Check.Against(lines, "Earth: geodesic, bearings and ends", "degrees", "1e-9", (log, row) =>
        {
            var (a, b) = Ends(row);
            var between = Geodesic.Between(a, b);
            log.CompareAngles(row.Number("bearing1"), between.Initial.Degrees, 1e-9);
            log.CompareAngles(row.Number("bearing2"), between.Final.Degrees, 1e-9);
            var along = Geodesic.Along(a, Bearing.FromDegrees(row.Number("bearing1")), row.Number("metres"));
            log.Compare(b.LatitudeDegrees, along.Position.LatitudeDegrees, 1e-9);
            log.CompareAngles(b.LongitudeDegrees, along.Position.LongitudeDegrees, 1e-9);
            log.CompareAngles(row.Number("bearing2"), along.Final.Degrees, 1e-9);
        });

        var surveyed = PublishedTable.Read("Earth/flinders-peak.csv");
        yield return Check.Against(surveyed, "Earth: a surveyed line, length", "m", "0.001", (log, row) =>
        {
            var (a, b) = Ends(row);
            log.Compare(row.Number("metres"), Geodesic.Between(a, b).Metres, 0.001);
        });
        yield return Check.Against(surveyed, "Earth: a surveyed line, bearings", "degrees", "0.000003 (0.01″)", (log, row) =>
        {
            var (a, b) = Ends(row);
            var between = Geodesic.Between(a, b);
            log.CompareAngles(row.Number("bearing1"), between.Initial.Degrees, 3e-6);
            log.CompareAngles(row.Number("bearingBack"), between.Final.Degrees + 180, 3e-6);
        });

        var sweep = PublishedTable.Read("Earth/geographiclib-sweep.csv");
        yield return Check.Against(sweep, "Earth: geodesic anywhere, poles and antipodes, length", "m", "0.000002", (log, row) =>
        {
            var (a, b) = Ends(row);
            log.Compare(row.Number("metres"), Geodesic.Between(a, b).Metres, 2e-6);
        });
        yield return Check.Against(sweep, "Earth: geodesic anywhere, poles and antipodes, bearings", "degrees", "1e-9, or 1e-7 m across the line where that is more", (log, row) =>
        {
            var (a, b) = Ends(row);
            var between = Geodesic.Between(a, b);
            var metres = row.Number("metres");
            // How far the far end moves sideways for a turn of one radian.
            var reach = Math.Max(1e-3, 6371000 * Math.Sin(Math.Min(metres, 20003931 - metres) / 6371000));
            var tolerance = Math.Max(1e-9, 1e-7 / reach * (180 / Math.PI));
            log.CompareAngles(row.Number("bearing1"), between.Initial.Degrees, tolerance);
            log.CompareAngles(row.Number("bearing2"), between.Final.Degrees, tolerance);
        });

        yield return Check.Against(PublishedTable.Read("Earth/meeus-refraction.csv"), "Earth: refraction", (log, row) => log.Compare(
            row.Number("refraction"),
            row["given"] == "apparent" ? Refraction.AtApparent(row.Number("altitude")) : Refraction.AtAirless(row.Number("altitude")),
            3e-5));

        yield return Check.Against(PublishedTable.Read("Earth/horizons-refraction.csv"), "Earth: refraction down to the horizon", (log, row) =>
            log.Compare(row.Number("apparent"), Refraction.Apparent(SunPosition.At(row.Time("time"), new Position(0, 0)).AltitudeDegrees), 0.002));

        yield return Check.Against(PublishedTable.Read("Earth/site-radii.csv"), "Earth: a place seen from the Earth's centre", (log, row) =>
        {
            var site = SiteRadii.Of(row.Number("latitude"), row.Number("height"));
            log.Compare(row.Number("rhoSinPhi"), site.RhoSinPhi, 1e-6);
            log.Compare(row.Number("rhoCosPhi"), site.RhoCosPhi, 1e-6);
        });

        yield return Check.Against(PublishedTable.Read("Earth/dip.csv"), "Earth: dip of the sea horizon", (log, row) =>
            log.Compare(row.Number("dipMinutes") / 60, Dip.Degrees(row.Number("metres")), 0.0009));
        // Gauss's coefficient bends the line a little less than the nautical almanacs do: 2.2 in a hundred of the dip.
        yield return Check.Against(PublishedTable.Read("Earth/dip.csv"), "Earth: sea horizon of a computed skyline", "degrees", "3 in 100 of the dip", (log, row) =>
            log.Compare(row.Number("dipMinutes") / 60, SkylineFromElevation.HorizonDipDegrees(row.Number("metres"), 6371000 / 0.87), 0.03 * row.Number("dipMinutes") / 60));
    }

    private static (Position, Position) Ends(PublishedRow row) =>
        (new Position(row.Number("latitude1"), row.Number("longitude1")), new Position(row.Number("latitude2"), row.Number("longitude2")));
}
