namespace Foreshore.Guide.Itineraries;

/// <summary>
/// When one can be at a stance by one way, minute by minute, by domain.md 5.3 to 5.5. Where the page leaves a choice: a watch
/// stands for the lowest tide of its thirty minutes; its end in the dark is the last minute, for 5.3 takes nothing off it; the walk
/// off the ledge goes over the ground of the last leg.
/// </summary>
internal sealed class OwnStay
{
    private const double SetUp = 15, SetUpWatched = 5, Watching = 30, HoldsHours = 3, RiseMetres = 1, Ashore = -6;

    private readonly FlatStance stance;
    private readonly OwnGates gates;
    private readonly Pace pace;
    private readonly Series series;
    private readonly double slack;
    private readonly bool lowestWatch;
    private readonly IReadOnlyList<Piece> fromWatchPlace;

    private OwnStay(FlatStance stance, FlatWay way, OwnGates gates, Pace pace, double slack, bool lowestWatch)
    {
        (this.stance, this.gates, this.pace, this.slack, this.lowestWatch) = (stance, gates, pace, slack, lowestWatch);
        series = pace.Series;
        fromWatchPlace = [new(stance.WatchMinutes ?? 0)];
        Here = new bool[series.Count];
        EndedBy = new string?[series.Count];
        Count();
    }

    /// <summary>One may stand there: arrived, set up, watched where due, and in time for the way out.</summary>
    public bool[] Here { get; }

    /// <summary>What forbids the minute.</summary>
    public string?[] EndedBy { get; }

    /// <param name="slack">Minutes by which every bound is moved outward; below zero inward.</param>
    /// <param name="lowestWatch">
    /// The site's own simplifications of an evening, each to the careful side: a watch stands for the lowest tide between the first
    /// watch that can serve dusk (the sun passes +10, less 35 minutes and the walk from the watch place) and civil dusk; one is down
    /// on the stance by then; and from then on nothing is seen any more, though a warden wrote that it is until −9.
    /// </param>
    public static OwnStay Of(FlatStance stance, FlatWay way, OwnGates gates, Pace pace, double slack, bool lowestWatch = false) =>
        new(stance, way, gates, pace, slack, lowestWatch);

    /// <summary>Runs of minutes, the last included.</summary>
    public IEnumerable<(int First, int Last)> Runs() => Runs(Here);

    public static IEnumerable<(int First, int Last)> Runs(bool[] holds)
    {
        for (var i = 0; i < holds.Length; i++)
        {
            if (!holds[i]) continue;
            var first = i;
            while (i + 1 < holds.Length && holds[i + 1]) i++;
            yield return (first, i);
        }
    }

    private void Count()
    {
        var way = new bool[series.Count];
        var ledge = new bool[series.Count];
        Array.Fill(way, true);
        Array.Fill(ledge, true);
        foreach (var gate in gates.Gates)
            Mark(gate, gate.IsLedge ? ledge : way);
        foreach (var (first, last) in Runs(way))
        {
            if (stance.IsWaveExposed) Exposed(first, last, ledge);
            else Sheltered(first, last, ledge);
        }
    }

    private void Mark(Gate gate, bool[] held)
    {
        var at = 0;
        foreach (var span in gate.Open)
        {
            var arrival = gate.IsLedge || double.IsInfinity(span.From) ? span.From : pace.Arrives(span.From, gate.In);
            for (; at < series.Count && at < span.From - slack; at++) Forbid(at);
            for (; at < series.Count && at <= span.To + slack; at++)
            {
                if (at < arrival - slack || at + pace.Group.Packing + pace.Takes(at + pace.Group.Packing, gate.Out, gate.LeastFactor) + gate.Reserve > span.To + slack) Forbid(at);
            }
        }

        for (; at < series.Count; at++) Forbid(at);

        void Forbid(int minute)
        {
            held[minute] = false;
            EndedBy[minute] ??= gate.Name;
        }
    }

    private void Sheltered(int first, int last, bool[] ledge)
    {
        for (var minute = first; minute <= last; minute++)
        {
            if (!ledge[minute]) continue;
            var since = minute;
            while (minute < last && ledge[minute + 1]) minute++;
            for (var m = since == 0 ? 0 : (int)Math.Ceiling(since + SetUp - 1 - slack); m <= minute; m++) Here[Math.Max(m, since)] = true;
        }
    }

    private void Exposed(int first, int last, bool[] ledge)
    {
        if (stance.WatchMinutes is null) return;
        var lit = series.SunAbove(stance.SeesFromMinusNine ? -9 : Ashore);
        for (var i = 0; i < lit.Count; i++)
        {
            var begin = Math.Max(first == 0 ? double.NegativeInfinity : first - 1 - slack, lit[i].From);
            if (begin + Watching > Math.Min(lit[i].To, last)) continue;
            var done = begin + Watching;
            var ready = double.IsInfinity(done) ? done : pace.Arrives(done, fromWatchPlace) + SetUpWatched;
            var dusk = series.Dark.FirstOrDefault(span => span.To > lit[i].To - 60).From;
            var ends = lowestWatch && dusk > lit[i].From ? Math.Min(lit[i].To, dusk) : lit[i].To;
            if (lowestWatch && ready - SetUpWatched > ends) continue;
            var until = Math.Min(last, ends);
            var bare = Math.Max(first, (int)Math.Max(begin, first));
            for (var minute = Math.Max(first, (int)Math.Ceiling(Math.Max(ready - slack, first))); minute <= until; minute++)
            {
                // Where the ledge comes dry only now, one has walked down beside it and sets up.
                bare = BareSince(ledge, minute, bare, first);
                if (ledge[minute] && (bare <= first || minute >= bare - 1 - slack + SetUpWatched)) Here[minute] = true;
            }

            IntoTheDark(last, ledge, lit[i] with { To = ends }, begin, ready, i + 1 < lit.Count ? lit[i + 1].From : double.PositiveInfinity);
        }
    }

    private static int BareSince(bool[] ledge, int minute, int known, int first)
    {
        if (!ledge[minute] || (known < minute && ledge[minute - 1])) return known;
        if (minute > first && !ledge[minute - 1]) return minute;
        var since = minute;
        while (since > first && ledge[since - 1]) since--;
        return since;
    }

    private void IntoTheDark(int last, bool[] ledge, Span lit, double begin, double ready, double dawn)
    {
        if (double.IsInfinity(lit.To) || lit.To >= series.Count || last <= lit.To) return;
        var dusk = series.Dark.FirstOrDefault(span => span.To > lit.To - 60).From;
        var ends = dusk + HoldsHours * 60;
        if (series.Tide is { } tide)
        {
            var height = lowestWatch ? Lowest(tide, FirstThatServes(lit), dusk) : BestWatch(tide, Math.Max(begin, lit.To - 1440), lit.To);
            var minute = (int)Math.Ceiling(dusk);
            while (minute < Math.Min(series.Count, ends) && tide[minute] <= height + RiseMetres) minute++;
            ends = Math.Min(ends, minute);
        }

        for (var minute = (int)Math.Ceiling(lit.To); minute <= last && minute < dawn; minute++)
        {
            if (!ledge[minute] || minute > ends + slack)
            {
                EndedBy[minute] ??= "the watch";
                break;
            }

            if (minute >= ready - slack) Here[minute] = true;
        }
    }

    private double FirstThatServes(Span lit)
    {
        var ten = (int)lit.To;
        while (ten > 0 && ten > lit.From && series.Sun[ten] < 10) ten--;
        return Math.Max(lit.From, ten - 35 - stance.WatchMinutes!.Value);
    }

    private static double Lowest(double[] tide, double from, double to)
    {
        var lowest = double.PositiveInfinity;
        for (var i = Math.Max(0, (int)from); i <= Math.Min(tide.Length - 1, (int)to); i++) lowest = Math.Min(lowest, tide[i]);
        return lowest;
    }

    private static double BestWatch(double[] tide, double from, double to)
    {
        var best = double.NegativeInfinity;
        for (var i = Math.Max(0, (int)from); i + Watching <= Math.Min(tide.Length - 1, to); i++) best = Math.Max(best, Lowest(tide, i, i + Watching));
        return best;
    }
}
