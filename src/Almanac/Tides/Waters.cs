using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Tides;

/// <summary>High and low waters of a curve, those of its margins too; and every turn, kept or not, for the search of crossings.</summary>
internal sealed class Waters
{
    private Waters(List<TideExtreme> all) => All = all;

    internal List<TideExtreme> All { get; }

    /// <summary>How many lie at or before an instant.</summary>
    internal int CountUpTo(Instant instant)
    {
        int low = 0, high = All.Count;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (All[middle].Time <= instant) low = middle + 1;
            else high = middle;
        }

        return low;
    }

    internal static Waters Of(TideKnots knots, double leastRiseMetres)
    {
        var turns = Turns(knots);
        DropStands(turns, leastRiseMetres);
        return new Waters([.. turns.Select(turn => new TideExtreme(JulianDay.FromDays(turn.Days), turn.Metres, turn.High))]);
    }

    private static List<(double Days, double Metres, bool High)> Turns(TideKnots knots)
    {
        var turns = new List<(double, double, bool)>();
        var slopes = knots.Slopes;
        var was = 0;
        for (var i = 0; i < slopes.Length; i++)
        {
            // Nearly every knot: the slope goes on as it was.
            if (was > 0 ? slopes[i] > 0 : was < 0 && slopes[i] < 0) continue;
            var sign = Math.Sign(slopes[i]);
            if (sign == 0) continue;
            if (was == -sign)
            {
                // The knot before has the other sign, or is the turn itself, or the last of a level stretch.
                if (slopes[i - 1] == 0)
                {
                    turns.Add((knots.TimeOf(i - 1), knots.Metres[i - 1], sign < 0));
                }
                else
                {
                    var piece = knots.Piece(i - 1);
                    var days = piece.TurnsAt();
                    turns.Add((days, piece.Metres(days), sign < 0));
                }
            }

            was = sign;
        }

        return turns;
    }

    private static void DropStands(List<(double Days, double Metres, bool High)> turns, double leastRiseMetres)
    {
        while (turns.Count > 1)
        {
            var smallest = 1;
            for (var i = 2; i < turns.Count; i++)
                if (Rise(turns, i) < Rise(turns, smallest)) smallest = i;
            if (Rise(turns, smallest) >= leastRiseMetres) return;
            turns.RemoveRange(smallest - 1, 2);
        }
    }

    private static double Rise(List<(double Days, double Metres, bool High)> turns, int i) => Math.Abs(turns[i].Metres - turns[i - 1].Metres);
}
