using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Almanac.Moon;
using Foreshore.Almanac.Sun;
using Foreshore.Guide.Shell;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>
/// One line of the light table: the sun's events of a day, the moon at its solar noon and over the date and, for a picture, when its wanted light holds (null where no
/// picture is meant) and which lights may hold but can't be judged.
/// </summary>
public sealed record LightDay(SunDay Sun, MoonPhase Moon, MoonSpan MoonUp, IReadOnlyList<Interval>? Wanted, IReadOnlyList<WantedLight> MayHold)
{
    /// <summary>Upper limb on a level horizon: −0.833 degrees, as the printed tables have it.</summary>
    private const double Level = -0.833;

    /// <summary>A clock time, or that the event does not come and why.</summary>
    public string Clock(Instant? at, DateTimeZone zone, double altitudeDegrees = Level) => at is { } time ? time.Clock(zone)
        : Sun.NoonAltitudeDegrees < altitudeDegrees ? "stays below"
        : Sun.MidnightAltitudeDegrees > altitudeDegrees ? "stays above" : "none";
}

/// <summary>The light of the coming days at one place.</summary>
public static class LightDays
{
    public const int Usual = 10;

    public static IReadOnlyList<LightDay> From(LocalDate first, Observer observer, DateTimeZone zone, SkyEphemeris sky, Scene? scene = null) =>
        [.. Enumerable.Range(0, Usual).Select(i => On(first.PlusDays(i), observer, zone, sky, scene))];

    private static LightDay On(LocalDate date, Observer observer, DateTimeZone zone, SkyEphemeris sky, Scene? scene)
    {
        var day = SunDays.On(date, observer, zone, sky.Sun);
        var moon = MoonPhases.At(day.Noon);
        var up = MoonDays.Between(zone.AtStartOfDay(date).ToInstant(), zone.AtStartOfDay(date.PlusDays(1)).ToInstant(), observer, sky.Moon);
        if (scene is null)
            return new LightDay(day, moon, up, null, []);

        // A night's light belongs to the evening it begins in, so the day reaches from one solar midnight to the next.
        var answer = LightRuns.Between(scene, day.MidnightBefore, day.MidnightAfter, sky);
        return new LightDay(day, moon, up, answer.Union, answer.Unknown);
    }
}
