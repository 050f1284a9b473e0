namespace Foreshore.Almanac.Light;

/// <summary>Where the sun stands to the picture.</summary>
public enum FrameNeed
{
    /// <summary>Anywhere.</summary>
    Any,

    /// <summary>Its centre as seen (refracted) inside the picture's edges.</summary>
    Inside,

    /// <summary>Its centre as seen outside them.</summary>
    Outside,
}

/// <summary>Whether the sun's disc must be seen: any part of it above the skyline as seen, dip counted.</summary>
public enum DiscNeed
{
    /// <summary>Seen or not.</summary>
    Any,

    /// <summary>Some part of it.</summary>
    Visible,

    /// <summary>Some part of it while the centre's airless altitude is above 0; below that, seen or not.</summary>
    VisibleWhenAboveLevel,
}

/// <summary>What a light is judged by besides place, time and facing.</summary>
[Flags]
public enum LightNeeds
{
    /// <summary>The sun alone.</summary>
    Sun = 0,

    /// <summary>The moon.</summary>
    Moon = 1,

    /// <summary>Where the galaxy stands.</summary>
    Galaxy = 2,

    /// <summary>The cloud, from a feed or from somebody's eye.</summary>
    Cloud = 4,
}

/// <summary>How far a row may be leant on.</summary>
public enum LightStanding
{
    /// <summary>Common practice among photographers; no source gives the numbers.</summary>
    Practice,

    /// <summary>The sun's altitude is a standard twilight angle (−6, −12, −18: the almanacs); the rest is common practice.</summary>
    StandardTwilight,
}

/// <summary>One row of the light table: when a wanted light holds. What is left null is not asked for.</summary>
/// <param name="Light">The light.</param>
/// <param name="Name">What it is called.</param>
/// <param name="When">When it holds, in words.</param>
/// <param name="LeastMinutes">Shortest run that counts, minutes.</param>
/// <param name="Standing">Where the numbers come from.</param>
public sealed record LightRow(WantedLight Light, string Name, string When, int LeastMinutes, LightStanding Standing = LightStanding.Practice)
{
    /// <summary>Lowest airless altitude of the sun's centre, degrees.</summary>
    public double? LowestDegrees { get; init; }

    /// <summary>Highest airless altitude of the sun's centre, degrees.</summary>
    public double? HighestDegrees { get; init; }

    /// <summary>Least difference between the sun's azimuth and the facing, degrees, 0…180.</summary>
    public double? LeastRelDegrees { get; init; }

    /// <summary>Greatest difference between the sun's azimuth and the facing, degrees, 0…180.</summary>
    public double? MostRelDegrees { get; init; }

    /// <summary>Where the sun stands to the picture.</summary>
    public FrameNeed Frame { get; init; }

    /// <summary>Whether the sun's disc must be seen.</summary>
    public DiscNeed Disc { get; init; }

    /// <summary>How near the sun's centre as seen must be to a skyline of land, above or below it, degrees.</summary>
    public double? WithinLandSkylineDegrees { get; init; }

    /// <summary>
    /// What else it is judged by. Where that can't be computed the light is unknown while the sun's part holds, and
    /// does not hold while the sun's part fails.
    /// </summary>
    public LightNeeds Needs { get; init; }

    /// <summary>Whether the skyline decides anything.</summary>
    public bool LooksAtSkyline => Disc != DiscNeed.Any || WithinLandSkylineDegrees is not null;
}
