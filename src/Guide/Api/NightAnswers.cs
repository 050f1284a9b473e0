using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Almanac.Moon;
using NodaTime;

namespace Foreshore.Guide.Api;

/// <summary>The moon of a local date, midnight to midnight; null where an event does not come.</summary>
/// <param name="StandardRise">Upper limb over a level horizon with 34′ of air, as almanacs print it.</param>
/// <param name="Rise">Apparent upper limb at the horizon, dip counted.</param>
/// <param name="Transit">Upper transit.</param>
/// <param name="TransitAltitudeDegrees">Airless altitude of the centre then.</param>
/// <param name="Set">Apparent upper limb at the horizon, dip counted.</param>
/// <param name="StandardSet">As almanacs print it.</param>
/// <param name="IsUpAtStart">Whether it stands above the horizon as the date begins.</param>
/// <param name="IlluminatedFraction">Lit part of the disc at noon by the clock, 0 to 1.</param>
/// <param name="PhaseAngleDegrees">Angle Sun – Moon – Earth at noon by the clock.</param>
/// <param name="BrightLimbDegrees">Position angle of the lit limb, from north towards the east.</param>
/// <param name="IsWaxing">Whether the lit part grows.</param>
/// <param name="AgeDays">Days since new moon.</param>
/// <param name="RelativeBrightness">Light as a share of a full moon's at mean distance: not proportional to the lit part.</param>
/// <param name="DistanceKm">From the Earth's centre.</param>
/// <param name="NextPhase">newMoon, firstQuarter, fullMoon or lastQuarter.</param>
/// <param name="NextPhaseAt">When that is.</param>
internal sealed record MoonAnswer(
    DateTimeOffset? StandardRise, DateTimeOffset? Rise, DateTimeOffset? Transit, double? TransitAltitudeDegrees, DateTimeOffset? Set, DateTimeOffset? StandardSet,
    bool IsUpAtStart, double IlluminatedFraction, double PhaseAngleDegrees, double BrightLimbDegrees, bool IsWaxing, double AgeDays, double RelativeBrightness,
    double DistanceKm, PrincipalPhase NextPhase, DateTimeOffset NextPhaseAt)
{
    public static MoonAnswer Of(MoonDay day, Instant noon, DateTimeZone zone, MoonEphemeris ephemeris)
    {
        var phase = MoonPhases.At(noon);
        var next = MoonPhases.Between(noon, noon + Duration.FromDays(10))[0];
        return new(day.StandardRise.At(zone), day.Rise.At(zone), day.Transit.At(zone), Rounded(day.TransitAltitudeDegrees), day.Set.At(zone), day.StandardSet.At(zone),
            day.IsUpAtStart, Math.Round(phase.IlluminatedFraction, 4), Math.Round(phase.PhaseAngleDegrees, 2), Math.Round(phase.BrightLimbDegrees, 1), phase.IsWaxing,
            Math.Round(MoonPhases.AgeDays(noon), 2), Math.Round(phase.RelativeBrightness, 4), Math.Round(ephemeris.DistanceKmAt(noon)), next.Phase, next.Time.At(zone));
    }

    private static double? Rounded(double? degrees) => degrees is { } known ? Math.Round(known, 3) : null;
}

/// <summary>The night's dark: sun 18° down, and the moon down or giving under a twentieth of a full moon's light.</summary>
/// <param name="From">The solar noon it is looked for from…</param>
/// <param name="To">…to the next noon but for a day's drift.</param>
/// <param name="Dark">Dark windows; cloud and lamps are not counted.</param>
/// <param name="CoreUp">The parts of them in which the galaxy's core (l = b = 0) stands 10° high or more.</param>
internal sealed record NightAnswer(DateTimeOffset From, DateTimeOffset To, IReadOnlyList<SpanAnswer> Dark, IReadOnlyList<SpanAnswer> CoreUp)
{
    public static NightAnswer Of(Instant solarNoon, Observer observer, DateTimeZone zone, SkyEphemeris ephemeris)
    {
        var end = solarNoon + Duration.FromDays(1);
        return new(solarNoon.At(zone), end.At(zone),
            Spans(DarkSky.Between(observer.Position, solarNoon, end, ephemeris), zone), Spans(DarkSky.CoreBetween(observer, solarNoon, end, ephemeris), zone));
    }

    private static SpanAnswer[] Spans(IEnumerable<Interval> windows, DateTimeZone zone) => [.. windows.Select(window => SpanAnswer.Of(window, zone)!)];
}
