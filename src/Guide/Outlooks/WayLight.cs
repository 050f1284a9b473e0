using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Guide.Outlooks;

/// <summary>When a walk is lit by at least civil twilight, over a date and the one after; any other time counts as dark.</summary>
internal sealed class WayLight
{
    /// <summary>A walk takes so much longer in the dark: common practice, no source.</summary>
    public const double DarkFactor = 1.4;

    private const double CivilDegrees = -6;

    private readonly List<Interval> lit = [];

    public WayLight(SunDay day, SunDay dayAfter)
    {
        foreach (var one in (SunDay[])[day, dayAfter])
        {
            var (start, end) = (one.CivilDawn ?? one.MidnightBefore, one.CivilDusk ?? one.MidnightAfter);
            // Without a dawn the sun has either been up to −6 since midnight or does not come up to it at all.
            if (one.NoonAltitudeDegrees < CivilDegrees || end <= start)
                continue;
            if (lit.Count > 0 && day.CivilDusk is null && dayAfter.CivilDawn is null)
                lit[0] = new(lit[0].Start, end);
            else
                lit.Add(new(start, end));
        }
    }

    public IReadOnlyList<Interval> Lit => lit;

    /// <summary>A walk that begins after a ride from a gate's opening; dark in any minute makes all of it dark.</summary>
    public Duration WalkFrom(Instant opening, Duration ride, Duration walk) =>
        IsLit(opening, opening + ride + walk * DarkFactor) ? walk : walk * DarkFactor;

    /// <summary>A walk that ends, with a ride after it, by a gate's closing.</summary>
    public Duration WalkBefore(Instant closing, Duration ride, Duration walk) =>
        IsLit(closing - ride - walk * DarkFactor, closing) ? walk : walk * DarkFactor;

    private bool IsLit(Instant from, Instant to) => lit.Exists(stretch => stretch.Start <= from && to <= stretch.End);
}
