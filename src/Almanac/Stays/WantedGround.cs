using Foreshore.Almanac.Light;
using Foreshore.Almanac.Tides;
using Foreshore.Almanac.Time;

namespace Foreshore.Almanac.Stays;

/// <summary>The state of the ground in front.</summary>
/// <param name="IsWashed">Washed: covered within three hours, bare now. Else dry: not covered for six hours. Both are judgements, no source.</param>
/// <param name="ForegroundMetres">Height of that ground above the curve's datum.</param>
public sealed record WantedGround(bool IsWashed, double ForegroundMetres)
{
    /// <summary>Washed ground stays wet so long, hours.</summary>
    public const double WashedHours = 3;

    /// <summary>Ground is dry after so long, hours.</summary>
    public const double DryHours = 6;

    /// <summary>When it holds over a curve's span. What was covered before the span is not known: its first hours count for neither.</summary>
    internal List<Stretch> Over(TideCurve tide)
    {
        double from = JulianDay.DaysFromJ2000(tide.From), to = JulianDay.DaysFromJ2000(tide.To);
        var covered = Spans.Of(tide.Above(ForegroundMetres));
        if (IsWashed)
            return Stretch.Intersection(Stretch.Without([new(from, to)], covered), Stretch.Union([[.. covered.Select(span => new Stretch(span.End, span.End + WashedHours / 24))]]));
        var wet = covered.Select(span => span with { End = span.End + DryHours / 24 });
        return Stretch.Without([new(from + DryHours / 24, to)], Stretch.Union([[.. wet]]));
    }
}
