using Foreshore.Almanac.Checks;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Sun;

internal sealed class SunPlaceChecks : IChecks
{
    private const double Radian = Math.PI / 180;

    public IEnumerable<Check> All()
    {
        yield return Check.Against(PublishedTable.Read("Sun/nrel-spa-steps.csv"), "Sun: place, each step of the algorithm", (log, row) =>
            log.CompareShare(row.Number("value"), Step(row["step"]), row.Number("tolerance")));

        yield return Check.Against(PublishedTable.Read("Sun/meeus.csv"), "Sun: place, worked examples", (log, row) =>
            log.CompareShareOfAngle(row.Number("value"), Meeus(row["quantity"], row.Time("time")), row.Number("tolerance")));

        yield return Check.Against(PublishedTable.Read("Sun/horizons-astrometric.csv"), "Sun: geometric place, 1950 to 2099", (log, row) =>
        {
            var (rightAscension, declination) = Astrometric.Of(row.Time("time"), row.Number("deltaT"), new Position(29, -81));
            log.Add(Math.IEEERemainder(rightAscension - row.Number("rightAscension"), 360) * Math.Cos(declination * Radian), 0.0003);
            log.Compare(row.Number("declination"), declination, 0.0003);
        });

        yield return Check.Against(PublishedTable.Read("Sun/semidiameter.csv"), "Sun: semidiameter", (log, row) =>
            log.Compare(row.Number("arcSeconds") / 3600, SunDisc.SemidiameterDegrees(row.Number("distance")), 0.0001));

        yield return Check.Against(PublishedTable.Read("Sun/horizons-airless.csv"), "Sun: azimuth and altitude through the zenith", (log, row) =>
        {
            var sun = SunPosition.At(row.Time("time"), new Position(0, 0));
            log.CompareAngles(row.Number("altitude"), sun.AltitudeDegrees, 0.001);
            log.Add(Math.IEEERemainder(sun.AzimuthDegrees - row.Number("azimuth"), 360) * Math.Cos(sun.AltitudeDegrees * Radian), 0.001);
        });

        yield return Check.Against(PublishedTable.Read("Sun/astronomy-engine-positions.csv"), "Sun: azimuth and altitude, 1950 to 2100", (log, row) =>
        {
            var sun = SunPosition.At(row.Time("time"), new Position(row.Number("latitude"), row.Number("longitude")));
            log.Add(Apart(sun, new Horizontal(row.Number("azimuth"), row.Number("altitude"))), 0.003);
        });

        yield return new Check(
            "Sun: ephemeris against the readable form", "the step-by-step algorithm of this project", "degrees of arc", "0.000001",
            "one cubic a day with five-point slopes; the two forms share nothing between nodes", EphemerisAgainstPlain);

        yield return new Check(
            "Sun: batch of directions against the readable form", "the step-by-step algorithm of this project", "degrees of arc", "0.00001",
            "the bound asked for; parabolas and a day's mean parallax cost a millionth", log => BatchAgainstPlain(log, inAngles: false));

        yield return new Check(
            "Sun: batch of azimuths and altitudes against the readable form", "the step-by-step algorithm of this project", "degrees of arc", "0.0001",
            "single precision keeps 0.00002 degrees of an azimuth", log => BatchAgainstPlain(log, inAngles: true));
    }

    private static void BatchAgainstPlain(CheckLog log, bool inAngles)
    {
        var from = Instant.FromUtc(2026, 3, 1, 0, 0);
        var ephemeris = SunEphemeris.Covering(from, from + Duration.FromDays(300));
        foreach (var latitude in new[] { -90.0, -75, -44.7, 0, 7.3, 44.7, 78, 89.99, 90 })
            foreach (var minutes in new[] { 1, 7, 97, 2900 })
            {
                var position = new Position(latitude, 1.7 * minutes % 360 - 180);
                var (count, start, step) = (Math.Min(3001, 400000 / minutes), from + Duration.FromSeconds(12345), Duration.FromMinutes(minutes));
                double[] east = new double[count], north = new double[count], up = new double[count];
                float[] azimuths = new float[count], altitudes = new float[count];
                if (inAngles) ephemeris.AzimuthsAltitudes(position, start, step, azimuths, altitudes);
                else ephemeris.Directions(position, start, step, east, north, up);
                for (var i = 0; i < count; i += 1 + count / 97)
                {
                    var plain = SunPosition.At(start + step * i, position);
                    var batch = inAngles ? new Horizontal(azimuths[i], altitudes[i]) : new Direction(east[i], north[i], up[i]).Horizontal;
                    log.At($"{position} every {minutes} min, number {i}");
                    if (!(batch.AzimuthDegrees is >= 0 and < 360)) log.Fail($"azimuth {batch.AzimuthDegrees}");
                    log.Add(Apart(batch, plain), inAngles ? 1e-4 : 1e-5);
                }
            }
    }

    private static void EphemerisAgainstPlain(CheckLog log)
    {
        foreach (var year in new[] { 1950, 2003, 2026, 2100 })
        {
            var from = Instant.FromUtc(year, 1, 1, 0, 0);
            var ephemeris = SunEphemeris.Covering(from, from + Duration.FromDays(366));
            for (var i = 0; i < 500; i++)
            {
                var position = new Position(-90 + 180.0 * (i * 7 % 500) / 499, -180 + 0.719 * i);
                var instant = from + Duration.FromMinutes(1051.7 * i);
                log.At($"{instant} {position}");
                log.Add(Apart(ephemeris.At(instant, position), SunPosition.At(instant, position)), 1e-6);
            }
        }
    }

    private static double Apart(Horizontal a, Horizontal b)
    {
        var (p, q) = (Direction.Of(a.AzimuthDegrees, a.AltitudeDegrees), Direction.Of(b.AzimuthDegrees, b.AltitudeDegrees));
        double east = p.East - q.East, north = p.North - q.North, up = p.Up - q.Up;
        return 2 * Math.Asin(Math.Sqrt(east * east + north * north + up * up) / 2) / Radian;
    }

    private static double Step(string step)
    {
        var instant = Instant.FromUtc(2003, 10, 17, 19, 30, 30);
        var days = JulianDay.DaysFromJ2000(instant);
        const double deltaT = 67;
        var centuries = (days + deltaT / 86400) / 36525;
        var earth = EarthOrbit.At(centuries);
        var arguments = FundamentalArguments.At(centuries);
        var nutation = Nutation.At(centuries);
        var sun = SunPosition.At(days, deltaT);
        var seen = SunPosition.Seen(sun, new Position(39.742476, -105.1786), 1830.14);
        // The report leaves out the addend that takes refraction to zero in the zenith.
        var refraction = Refraction.AtAirless(seen.Horizontal.AltitudeDegrees, 820, 11) - 0.0019279 / 60 * (820.0 / 1010) * (283.0 / 284);
        return step switch
        {
            "julianDay" => JulianDay.Of(instant),
            "julianEphemerisDay" => JulianDay.Of(instant) + deltaT / 86400,
            "heliocentricLongitude" => earth.LongitudeDegrees,
            "heliocentricLatitude" => earth.LatitudeDegrees,
            "distance" => earth.DistanceAu,
            "elongationOfMoon" => arguments.D,
            "anomalyOfSun" => arguments.M,
            "anomalyOfMoon" => arguments.MMoon,
            "argumentOfLatitude" => arguments.F,
            "node" => arguments.Node,
            "nutationInLongitude" => nutation.LongitudeDegrees,
            "nutationInObliquity" => nutation.ObliquityDegrees,
            "meanObliquitySeconds" => nutation.MeanObliquityDegrees * 3600,
            "trueObliquity" => nutation.TrueObliquityDegrees,
            "apparentLongitude" => sun.ApparentLongitudeDegrees,
            "meanSidereal" => SiderealTime.MeanDegrees(days),
            "apparentSidereal" => sun.SiderealDegrees,
            "rightAscension" => sun.RightAscensionDegrees,
            "declination" => sun.DeclinationDegrees,
            "hourAngle" => seen.HourAngleDegrees,
            "parallax" => sun.ParallaxDegrees,
            "rightAscensionShift" => seen.RightAscensionShiftDegrees,
            "topocentricDeclination" => seen.DeclinationDegrees,
            "airlessAltitude" => seen.Horizontal.AltitudeDegrees,
            "refraction" => refraction,
            "azimuth" => seen.Horizontal.AzimuthDegrees,
            "zenith" => 90 - seen.Horizontal.AltitudeDegrees - refraction,
            _ => throw new ArgumentOutOfRangeException(nameof(step), step, "No such step."),
        };
    }

    private static double Meeus(string quantity, Instant dynamicalTime)
    {
        // The book's examples are set in dynamical time: no delta T is added.
        var days = JulianDay.DaysFromJ2000(dynamicalTime);
        var nutation = Nutation.At(days / 36525);
        var sun = SunPosition.At(days, 0);
        return quantity switch
        {
            "nutationInLongitude" => nutation.LongitudeDegrees,
            "nutationInObliquity" => nutation.ObliquityDegrees,
            "meanObliquity" => nutation.MeanObliquityDegrees,
            "trueObliquity" => nutation.TrueObliquityDegrees,
            "node" => FundamentalArguments.At(days / 36525).Node,
            "apparentLongitude" => sun.ApparentLongitudeDegrees,
            "distance" => sun.DistanceAu,
            "rightAscension" => sun.RightAscensionDegrees,
            "declination" => sun.DeclinationDegrees,
            _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "No such quantity."),
        };
    }
}
