using Foreshore.Almanac.Time;

namespace Foreshore.Almanac.Tides;

/// <summary>A reference's curve with its waters moved: each stretch between two waters is scaled in time and height as a whole.</summary>
internal sealed class StretchedKnots
{
    // Knots nearer than this to a water (0.1 s) fall together with it.
    private const double Same = 1e-6;
    private readonly TideKnots reference;
    private readonly List<double> times = [], metres = [], slopes = [];

    private StretchedKnots(TideKnots reference) => this.reference = reference;

    /// <summary>A water of the reference and where it is moved to.</summary>
    private readonly record struct Moved(int Index, TideExtreme Water, double Was, double Days, double Metres);

    internal static TideKnots Of(TideCurve curve, TideOffsets offsets, BetweenWaters between)
    {
        var kept = Alternating([.. curve.AllWaters.All.Select((water, index) => Move(index, water, offsets))]);
        var made = new StretchedKnots(curve.Knots);
        if (kept.Count == 0)
        {
            made.Slide(double.NegativeInfinity, double.PositiveInfinity, (offsets.HighMinutes + offsets.LowMinutes) / 2, (offsets.High + offsets.Low) / 2, offsets.Kind);
        }
        else
        {
            var (first, last) = (kept[0], kept[^1]);
            made.Slide(double.NegativeInfinity, first.Was, first.Water.IsHigh ? offsets.HighMinutes : offsets.LowMinutes, first.Water.IsHigh ? offsets.High : offsets.Low, offsets.Kind);
            for (var i = 0; i + 1 < kept.Count; i++)
            {
                // Neighbours no longer: what lay between them is gone, and so is its shape.
                var neighbours = kept[i].Index + 1 == kept[i + 1].Index;
                if (between == BetweenWaters.ReferenceCurve && neighbours) made.Stretch(kept[i], kept[i + 1]);
                else made.Cosine(kept[i], kept[i + 1]);
            }

            made.Add(last.Days, last.Metres, 0);
            made.Slide(last.Was, double.PositiveInfinity, last.Water.IsHigh ? offsets.HighMinutes : offsets.LowMinutes, last.Water.IsHigh ? offsets.High : offsets.Low, offsets.Kind);
        }

        return new TideKnots(made.times[0], 0, [.. made.times], [.. made.metres], [.. made.slopes]);
    }

    private static Moved Move(int index, TideExtreme water, TideOffsets offsets)
    {
        var was = JulianDay.DaysFromJ2000(water.Time);
        return new Moved(index, water, was, was + (water.IsHigh ? offsets.HighMinutes : offsets.LowMinutes) / 1440, offsets.MetresOf(water));
    }

    /// <summary>Without pairs that the offsets have made meet, pass each other or change places in height: they are no waters there.</summary>
    private static List<Moved> Alternating(List<Moved> moved)
    {
        for (var i = 0; i + 1 < moved.Count;)
        {
            var (one, other) = (moved[i], moved[i + 1]);
            if (other.Days - one.Days > Same && other.Metres > one.Metres == other.Water.IsHigh)
            {
                i++;
                continue;
            }

            moved.RemoveRange(i, 2);
            i = Math.Max(0, i - 1);
        }

        return moved;
    }

    private void Stretch(Moved from, Moved to)
    {
        Add(from.Days, from.Metres, 0);
        double inTime = (to.Days - from.Days) / (to.Was - from.Was), inHeight = (to.Metres - from.Metres) / (to.Water.Metres - from.Water.Metres);
        for (var i = reference.Before(from.Was) + 1; i < reference.Count && reference.TimeOf(i) < to.Was - Same; i++)
        {
            if (reference.TimeOf(i) > from.Was + Same)
                Add(from.Days + (reference.TimeOf(i) - from.Was) * inTime, from.Metres + (reference.Metres[i] - from.Water.Metres) * inHeight, reference.Slopes[i] * inHeight / inTime);
        }
    }

    private void Cosine(Moved from, Moved to)
    {
        var knots = HalfCosines.Through([(from.Days, from.Metres), (to.Days, to.Metres)]);
        for (var i = 0; i + 1 < knots.Count; i++) Add(knots.TimeOf(i), knots.Metres[i], knots.Slopes[i]);
    }

    /// <summary>Before the first and after the last water all is moved alike.</summary>
    private void Slide(double after, double before, double minutes, double height, HeightOffset kind)
    {
        for (var i = 0; i < reference.Count; i++)
        {
            var time = reference.TimeOf(i);
            if (time <= after + Same || time >= before - Same) continue;
            var ratio = kind == HeightOffset.Ratio ? height : 1;
            Add(time + minutes / 1440, reference.Metres[i] * ratio + (kind == HeightOffset.Fixed ? height : 0), reference.Slopes[i] * ratio);
        }
    }

    private void Add(double days, double height, double slope)
    {
        times.Add(days);
        metres.Add(height);
        slopes.Add(slope);
    }
}
