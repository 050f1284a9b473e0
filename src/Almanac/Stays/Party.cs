namespace Foreshore.Almanac.Stays;

/// <summary>Who goes, over what: what a measured walk is stretched by. The factors are common practice, no source.</summary>
public sealed record Party
{
    /// <summary>One person at the measured pace, over dry ground, without a heavy load.</summary>
    public static readonly Party One = new();

    /// <summary>A walk in the dark takes so much longer.</summary>
    public const double DarkFactor = 1.4;

    /// <summary>Over wet rock.</summary>
    public const double WetRockFactor = 1.75;

    /// <summary>Over soft ground.</summary>
    public const double SoftGroundFactor = 1.45;

    /// <summary>With heavy kit.</summary>
    public const double HeavyKitFactor = 1.15;

    /// <summary>The product of dark, rock, ground and kit is taken no higher. The pace comes on top: who is slow is slow over any ground.</summary>
    public const double MostFactor = 3;

    private const int Large = 4;

    /// <summary>How many go, 1 or more; the slowest sets the pace.</summary>
    public int Count { get; init; } = 1;

    /// <summary>Walk of the slowest over the measured walk, 1 or more.</summary>
    public double Pace { get; init; } = 1;

    /// <summary>The rock is wet.</summary>
    public bool WetRock { get; init; }

    /// <summary>The ground is soft.</summary>
    public bool SoftGround { get; init; }

    /// <summary>The kit is heavy.</summary>
    public bool HeavyKit { get; init; }

    /// <summary>Packing the kit, minutes: 5, for four or more 10.</summary>
    public double PackingMinutes => Count >= Large ? 10 : 5;

    /// <summary>What a measured walk is multiplied by: the pace times 1…3.</summary>
    /// <param name="isDark">The sun is below −6 degrees in some minute of it.</param>
    /// <param name="ground">What the ground multiplies it by, 1 or more.</param>
    public double Factor(bool isDark, double ground = 1) => Math.Max(1, Pace) * Math.Min(MostFactor, (isDark ? DarkFactor : 1) * Math.Max(1, ground)
        * (WetRock ? WetRockFactor : 1) * (SoftGround ? SoftGroundFactor : 1) * (HeavyKit ? HeavyKitFactor : 1));
}
