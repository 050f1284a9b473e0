using System.Collections.Concurrent;
using Foreshore.Almanac.Checks;
using Foreshore.Almanac.Time;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Almanac.Tides;

internal sealed class TideChecks : IChecks
{
    private static readonly ConcurrentDictionary<(string Station, string Day), TideCurve> Curves = new();
    private static readonly Duration Quarter = Duration.FromMinutes(15);

    public IEnumerable<Check> All()
    {
        yield return Check.Against(PublishedTable.Read("Tides/predictor-heights.csv"), "Tide: heights at stations of all kinds, 2020 to 2035", (log, row) =>
        {
            var time = row.Time("time");
            log.Compare(row.Number("metres"), Tide(row).Between(time, time + Quarter).MetresAt(time), 0.01);
        });

        var waters = PublishedTable.Read("Tides/predictor-waters.csv");
        yield return Check.Against(waters, "Tide: heights of high and low waters, subordinate stations too", "m", "0.01", (log, row) =>
        {
            if (IsStand(row)) log.Excuse();
            else log.Compare(row.Number("metres"), Nearest(row).Metres, 0.01);
        });
        yield return Check.Against(waters, "Tide: times of high and low waters wherever not flat", "s", "60", (log, row) =>
        {
            var (curve, time) = (Curve(row), row.Time("time"));
            var here = curve.MetresAt(time);
            if (IsStand(row) || Math.Min(Math.Abs(curve.MetresAt(time - Quarter) - here), Math.Abs(curve.MetresAt(time + Quarter) - here)) < 0.002) log.Excuse();
            else log.Add((Nearest(row).Time - time).TotalSeconds, 60);
        });
        yield return Check.Against(PublishedTable.Read("Tides/day-snapshots.csv"), "Tide: a day's waters at four harbours, all constituents", "m", "0.01 and twice M1 and M3", (log, row) =>
        {
            var tide = (HarmonicTide)StationTides.Of(row["station"], NodalModel.Iho, []);
            var time = row.Time("time");
            var curve = tide.Between(time - Duration.FromDays(2), time + Duration.FromDays(2));
            var water = Nearest(row, curve);
            var mistaken = tide.Constants.Where(one => one.Constituent.Name is "M1" or "M3").ToList();
            log.Compare(row.Number("metres"), water.Metres, 0.01 + 2 * mistaken.Sum(one => one.AmplitudeMetres));

            // Twice a wave, wrongly turned, moves a water by its steepest slope over the curve's bend there.
            var bend = Math.Abs(curve.MetresPerHourAt(water.Time + Quarter) - curve.MetresPerHourAt(water.Time - Quarter)) * 2;
            var slope = 2 * mistaken.Sum(one => one.AmplitudeMetres * one.Constituent.SpeedDegreesPerHour * Math.PI / 180);
            var most = 120 + 3600 * slope / bend;
            if (Math.Abs((water.Time - time).TotalSeconds) > most) log.Fail(FormattableString.Invariant($"more than {most:F0} s apart"));
        });
        yield return new Check("Tide: highest and lowest of 19 years", "lowest and highest astronomical tide as npm package @neaps/tide-database 0.10.20260924 gives them, every third station of predictor-heights.csv", "m", "0.03 and twice the waves left out of the sweep",
            "another span of years and another program there: it turns M1, M3, 3N2 and some shallow-water waves otherwise, at worst by twice their amplitudes", BoundsOfNodalCycle);
        yield return new Check("Tide: curve against the plain sum", "the sum of all constituents with node corrections of each instant, by this project", "m", "0.001",
            "cubics between knots and corrections blended over ten days are within a millimetre", CurveAgainstSum);
    }

    private static void BoundsOfNodalCycle(CheckLog log)
    {
        var stations = PublishedTable.Read("Tides/predictor-heights.csv").Rows.Select(row => (Id: row["station"], Model: row["model"])).Distinct();
        foreach (var (id, model) in stations.Where((_, index) => index % 3 == 0))
        {
            var tide = (HarmonicTide)StationTides.Of(id, model == "iho" ? NodalModel.Iho : NodalModel.Schureman, []);
            var (highest, lowest) = TideYear.OfNodalCycle(tide, 2020);
            var stored = StationTides.Bounds(id);
            var otherwise = tide.Constants.Where(one => StationTides.Apart.Contains(one.Constituent.Name)).Sum(one => one.AmplitudeMetres);
            log.At(id);
            log.Compare(stored.Highest, highest.Metres, 0.03 + 2 * otherwise);
            log.Compare(stored.Lowest, lowest.Metres, 0.03 + 2 * otherwise);
        }
    }

    private static TideSource Tide(PublishedRow row) => StationTides.Of(row["station"], row["model"] == "iho" ? NodalModel.Iho : NodalModel.Schureman, StationTides.Apart);

    private static bool IsStand(PublishedRow row) => row.Number("rise") < 0.02;

    // A curve of a station and day serves all its rows.
    private static TideCurve Curve(PublishedRow row) => Curves.GetOrAdd((row["station"], row["time"][..10]), key =>
    {
        var day = InstantPattern.ExtendedIso.Parse(key.Day + "T00:00:00Z").Value;
        return Tide(row).Between(day - Duration.FromDays(2), day + Duration.FromDays(3));
    });

    private static TideExtreme Nearest(PublishedRow row, TideCurve? curve = null) =>
        (curve ?? Curve(row)).Extremes.Where(water => water.IsHigh == (row["kind"] == "high")).MinBy(water => Math.Abs((water.Time - row.Time("time")).TotalSeconds));

    private static void CurveAgainstSum(CheckLog log)
    {
        var stations = PublishedTable.Read("Tides/predictor-heights.csv").Rows.Select(row => row["station"]).Distinct().ToList();
        foreach (var (index, id) in stations.Index())
        {
            var tide = (HarmonicTide)StationTides.Of(id, index % 2 == 0 ? NodalModel.Schureman : NodalModel.Iho, []);
            var from = Instant.FromUtc(2020 + index % 16, 1 + index % 12, 1, 0, 0);
            var curve = tide.Between(from, from + Duration.FromDays(40));
            for (var time = from; time < curve.To; time += Duration.FromMinutes(1447.3))
            {
                log.At($"{id} {time}");
                log.Compare(Sum(tide, time), curve.MetresAt(time), 0.001);
            }
        }
    }

    private static double Sum(HarmonicTide tide, Instant time)
    {
        var arguments = AstronomicalArguments.At(JulianDay.DaysFromJ2000(time));
        var factors = NodeFactors.At(tide.Model!.Value, arguments);
        return tide.MeanSeaLevelMetres + tide.Constants.Sum(one =>
        {
            var node = factors.Of(one.Constituent);
            return node.F * one.AmplitudeMetres * Math.Cos((arguments.Of(one.Constituent.Doodson) + node.UDegrees - one.PhaseDegrees) * Math.PI / 180);
        });
    }
}
