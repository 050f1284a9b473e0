using Foreshore.Almanac.Tides;
using Foreshore.Guide.Shell.Ink;
using NodaTime;

namespace Foreshore.Guide.Tides;

/// <summary>A turn in the drawing: how far right, 0 to 1, and which it is.</summary>
public sealed record TideMark(double At, TideExtreme Turn);

/// <summary>The tide curve of two local days, laid out in shares of the width and metres.</summary>
/// <param name="LimitMetres">A level one must not be passed by: a stance's limit less the allowance, above chart datum; null for none.</param>
/// <param name="NotUsable">Where one cannot be at the stance, 0 to 1: outside its open periods, or above its limit where those can't be told.</param>
/// <param name="TurnBacks">When to turn back from those to come.</param>
public sealed record TideDrawing(
    Instant From, Instant To, double Bottom, double Top, IReadOnlyList<(double At, double Metres)> Line, IReadOnlyList<TideMark> Turns,
    IReadOnlyList<(double At, int Hour)> Hours, IReadOnlyList<(double At, LocalDate Date)> Days, IReadOnlyList<double> Levels, (double At, double Metres)? Now,
    double? LimitMetres, IReadOnlyList<(double From, double To)> NotUsable, IReadOnlyList<(double At, Instant Time)> TurnBacks)
{
    public const int DaysDrawn = 2;

    private const int StepsAnHour = 6;
    private static readonly Duration Step = Duration.FromHours(1) / StepsAnHour;

    /// <summary>Above the highest and below the lowest water stand two lines of words each: this share of the range.</summary>
    private const double Margin = 0.3;

    /// <summary>Two days whose clock shows 24 hours are 48 hours long; where the clocks change they are 47 or 49.</summary>
    public static (Instant From, Instant To) Span(LocalDate first, DateTimeZone zone) =>
        (zone.AtStartOfDay(first).ToInstant(), zone.AtStartOfDay(first.PlusDays(DaysDrawn)).ToInstant());

    /// <summary>The turns with the row their words stand in: double waters lie too close for one row.</summary>
    /// <param name="apart">Share of the width that two words of one row need between their middles.</param>
    public IEnumerable<(TideMark Mark, int Row)> Lettered(double apart) => Turns.GroupBy(mark => mark.Turn.IsHigh)
        .SelectMany(side => side.Zip(LabelRows.Stack([.. side.Select(mark => mark.At)], apart)));

    /// <summary>The height each hour from the first midnight on, by the place's clock.</summary>
    public IEnumerable<(Instant Time, double Metres)> Hourly => Line.SkipLast(1).Where((_, i) => i % StepsAnHour == 0)
        .Select(point => (From + Duration.FromSeconds(Math.Round((To - From).TotalSeconds * point.At)), point.Metres));

    /// <param name="curve">Covers at least a part of the two days.</param>
    /// <param name="first">The first of them.</param>
    /// <param name="zone">The place's zone.</param>
    /// <param name="now">Marked where it lies within.</param>
    /// <param name="limitMetres">A limit less its allowance; null for none.</param>
    /// <param name="stays">The open periods of the stance; null for none.</param>
    public static TideDrawing Of(TideCurve curve, LocalDate first, DateTimeZone zone, Instant now, double? limitMetres = null, StanceTurns? stays = null)
    {
        var (from, to) = Span(first, zone);
        var start = Instant.Max(from, curve.From);
        var end = Instant.Min(to, curve.To);
        var line = new List<(double, double)>();
        for (var time = start; time < end; time += Step) line.Add((At(time), curve.MetresAt(time)));
        line.Add((At(end), curve.MetresAt(end)));
        var turns = curve.Extremes.Where(turn => turn.Time >= start && turn.Time <= end).Select(turn => new TideMark(At(turn.Time), turn)).ToList();

        var all = line.Select(point => point.Item2).Concat(turns.Select(mark => mark.Turn.Metres)).Concat(limitMetres is { } level ? [level] : []).ToList();
        var range = Math.Max(all.Max() - all.Min(), 0.2);
        var (bottom, top) = (all.Min() - range * Margin, all.Max() + range * Margin);
        return new(from, to, bottom, top, line, turns, [.. HoursOf()],
            [.. Enumerable.Range(0, DaysDrawn).Select(i => (At(zone.AtStartOfDay(first.PlusDays(i)).ToInstant()), first.PlusDays(i)))],
            LevelsBetween(all.Min() - range * Margin / 2, all.Max() + range * Margin / 2),
            now >= start && now <= end ? (At(now), curve.MetresAt(now)) : null,
            limitMetres, [.. NotUsable().Select(run => (At(run.Start), At(run.End)))],
            stays?.Shown is { } shown ? [.. shown.Stays.Select(stays.TurnBack).OfType<Instant>().Where(time => time > now && time >= from && time <= to).Select(time => (At(time), time))] : []);

        double At(Instant time) => (time - from) / (to - from);

        IEnumerable<(Instant Start, Instant End)> NotUsable()
        {
            if (stays?.Shown is not { } way)
                return limitMetres is { } limit ? curve.Above(limit).Where(run => run.End > start && run.Start < end).Select(run => (Instant.Max(run.Start, start), Instant.Min(run.End, end))) : [];

            var since = from;
            var shut = new List<(Instant, Instant)>();
            foreach (var stay in way.Stays)
            {
                if (stay.From is { } opens && opens > since) shut.Add((since, opens));
                since = Instant.Max(since, stay.TurnBack ?? to);
            }

            if (since < to) shut.Add((since, to));
            return shut;
        }

        IEnumerable<(double, int)> HoursOf()
        {
            for (var day = 0; day < DaysDrawn; day++)
                foreach (var hour in (int[])[0, 6, 12, 18])
                    yield return (At(zone.AtLeniently(first.PlusDays(day).At(new LocalTime(hour, 0))).ToInstant()), hour);
        }
    }

    /// <summary>Round heights, four to eight of them.</summary>
    private static double[] LevelsBetween(double bottom, double top)
    {
        double[] steps = [0.05, 0.1, 0.2, 0.5, 1, 2, 5];
        var step = steps.FirstOrDefault(s => (top - bottom) / s <= 8, 5);
        var first = (int)Math.Ceiling(bottom / step);
        return [.. Enumerable.Range(first, Math.Max(0, (int)Math.Floor(top / step) - first + 1)).Select(i => i * step)];
    }
}
