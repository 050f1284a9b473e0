using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Moon;

/// <summary>The four principal phases.</summary>
public enum PrincipalPhase
{
    /// <summary>Sun and moon share an apparent longitude.</summary>
    NewMoon,

    /// <summary>The moon 90 degrees east of the sun.</summary>
    FirstQuarter,

    /// <summary>Opposite the sun.</summary>
    FullMoon,

    /// <summary>The moon 90 degrees west of the sun.</summary>
    LastQuarter,
}

/// <summary>One principal phase.</summary>
/// <param name="Phase">Which.</param>
/// <param name="Time">When, within about half a minute.</param>
public readonly record struct PhaseTime(PrincipalPhase Phase, Instant Time);

/// <summary>How the moon is lit, seen from the Earth's centre.</summary>
/// <param name="PhaseAngleDegrees">Angle Sun – Moon – Earth, degrees, 0 (full) to 180 (new).</param>
/// <param name="IlluminatedFraction">Lit part of the disc's area, 0…1.</param>
/// <param name="BrightLimbDegrees">Position angle of the middle of the lit limb, degrees from the disc's north point towards the east, [0, 360).</param>
/// <param name="ElongationDegrees">Apparent longitude of the moon less that of the sun, degrees, [0, 360): below 180 the moon waxes.</param>
/// <param name="RelativeBrightness">Light it throws, as a share of a full moon at mean distance: see <see cref="MoonBrightness"/>.</param>
public readonly record struct MoonPhase(
    double PhaseAngleDegrees, double IlluminatedFraction, double BrightLimbDegrees, double ElongationDegrees, double RelativeBrightness)
{
    /// <summary>Whether the lit part grows.</summary>
    public bool IsWaxing => ElongationDegrees < 180;
}

/// <summary>The moon's phases: Meeus, Astronomical Algorithms (2nd ed.), chapter 48; times by root finding.</summary>
public static class MoonPhases
{
    private const double Radian = Math.PI / 180;
    private const double SynodicDays = 29.530588861;
    private const double GainDegreesPerDay = 360 / SynodicDays;

    /// <summary>How the moon is lit at an instant.</summary>
    public static MoonPhase At(Instant instant)
    {
        var (days, deltaT) = (JulianDay.DaysFromJ2000(instant), DeltaT.Seconds(instant));
        return Of(SunPosition.At(days, deltaT), MoonPosition.At(days, deltaT));
    }

    /// <summary>How the moon is lit when sun and moon stand in two places: formulas 48.2, 48.3, 48.1 and 48.5.</summary>
    public static MoonPhase Of(GeocentricSun sun, GeocentricMoon moon)
    {
        var (sinSun, cosSun) = Math.SinCos(sun.DeclinationDegrees * Radian);
        var (sinMoon, cosMoon) = Math.SinCos(moon.DeclinationDegrees * Radian);
        var (sinApart, cosApart) = Math.SinCos((sun.RightAscensionDegrees - moon.RightAscensionDegrees) * Radian);
        var cosElongation = sinSun * sinMoon + cosSun * cosMoon * cosApart;
        var angle = MoonBrightness.PhaseAngle(cosElongation, moon.DistanceKm, sun.DistanceAu);
        var limb = Math.Atan2(cosSun * sinApart, sinSun * cosMoon - cosSun * sinMoon * cosApart) / Radian;
        return new MoonPhase(
            angle / Radian, (1 + Math.Cos(angle)) / 2, Bearing.FromDegrees(limb).Degrees,
            Bearing.FromDegrees(moon.ApparentLongitudeDegrees - sun.ApparentLongitudeDegrees).Degrees,
            MoonBrightness.Relative(angle / Radian, moon.DistanceKm, sun.DistanceAu));
    }

    /// <summary>The principal phases between two instants (the first included, the second not), by time.</summary>
    public static IReadOnlyList<PhaseTime> Between(Instant from, Instant to)
    {
        var (start, end) = (JulianDay.DaysFromJ2000(from), JulianDay.DaysFromJ2000(to));
        var found = new List<PhaseTime>();
        // Quarters come 6.5 to 8.3 days apart; one before the start is looked at too, for guesses run by the mean.
        var quarter = Math.Ceiling(Elongation(start) / 90) - 1;
        var guess = start - (Elongation(start) - 90 * quarter) / GainDegreesPerDay;
        while (guess < end + 2)
        {
            var time = Passing(90 * quarter, guess);
            if (time >= end) break;
            if (time >= start)
                found.Add(new PhaseTime((PrincipalPhase)(((int)quarter % 4 + 4) % 4), JulianDay.FromDays(time)));
            quarter++;
            guess = time + SynodicDays / 4;
        }

        return found;
    }

    /// <summary>Days since the last new moon, 0 to 29.9.</summary>
    public static double AgeDays(Instant instant)
    {
        var days = JulianDay.DaysFromJ2000(instant);
        var elongation = Elongation(days);
        var last = Passing(0, days - elongation / GainDegreesPerDay);
        // Just before a new moon the guess may fall on the coming one.
        return last <= days ? days - last : days - Passing(0, last - SynodicDays);
    }

    private static double Passing(double elongationDegrees, double guess)
    {
        var days = guess;
        for (var round = 0; round < 20; round++)
        {
            var off = Math.IEEERemainder(elongationDegrees - Elongation(days), 360);
            days += off / GainDegreesPerDay;
            if (Math.Abs(off) < 1e-8) break;
        }

        return days;
    }

    private static double Elongation(double days)
    {
        var deltaT = DeltaT.Seconds(2000 + (days + 0.5) / 365.2425);
        return Bearing.FromDegrees(MoonPosition.At(days, deltaT).ApparentLongitudeDegrees - SunPosition.At(days, deltaT).ApparentLongitudeDegrees).Degrees;
    }
}
