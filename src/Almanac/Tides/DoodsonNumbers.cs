namespace Foreshore.Almanac.Tides;

/// <summary>
/// The whole numbers that make up a constituent's argument (A. T. Doodson 1921; here as they are, without the five that is
/// added in print): V = τ·LunarTime + s·Moon + h·Sun + p·Perigee + p₁·SolarPerigee + 90°·QuarterTurns. All speeds follow from them.
/// </summary>
/// <param name="LunarTime">Of τ, the mean lunar time: 0 long period, 1 once a day, 2 twice a day…</param>
/// <param name="Moon">Of s, the mean longitude of the moon.</param>
/// <param name="Sun">Of h, the mean longitude of the sun.</param>
/// <param name="Perigee">Of p, the longitude of the lunar perigee.</param>
/// <param name="SolarPerigee">Of p₁, the longitude of the solar perigee.</param>
/// <param name="QuarterTurns">Of 90 degrees, constant.</param>
public readonly record struct DoodsonNumbers(int LunarTime, int Moon, int Sun, int Perigee, int SolarPerigee, int QuarterTurns)
{
    /// <summary>Degrees per mean solar hour.</summary>
    internal double SpeedDegreesPerHour =>
        LunarTime * AstronomicalArguments.LunarTimePerHour + Moon * AstronomicalArguments.MoonPerHour + Sun * AstronomicalArguments.SunPerHour
        + Perigee * AstronomicalArguments.PerigeePerHour + SolarPerigee * AstronomicalArguments.SolarPerigeePerHour;

    /// <summary>The sum of two arguments.</summary>
    public static DoodsonNumbers operator +(DoodsonNumbers a, DoodsonNumbers b) => new(
        a.LunarTime + b.LunarTime, a.Moon + b.Moon, a.Sun + b.Sun, a.Perigee + b.Perigee, a.SolarPerigee + b.SolarPerigee, a.QuarterTurns + b.QuarterTurns);

    /// <summary>An argument several times.</summary>
    public static DoodsonNumbers operator *(int factor, DoodsonNumbers a) => new(
        factor * a.LunarTime, factor * a.Moon, factor * a.Sun, factor * a.Perigee, factor * a.SolarPerigee, factor * a.QuarterTurns);
}
