using Foreshore.Almanac.Checks;
using Foreshore.Almanac.Earth;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Almanac.Sun;

internal sealed class SunEventChecks : IChecks
{
    private const double Radian = Math.PI / 180;

    public IEnumerable<Check> All()
    {
        yield return Check.Against(PublishedTable.Read("Sun/nrel-spa-events.csv"), "Sun: rise, transit and set, the algorithm's own examples", (log, row) =>
        {
            var day = Day(row);
            var expected = row.Time("time");
            log.Add(Seconds(expected, row["event"] switch { "rise" => day.StandardRise, "transit" => day.Noon, _ => day.StandardSet }), 2);
        });

        yield return Check.Against(PublishedTable.Read("Sun/usno-rise-set.csv"), "Sun: rise and set, printed tables", (log, row) =>
        {
            var day = Day(row);
            if (row["rise"].Length > 0) log.Add(Seconds(row.Time("rise"), day.StandardRise), 31);
            if (row["set"].Length > 0) log.Add(Seconds(row.Time("set"), day.StandardSet), 31);
        });

        yield return Check.Against(PublishedTable.Read("Sun/usno-twilight.csv"), "Sun: twilights, printed tables", (log, row) =>
        {
            var day = Day(row);
            log.Add(Seconds(row.Time("astronomicalDawn"), day.AstronomicalDawn), 62);
            log.Add(Seconds(row.Time("nauticalDawn"), day.NauticalDawn), 62);
            log.Add(Seconds(row.Time("civilDawn"), day.CivilDawn), 62);
            log.Add(Seconds(row.Time("civilDusk"), day.CivilDusk), 62);
            log.Add(Seconds(row.Time("nauticalDusk"), day.NauticalDusk), 62);
            log.Add(Seconds(row.Time("astronomicalDusk"), day.AstronomicalDusk), 62);
        });

        yield return Check.Against(PublishedTable.Read("Sun/astronomy-engine-events.csv"), "Sun: rise, set and twilights, 1950 to 2100", CompareEvents);
        yield return Check.Against(PublishedTable.Read("Sun/astronomy-engine-limbs.csv"), "Sun: rise and set of the disc as large as it is", (log, row) =>
        {
            var (day, _) = Day(new Position(row.Number("latitude"), row.Number("longitude")), row["date"], row.Number("longitude") / 15);
            log.Add(Seconds(row.Time("rise"), day.Rise), row.Number("most"));
            log.Add(Seconds(row.Time("set"), day.Set), row.Number("most"));
        });
        yield return Check.Against(PublishedTable.Read("Sun/astronomy-engine-azimuths.csv"), "Sun: passing an azimuth, 1950 to 2100", CompareAzimuths);
    }

    private static void CompareEvents(CheckLog log, PublishedRow row)
    {
        var position = new Position(row.Number("latitude"), row.Number("longitude"));
        var (day, path) = Day(position, row["date"], row.Number("longitude") / 15);
        double before = row.Number("lowestBefore"), highest = row.Number("highest"), after = row.Number("lowestAfter");
        Compare("astronomicalDawn", day.AstronomicalDawn, -18, before);
        Compare("nauticalDawn", day.NauticalDawn, -12, before);
        Compare("civilDawn", day.CivilDawn, -6, before);
        Compare("rise", day.StandardRise, -50.0 / 60, before);
        Compare("set", day.StandardSet, -50.0 / 60, after);
        Compare("civilDusk", day.CivilDusk, -6, after);
        Compare("nauticalDusk", day.NauticalDusk, -12, after);
        Compare("astronomicalDusk", day.AstronomicalDusk, -18, after);

        void Compare(string column, Instant? found, double level, double lowest)
        {
            if (Math.Abs(lowest - level) < 0.05 || Math.Abs(highest - level) < 0.05)
            {
                log.Excuse();
                return;
            }

            if (row[column].Length == 0 != found is null)
            {
                log.Fail($"{column}: {(found is null ? "missing" : "not expected")}");
                return;
            }

            if (found is not { } time) return;
            var rate = Math.Abs(path.At(time + Duration.FromSeconds(5)).AltitudeDegrees - path.At(time - Duration.FromSeconds(5)).AltitudeDegrees) / 10;
            log.Add(Seconds(row.Time(column), time), Math.Max(2, 0.003 / rate));
        }
    }

    private static void CompareAzimuths(CheckLog log, PublishedRow row)
    {
        var position = new Position(row.Number("latitude"), row.Number("longitude"));
        var azimuth = Bearing.FromDegrees(row.Number("azimuth"));
        var start = row.Time("start");
        var ephemeris = SunEphemeris.Covering(start - Duration.FromDays(1), start + Duration.FromDays(2));
        var found = SunCrossings.OfAzimuth(azimuth, position, new Interval(start, start + Duration.FromDays(1)), ephemeris);
        var expected = row["times"].Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(text => InstantPattern.ExtendedIso.Parse(text).Value).ToList();
        if (found.Count != expected.Count)
        {
            log.Fail($"{found.Count} passages found.");
            return;
        }

        var path = ephemeris.SeenFrom(position);
        for (var i = 0; i < found.Count; i++)
        {
            var rate = Math.Abs(Across(found[i].Time + Duration.FromSeconds(5)) - Across(found[i].Time - Duration.FromSeconds(5))) / 10;
            log.Add(Seconds(expected[i], found[i].Time), Math.Max(2, 0.003 / rate));
        }

        double Across(Instant time)
        {
            var sun = path.At(time);
            return (sun.East * Math.Cos(azimuth.Degrees * Radian) - sun.North * Math.Sin(azimuth.Degrees * Radian)) / Radian;
        }
    }

    private static SunDay Day(PublishedRow row) =>
        Day(new Position(row.Number("latitude"), row.Number("longitude")), row["localDate"], row.Number("zoneHours")).Day;

    private static (SunDay Day, SunPath Path) Day(Position position, string date, double zoneHours)
    {
        var zone = DateTimeZone.ForOffset(Offset.FromSeconds((int)Math.Round(zoneHours * 3600)));
        var local = LocalDatePattern.Iso.Parse(date).Value;
        var noon = local.At(LocalTime.Noon).InZoneStrictly(zone).ToInstant();
        var ephemeris = SunEphemeris.Covering(noon - Duration.FromDays(2), noon + Duration.FromDays(2));
        return (SunDays.On(local, new Observer(position, null, Skyline.AssumedSea), zone, ephemeris), ephemeris.SeenFrom(position));
    }

    private static double Seconds(Instant expected, Instant? found) => found is { } time ? (time - expected).TotalSeconds : double.NaN;
}
