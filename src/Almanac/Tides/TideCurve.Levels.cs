using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Tides;

public sealed partial class TideCurve
{
    /// <summary>When the tide passes a level within the span, in order. Touching it without passing does not count.</summary>
    /// <param name="metres">The level, above the curve's datum.</param>
    /// <exception cref="ArgumentOutOfRangeException">The level is not a number.</exception>
    public IReadOnlyList<LevelCrossing> Crossings(double metres)
    {
        if (!double.IsFinite(metres))
            throw new ArgumentOutOfRangeException(nameof(metres), metres, "A level is a number of metres.");
        double from = JulianDay.DaysFromJ2000(From), to = JulianDay.DaysFromJ2000(To);
        var found = new List<LevelCrossing>();
        bool? above = null;
        for (var i = knots.Before(from); i < knots.Count - 1 && knots.TimeOf(i) < to; i++)
        {
            double h0 = knots.Metres[i] - metres, h1 = knots.Metres[i + 1] - metres, s0 = knots.Slopes[i], s1 = knots.Slopes[i + 1];
            double start = Math.Max(from, knots.TimeOf(i)), end = Math.Min(to, knots.TimeOf(i + 1));
            // Wholly on one side: both ends are, and it does not turn between them.
            if (above is not null && h0 > 0 == h1 > 0 && s0 * s1 > 0 && h0 > 0 == above) continue;
            var piece = knots.Piece(i);
            above ??= piece.Metres(start) > metres;
            if (s0 * s1 < 0 && piece.TurnsAt() is var turn && turn > start && turn < end)
            {
                above = Pass(piece, metres, start, turn, above.Value, found);
                start = turn;
            }

            above = Pass(piece, metres, start, end, above.Value, found);
        }

        return found;
    }

    /// <summary>When the tide stands below a level, within the span.</summary>
    /// <param name="metres">The level, above the curve's datum.</param>
    /// <exception cref="ArgumentOutOfRangeException">The level is not a number.</exception>
    public IReadOnlyList<Interval> Below(double metres) => Stretches(metres, rising: false);

    /// <summary>When the tide stands above a level, within the span.</summary>
    /// <param name="metres">The level, above the curve's datum.</param>
    /// <exception cref="ArgumentOutOfRangeException">The level is not a number.</exception>
    public IReadOnlyList<Interval> Above(double metres) => Stretches(metres, rising: true);

    private List<Interval> Stretches(double metres, bool rising)
    {
        var stretches = new List<Interval>();
        Instant? since = MetresAt(From) > metres == rising ? From : null;
        foreach (var crossing in Crossings(metres))
        {
            if (crossing.Rising == rising)
            {
                since = crossing.Time;
            }
            else if (since is { } start)
            {
                stretches.Add(new Interval(start, crossing.Time));
                since = null;
            }
        }

        if (since is { } last && last < To) stretches.Add(new Interval(last, To));
        return stretches;
    }

    private static bool Pass(in TidePiece piece, double metres, double start, double end, bool above, List<LevelCrossing> found)
    {
        var then = piece.Metres(end) > metres;
        if (then != above) found.Add(new LevelCrossing(JulianDay.FromDays(piece.Reaches(metres, start, end)), then));
        return then;
    }
}
