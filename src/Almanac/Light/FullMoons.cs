using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Moon;
using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Almanac.Light;

/// <summary>A nearly full moon on the horizon while the land is still, or already, lit.</summary>
/// <param name="Moon">When its upper limb rises or sets over the own skyline.</param>
/// <param name="IsRising">Rising at dusk, or setting at dawn.</param>
/// <param name="Sun">When the sun sets or rises there.</param>
/// <param name="AzimuthDegrees">Where the moon stands then, degrees.</param>
/// <param name="IlluminatedFraction">Its lit part, 0…1.</param>
public sealed record FullMoonAtTwilight(Instant Moon, bool IsRising, Instant Sun, double AzimuthDegrees, double IlluminatedFraction);

/// <summary>Moonrises near full at dusk and moonsets near full at dawn. The numbers are common practice, no source.</summary>
public static class FullMoons
{
    /// <summary>Least lit part.</summary>
    public const double LeastLit = 0.95;

    /// <summary>The usual greatest time between the moon's rise and sunset, minutes.</summary>
    public const int UsualMinutes = 30;

    // A moon 95 % lit is at most 2.3 days from full.
    private const int DaysAround = 3;

    /// <summary>All of them on some local dates, by time.</summary>
    /// <param name="first">First date.</param>
    /// <param name="last">Last date, counted; not before the first.</param>
    /// <param name="observer">Where, how high, and over which skyline.</param>
    /// <param name="zone">The clock of the place.</param>
    /// <param name="ephemeris">Covers the dates and two days on each side.</param>
    /// <param name="withinMinutes">Greatest time between moon and sun, minutes.</param>
    /// <exception cref="ArgumentOutOfRangeException">The dates leave the ephemeris or are turned round.</exception>
    public static IReadOnlyList<FullMoonAtTwilight> Between(
        LocalDate first, LocalDate last, Observer observer, DateTimeZone zone, SkyEphemeris ephemeris, int withinMinutes = UsualMinutes)
    {
        ArgumentNullException.ThrowIfNull(observer);
        ArgumentNullException.ThrowIfNull(zone);
        ArgumentNullException.ThrowIfNull(ephemeris);
        if (last < first)
            throw new ArgumentOutOfRangeException(nameof(last), last, "The last date lies no earlier than the first.");

        var found = new List<FullMoonAtTwilight>();
        var (from, to) = (first.PlusDays(-DaysAround), last.PlusDays(DaysAround + 1));
        foreach (var full in MoonPhases.Between(zone.AtStartOfDay(from).ToInstant(), zone.AtStartOfDay(to).ToInstant()).Where(phase => phase.Phase == PrincipalPhase.FullMoon))
        {
            var middle = full.Time.InZone(zone).Date;
            for (var date = middle.PlusDays(-DaysAround); date <= middle.PlusDays(DaysAround); date = date.PlusDays(1))
            {
                if (date < first || date > last) continue;
                var sun = SunDays.On(date, observer, zone, ephemeris.Sun);
                Look(sun.Rise, false);
                Look(sun.Set, true);
            }
        }

        return [.. found.OrderBy(one => one.Moon)];

        // About the sun's event alone: a whole day over a skyline costs twenty times as much.
        void Look(Instant? sun, bool isRising)
        {
            if (sun is not { } twilight) return;
            var (from, to) = (twilight - Duration.FromMinutes(withinMinutes), twilight + Duration.FromMinutes(withinMinutes));
            var span = MoonDays.Between(from, to, observer, ephemeris.Moon);
            if ((isRising ? span.Rise : span.Set) is not { } moon) return;
            var lit = MoonPhases.At(moon).IlluminatedFraction;
            if (lit >= LeastLit)
                found.Add(new FullMoonAtTwilight(moon, isRising, twilight, ephemeris.Moon.At(moon, observer.Position).AzimuthDegrees, lit));
        }
    }
}
