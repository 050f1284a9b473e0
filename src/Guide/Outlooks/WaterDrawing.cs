using Foreshore.Almanac.Tides;
using Foreshore.Guide.Access;
using Foreshore.Guide.Tides;
using NodaTime;

namespace Foreshore.Guide.Outlooks;

/// <summary>One part of a stay below the curve: walking in, watching, the usable window, walking out.</summary>
public sealed record StayPart(string Name, Interval Span, double From, double To);

/// <summary>
/// The water of a session strip: the tide over the wished band, hatched where one cannot be on the stance, turn back as a bar.
/// Everything across is a share of the strip's width, as in the light above it.
/// </summary>
/// <param name="Curve">Metres above chart datum along the strip.</param>
/// <param name="Band">The wished heights; an end that is not wished is null.</param>
/// <param name="Hatched">Where the stance is not usable by the way judged.</param>
/// <param name="TurnBack">Null where nothing calls one back within the strip, or it can't be told.</param>
public sealed record WaterDrawing(
    Interval Span, double Lowest, double Highest, IReadOnlyList<(double At, double Metres)> Curve, IReadOnlyList<(double At, TideExtreme Turn)> Turns,
    (double? Lowest, double? Highest)? Band, IReadOnlyList<(double From, double To)> Hatched, IReadOnlyList<StayPart> Parts, (double At, Instant Time)? TurnBack)
{
    private const int Steps = 96;

    /// <summary>A session with all of the way there and back about it, as far as the tide is known.</summary>
    public static Interval Whole(Interval session, WindowPlan? plan, TideCurve? tide)
    {
        Instant[] ends = [session.Start, session.End, .. Ends(plan?.Itinerary?.WalkIn), .. Ends(plan?.Itinerary?.WalkOut), .. plan?.TurnBack is { } back && back < session.End + Duration.FromHours(6) ? [back] : Array.Empty<Instant>()];
        return new(Instant.Max(ends.Min(), tide?.From ?? Instant.MinValue), Instant.Min(ends.Max(), tide?.To ?? Instant.MaxValue));

        static IEnumerable<Instant> Ends(Interval? span) => span is { } known ? [known.Start, known.End] : [];
    }

    /// <summary>Null where the tide is not known over the session.</summary>
    public static WaterDrawing? Of(BoardCell cell)
    {
        if (cell is not { By: { Tide: { } tide } by, Span: { } session })
            return null;

        // From leaving the car to being back there, not cut to the session.
        var span = Whole(session.Span, cell.Plan, tide);
        List<(double At, double Metres)> curve = [.. Enumerable.Range(0, Steps + 1).Select(i => (i / (double)Steps, tide.MetresAt(span.Start + span.Duration * (i / (double)Steps))))];
        var wish = by.Wishes.Tide;
        (double?, double?)? band = wish is null || (wish.LowestMetres is null && wish.HighestMetres is null) ? null : (wish.LowestMetres, wish.HighestMetres);
        var heights = curve.Select(point => point.Metres).Concat(new[] { wish?.LowestMetres, wish?.HighestMetres }.OfType<double>()).ToList();
        return new(span, heights.Min(), heights.Max(), curve,
            [.. tide.Extremes.Where(turn => span.Contains(turn.Time)).Select(turn => (Share(turn.Time), turn))],
            band, [.. NotUsable()], [.. Parts().Where(part => part.To > part.From)],
            cell.Plan?.TurnBack is { } turnBack && turnBack >= span.Start && turnBack <= span.End ? (Share(turnBack), turnBack) : null);

        double Share(Instant time) => Math.Clamp((time - span.Start) / span.Duration, 0, 1);

        IEnumerable<(double From, double To)> NotUsable()
        {
            var since = 0.0;
            foreach (var stay in by.Stays.Where(stay => (stay.TurnBack ?? span.End) > span.Start && (stay.From ?? span.Start) < span.End))
            {
                var (from, to) = (stay.From is { } start ? Share(start) : 0, stay.TurnBack is { } end ? Share(end) : 1);
                if (from > since) yield return (since, from);
                since = Math.Max(since, to);
            }

            if (since < 1) yield return (since, 1);
        }

        IEnumerable<StayPart> Parts()
        {
            if (cell.Plan is not { Itinerary: { } way } plan)
                yield break;
            if (way.WalkIn is { } walkIn) yield return Part("walk in", walkIn.Start, walkIn.End);
            if (way.Watch is { } watch) yield return Part("watch", watch.Start, watch.End);
            yield return Part("usable", plan.Window.Start, plan.Window.End);
            if (plan.LightEnds > plan.Window.End) yield return Part("light you will miss", plan.Window.End, plan.LightEnds);
            if (way.WalkOut is { } walkOut) yield return Part("walk out", walkOut.Start, walkOut.End);
        }

        StayPart Part(string name, Instant from, Instant to) => new(name, new Interval(from, to), Share(from), Share(to));
    }
}
