using Foreshore.Almanac.Checks;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Almanac.Moon;

internal sealed class MoonPlaceChecks : IChecks
{
    private const double Radian = Math.PI / 180;

    public IEnumerable<Check> All()
    {
        yield return Check.Against(PublishedTable.Read("Moon/astronomy-engine-moon.csv"), "Moon: azimuth and altitude, 1950 to 2100", (log, row) =>
        {
            var moon = MoonPosition.At(row.Time("time"), Place(row));
            log.Add(Apart(moon, new Horizontal(row.Number("azimuth"), row.Number("altitude"))), 0.005);
        });

        yield return Check.Against(PublishedTable.Read("Moon/astronomy-engine-moon.csv"), "Moon: distance from the place, 1950 to 2100", "km", "60", (log, row) =>
            log.Compare(row.Number("distanceKm"), MoonPosition.Seen(MoonPosition.At(row.Time("time")), Place(row), 0).DistanceKm, 60));

        yield return new Check(
            "Moon: ephemeris against the readable form", "the step-by-step series of this project", "degrees of arc", "0.00001",
            "four cubics a day with five-point slopes; the two forms share nothing between nodes", EphemerisAgainstPlain);

        yield return new Check(
            "Moon: batch of directions against the readable form", "the step-by-step series of this project", "degrees of arc", "0.00001",
            "the same cubics, eight instants at a time", log => BatchAgainstPlain(log, inAngles: false));

        yield return new Check(
            "Moon: batch of azimuths and altitudes against the readable form", "the step-by-step series of this project", "degrees of arc", "0.0001",
            "single precision keeps 0.00002 degrees of an azimuth", log => BatchAgainstPlain(log, inAngles: true));
    }

    private static void EphemerisAgainstPlain(CheckLog log)
    {
        foreach (var year in new[] { 1950, 2003, 2026, 2100 })
        {
            var from = Instant.FromUtc(year, 1, 1, 0, 0);
            var ephemeris = MoonEphemeris.Covering(from, from + Duration.FromDays(366));
            for (var i = 0; i < 500; i++)
            {
                var position = new Position(-90 + 180.0 * (i * 7 % 500) / 499, -180 + 0.719 * i);
                var instant = from + Duration.FromMinutes(1051.7 * i);
                log.At($"{instant} {position}");
                log.Add(Apart(ephemeris.At(instant, position), MoonPosition.At(instant, position)), 1e-5);
                if (Math.Abs(ephemeris.DistanceKmAt(instant) - MoonPosition.At(instant).DistanceKm) > 0.1) log.Fail("distance");
            }
        }
    }

    private static void BatchAgainstPlain(CheckLog log, bool inAngles)
    {
        var from = Instant.FromUtc(2026, 3, 1, 0, 0);
        var ephemeris = MoonEphemeris.Covering(from, from + Duration.FromDays(300));
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
                    var plain = MoonPosition.At(start + step * i, position);
                    var batch = inAngles ? new Horizontal(azimuths[i], altitudes[i]) : new Direction(east[i], north[i], up[i]).Horizontal;
                    log.At($"{position} every {minutes} min, number {i}");
                    if (!(batch.AzimuthDegrees is >= 0 and < 360)) log.Fail($"azimuth {batch.AzimuthDegrees}");
                    log.Add(Apart(batch, plain), inAngles ? 1e-4 : 1e-5);
                }
            }
    }

    private static Position Place(PublishedRow row) => new(row.Number("latitude"), row.Number("longitude"));

    private static double Apart(Horizontal a, Horizontal b)
    {
        var (p, q) = (Direction.Of(a.AzimuthDegrees, a.AltitudeDegrees), Direction.Of(b.AzimuthDegrees, b.AltitudeDegrees));
        double east = p.East - q.East, north = p.North - q.North, up = p.Up - q.Up;
        return 2 * Math.Asin(Math.Sqrt(east * east + north * north + up * up) / 2) / Radian;
    }
}
