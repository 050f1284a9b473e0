using Foreshore.Almanac.Checks;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using Foreshore.Almanac.Time;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Almanac.Moon;

internal sealed class MoonEventChecks : IChecks
{
    public IEnumerable<Check> All()
    {
        yield return Check.Against(PublishedTable.Read("Moon/meeus.csv"), "Moon: place and phase, worked examples", (log, row) =>
            log.CompareShareOfAngle(row.Number("value"), Meeus(row["quantity"], row.Time("time")), row.Number("tolerance")));

        yield return Check.Against(PublishedTable.Read("Moon/astronomy-engine-moon.csv"), "Moon: phase angle, 1950 to 2100", "degrees", "0.01", (log, row) =>
            log.Compare(row.Number("phaseAngle"), MoonPhases.At(row.Time("time")).PhaseAngleDegrees, 0.01));

        yield return Check.Against(PublishedTable.Read("Moon/astronomy-engine-moon.csv"), "Moon: lit fraction, 1950 to 2100", "share of the disc", "0.0001", (log, row) =>
            log.Compare(row.Number("fraction"), MoonPhases.At(row.Time("time")).IlluminatedFraction, 0.0001));

        // The magnitude of a full moon at mean distance is that package's own, −12.717.
        yield return Check.Against(PublishedTable.Read("Moon/astronomy-engine-moon.csv"), "Moon: light relative to a full moon, 1950 to 2100", "magnitudes", "0.01", (log, row) =>
            log.Compare(row.Number("magnitude") + 12.717, -2.5 * Math.Log10(MoonPhases.At(row.Time("time")).RelativeBrightness), 0.01));

        yield return Check.Against(PublishedTable.Read("Moon/astronomy-engine-phases.csv"), "Moon: principal phases, 1950 to 2100", (log, row) =>
        {
            var (time, day) = (row.Time("time"), Duration.FromDays(2));
            var found = MoonPhases.Between(time - day, time + day);
            var phase = row["phase"] switch { "new" => PrincipalPhase.NewMoon, "first" => PrincipalPhase.FirstQuarter, "full" => PrincipalPhase.FullMoon, _ => PrincipalPhase.LastQuarter };
            if (found.Count != 1 || found[0].Phase != phase) log.Fail(string.Join("; ", found));
            else log.Add((found[0].Time - time).TotalSeconds, 30);
        });

        yield return Check.Against(PublishedTable.Read("Moon/meeus-phases.csv"), "Moon: principal phases, worked examples", (log, row) =>
        {
            var time = row.Time("dynamicalTime") - Duration.FromSeconds(DeltaT.Seconds(row.Time("dynamicalTime")));
            var found = MoonPhases.Between(time - Duration.FromDays(2), time + Duration.FromDays(2));
            log.Add((found.Single().Time - time).TotalSeconds, 20);
        });

        yield return Check.Against(PublishedTable.Read("Moon/usno-rise-set.csv"), "Moon: rise and set, printed tables", (log, row) =>
        {
            var (day, _) = Day(row);
            log.Add(Seconds(row.Time("rise"), day.StandardRise), 35);
            log.Add(Seconds(row.Time("set"), day.StandardSet), 35);
        });

        yield return Check.Against(PublishedTable.Read("Moon/astronomy-engine-moon-events.csv"), "Moon: rise, transit and set, 1950 to 2100", (log, row) =>
        {
            var (day, path) = Day(row);
            Compare("rise", day.StandardRise, false);
            Compare("transit", day.Transit, true);
            Compare("set", day.StandardSet, false);

            void Compare(string column, Instant? found, bool isTransit)
            {
                var expected = row[column].Length > 0 ? row.Time(column) : (Instant?)null;
                if ((found ?? expected) is not { } time) return;
                var rate = Math.Abs(path.At(time + Duration.FromSeconds(10)).AltitudeDegrees - path.At(time - Duration.FromSeconds(10)).AltitudeDegrees) / 20;
                if (!isTransit && rate < 0.0004)
                {
                    // Ten times slower than at the equator: it grazes the horizon.
                    log.Excuse();
                    return;
                }

                var bound = isTransit ? 5 : Math.Max(5, 0.003 / rate);
                var midnight = LocalDatePattern.Iso.Parse(row["date"]).Value.AtMidnight().InUtc().ToInstant();
                if (found is null != expected is null)
                {
                    // Within the bound of a midnight it may fall on either date.
                    var off = (time - midnight).TotalSeconds;
                    if (Math.Min(Math.Abs(off), Math.Abs(off - 86400)) <= bound) log.Excuse();
                    else log.Fail($"{column}: {(found is null ? "missing" : "not expected")}");
                    return;
                }

                log.Add((found!.Value - expected!.Value).TotalSeconds, bound);
            }
        });
    }

    private static double Meeus(string quantity, Instant dynamicalTime)
    {
        // The book's examples are set in dynamical time: no delta T is added.
        var days = JulianDay.DaysFromJ2000(dynamicalTime);
        var moon = MoonPosition.At(days, 0);
        var phase = MoonPhases.Of(SunPosition.At(days, 0), moon);
        return quantity switch
        {
            "apparentLongitude" => moon.ApparentLongitudeDegrees,
            "latitude" => moon.LatitudeDegrees,
            "distance" => moon.DistanceKm,
            "parallax" => moon.ParallaxDegrees,
            "rightAscension" => moon.RightAscensionDegrees,
            "declination" => moon.DeclinationDegrees,
            "phaseAngle" => phase.PhaseAngleDegrees,
            "fraction" => phase.IlluminatedFraction,
            "brightLimb" => phase.BrightLimbDegrees,
            _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "No such quantity."),
        };
    }

    private static (MoonDay Day, MoonPath Path) Day(PublishedRow row)
    {
        var date = LocalDatePattern.Iso.Parse(row["date"]).Value;
        var midnight = date.AtMidnight().InUtc().ToInstant();
        var ephemeris = MoonEphemeris.Covering(midnight - Duration.FromDays(1), midnight + Duration.FromDays(2));
        var position = new Position(row.Number("latitude"), row.Number("longitude"));
        return (MoonDays.On(date, new Observer(position, null, Skyline.AssumedSea), DateTimeZone.Utc, ephemeris), ephemeris.SeenFrom(position));
    }

    private static double Seconds(Instant expected, Instant? found) => found is { } time ? (time - expected).TotalSeconds : double.NaN;
}
