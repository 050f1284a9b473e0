using Foreshore.Almanac.Light;
using Foreshore.Almanac.Sun;
using Foreshore.Almanac.Tides;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>
/// The time in which a picture can be taken as far as tide and access go: on a stay by the way in, while the wished tide and
/// ground hold. Light comes on top of it; the sea is left out.
/// </summary>
public sealed class UsableTime
{
    private static readonly Duration Millisecond = Duration.FromMilliseconds(1);

    private readonly IReadOnlyList<(Interval Span, UsableTime? Time)> parts;

    private UsableTime(IReadOnlyList<Stay> stays, TideCurve? tide, List<Stretch> wish, List<Stretch> usable, IReadOnlyList<(Interval Span, UsableTime? Time)>? parts = null)
    {
        (Stays, Tide, Wish, Usable) = (stays, tide, wish, usable);
        this.parts = parts ?? [];
    }

    /// <summary>Every stay, in order of its beginning.</summary>
    public IReadOnlyList<Stay> Stays { get; }

    /// <summary>The tide it was worked out with; null where nothing asked for it.</summary>
    public TideCurve? Tide { get; }

    /// <summary>When the wishes hold, whether or not one can be there.</summary>
    internal IReadOnlyList<Stretch> Wish { get; }

    /// <summary>What wish and a stay leave, by start and by end, each of one stay with its own turn back: two ways in may overlap. What lies within another is left out.</summary>
    internal IReadOnlyList<Stretch> Usable { get; }

    /// <summary>Works it out over a span of time.</summary>
    /// <param name="way">The way in.</param>
    /// <param name="wantedTide">The tide wished for; null: any.</param>
    /// <param name="wantedGround">The ground wished for; null: any.</param>
    /// <param name="tide">The tide on the datum of all heights; may be null where nothing asks for it.</param>
    /// <param name="years">The thirds of the years on UTC, for springs and neaps.</param>
    /// <param name="from">Beginning of the span.</param>
    /// <param name="to">End of the span.</param>
    /// <param name="sun">Covers the span; two days more at either end where it can.</param>
    /// <exception cref="ArgumentNullException">A limit or a wish needs the tide, and there is none.</exception>
    public static UsableTime Of(StayPlan way, WantedTide? wantedTide, WantedGround? wantedGround, TideCurve? tide,
        Func<int, TideYear?> years, Instant from, Instant to, SunEphemeris sun)
    {
        return Of(StayTimes.Between(way, tide, from, to, sun), wantedTide, wantedGround, tide, years, from, to);
    }

    /// <summary>The same where the stays are known already, in order of their beginning: they do not depend on what is wished.</summary>
    public static UsableTime Of(IReadOnlyList<Stay> stays, WantedTide? wantedTide, WantedGround? wantedGround, TideCurve? tide,
        Func<int, TideYear?> years, Instant from, Instant to)
    {
        if (wantedTide is not null || wantedGround is not null) ArgumentNullException.ThrowIfNull(tide);
        List<Stretch> wish = [new(JulianDay.DaysFromJ2000(from), JulianDay.DaysFromJ2000(to))];
        if (wantedTide is not null) wish = Stretch.Intersection(wish, wantedTide.Over(tide!, years));
        if (wantedGround is not null) wish = Stretch.Intersection(wish, wantedGround.Over(tide!));
        return new UsableTime(stays, tide, wish, Stretch.Intersection(wish, stays.Select(stay => stay.Usable).Outermost()).Outermost());
    }

    /// <summary>
    /// One time put together from several, where not the same way holds in every span of time. A stretch on both sides of a bound
    /// stays whole.
    /// </summary>
    /// <param name="parts">Spans in order and apart, each with the time that holds in it; null where none does.</param>
    /// <param name="tide">The tide they were worked out with.</param>
    public static UsableTime Joined(IReadOnlyList<(Interval Span, UsableTime? Time)> parts, TideCurve? tide)
    {
        ArgumentNullException.ThrowIfNull(parts);
        var (stays, known, wish, usable) = (new List<Stay>(), new HashSet<Stay>(), new List<Stretch>(), new List<Stretch>());
        foreach (var (interval, time) in parts)
        {
            if (time is null) continue;
            var span = new Stretch(JulianDay.DaysFromJ2000(interval.Start), JulianDay.DaysFromJ2000(interval.End));
            foreach (var stay in time.Stays)
            {
                if (stay.Usable.Start >= span.End) break;
                if (stay.Usable.End > span.Start && known.Add(stay)) stays.Add(stay);
            }

            Add(wish, time.Wish.Touching(span.Start, span.End), span);
            Add(usable, time.Usable.Touching(span.Start, span.End), span);
        }

        return new UsableTime(stays, tide, wish, usable, parts);

        static void Add(List<Stretch> to, List<Stretch> touching, Stretch span)
        {
            foreach (var one in touching)
            {
                var piece = new Stretch(Math.Max(one.Start, span.Start), Math.Min(one.End, span.End));
                if (piece.End <= piece.Start) continue;
                if (to.Count > 0 && to[^1].End == piece.Start) to[^1] = to[^1] with { End = piece.End };
                else to.Add(piece);
            }
        }
    }

    /// <summary>Runs of light cut to the time; a piece shorter than its light's least length is no run.</summary>
    public IReadOnlyList<LightRun> Cut(IReadOnlyList<LightRun> runs) => Cut(runs, Usable);

    /// <summary>Runs of light cut to the wished tide and ground alone, whether or not one can be there.</summary>
    public IReadOnlyList<LightRun> CutToWish(IReadOnlyList<LightRun> runs) => Cut(runs, Wish);

    /// <summary>The stay in which a minute is used: of several the one that lasts longest. Null where there is none.</summary>
    public Stay? StayAt(Instant instant)
    {
        if (parts.Count > 0) return parts.FirstOrDefault(part => part.Span.Contains(instant)).Time?.StayAt(instant);
        // Instants are told to the millisecond: the first minute of a stay, as told, is in it.
        var days = JulianDay.DaysFromJ2000(instant + Millisecond);
        Stay? longest = null;
        foreach (var stay in Stays.TakeWhile(stay => stay.Usable.Start <= days))
            if (stay.Usable.End > days && (longest is null || stay.Usable.End > longest.Usable.End)) longest = stay;
        return longest;
    }

    /// <summary>
    /// What runs of light, cut to the time, give together: each window within one stay, so that one turn back holds for all of
    /// it. Windows of two ways in may overlap.
    /// </summary>
    internal IReadOnlyList<Interval> Windows(IReadOnlyList<LightRun> runs)
    {
        var cut = Cut(runs);
        if (cut.Count == 0) return [];
        var (first, last) = (JulianDay.DaysFromJ2000(cut.Min(run => run.Start)), JulianDay.DaysFromJ2000(cut.Max(run => run.End)));
        var windows = new List<Interval>();
        foreach (var (start, end) in Usable.Touching(first, last))
        {
            // Told to the millisecond, a run may stick out of its stay by one.
            Instant from = Spans.At(start) - Millisecond, to = Spans.At(end) + Millisecond;
            windows.AddRange(LightUnion.Of([.. cut.Where(run => run.Start >= from && run.End <= to)]));
        }

        return [.. windows.Distinct().Where(one => !windows.Exists(other => other != one && other.Start <= one.Start && other.End >= one.End)).OrderBy(one => one.Start)];
    }

    /// <summary>Stretches of one light cut to the time, each still long enough.</summary>
    internal List<Stretch> Cut(LightRow row, IReadOnlyList<Stretch> stretches)
    {
        var cut = Stretch.Intersection(stretches, Usable);
        cut.RemoveAll(stretch => stretch.Minutes < row.LeastMinutes);
        return cut;
    }

    private static List<LightRun> Cut(IReadOnlyList<LightRun> runs, IReadOnlyList<Stretch> to)
    {
        var cut = new List<LightRun>();
        foreach (var run in runs)
        {
            var least = Duration.FromMinutes(LightTable.Of(run.Light).LeastMinutes);
            var whole = new Stretch(JulianDay.DaysFromJ2000(run.Start), JulianDay.DaysFromJ2000(run.End));
            foreach (var piece in Stretch.Intersection([whole], to.Touching(whole.Start, whole.End)).Outermost())
            {
                // An end that is not cut stays as it is.
                var kept = new LightRun(run.Light, piece.Start > whole.Start ? Spans.At(piece.Start) : run.Start, piece.End < whole.End ? Spans.At(piece.End) : run.End);
                if (kept.Length >= least) cut.Add(kept);
            }
        }

        return cut;
    }
}
