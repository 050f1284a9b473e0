using Foreshore.Almanac.Tides;
using NodaTime;

namespace Foreshore.Guide.Tides;

/// <summary>Where the water is on its way, as people say it.</summary>
public enum TideState { Low, Rising, High, Falling }

/// <summary>The tide at one moment and the turns about it.</summary>
public sealed record TideNow(TideState State, double Metres, TideExtreme Next, TideExtreme? AfterNext)
{
    /// <summary>
    /// Of the time from one turn to the next, the part at either end in which the water is called high or low: with six hours
    /// between turns that is the hour in which, by the rule of twelfths, a twelfth of the range comes or goes. Mine.
    /// </summary>
    private const double NearTurn = 1 / 6.0;

    /// <summary>Null where the curve does not reach, or has no turn on either side.</summary>
    public static TideNow? Of(TideCurve? curve, Instant now)
    {
        if (curve is null || now < curve.From || now > curve.To || curve.Before(now) is not { } before || curve.After(now) is not { } next)
            return null;

        var done = (now - before.Time) / (next.Time - before.Time);
        var state = done < NearTurn ? AtTurn(before) : done > 1 - NearTurn ? AtTurn(next) : next.IsHigh ? TideState.Rising : TideState.Falling;
        return new(state, curve.MetresAt(now), next, next.Time < curve.To ? curve.After(next.Time) : null);
    }

    private static TideState AtTurn(TideExtreme turn) => turn.IsHigh ? TideState.High : TideState.Low;
}
