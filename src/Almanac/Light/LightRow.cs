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

/// <summary>Where the galaxy stands to the picture.</summary>
public enum GalaxyNeed
{
    /// <summary>Anywhere.</summary>
    Any,

    /// <summary>
    /// Its centre over the skyline, within half the angle of view of the facing, and at least
    /// <see cref="LightRow.CoreLowestDegrees"/> high, or <see cref="LightRow.CoreLowestOverSeaDegrees"/> over a sea horizon
    /// where the scene says so.
    /// </summary>
    CoreInSpan,

    /// <summary>Its band, <see cref="Stars.Galactic.BandHalfWidthDegrees"/> to each side of its plane, above level inside the picture's edges.</summary>
    BandInFrame,
}

/// <summary>What a row asks of the moon. What is left null is not asked for.</summary>
public sealed record MoonTerms
{
    /// <summary>Least lit fraction of the disc, 0…1.</summary>
    public double? LeastLit { get; init; }

    /// <summary>Greatest lit fraction of the disc, 0…1.</summary>
    public double? MostLit { get; init; }

    /// <summary>Lowest airless altitude of the centre, degrees.</summary>
    public double? LowestDegrees { get; init; }

    /// <summary>Highest airless altitude of the centre, degrees.</summary>
    public double? HighestDegrees { get; init; }

    /// <summary>How far its centre as seen stands above the skyline below it at most, degrees; then it stands no lower than the skyline.</summary>
    public double? MostOverSkylineDegrees { get; init; }

    /// <summary>Whether some part of its disc must be seen above the skyline.</summary>
    public bool IsSeen { get; init; }

    /// <summary>Where its centre as seen stands to the picture.</summary>
    public FrameNeed Frame { get; init; }
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

    /// <summary>What is asked of the moon; null: nothing but <see cref="NeedsDarkMoon"/>.</summary>
    public MoonTerms? Moon { get; init; }

    /// <summary>Whether the moon must be down, its upper limb below a level horizon, or give little light: see <see cref="Almanac.Moon.MoonBrightness.Little"/>.</summary>
    public bool NeedsDarkMoon { get; init; }

    /// <summary>Where the galaxy stands.</summary>
    public GalaxyNeed Galaxy { get; init; }

    /// <summary>Lowest altitude of the galaxy's centre that is worth a picture, degrees.</summary>
    public const double CoreLowestDegrees = 10;

    /// <summary>The same over a clear sea horizon, where a scene says that it is one.</summary>
    public const double CoreLowestOverSeaDegrees = 5;

    /// <summary>Whether it needs the sun below −12 degrees: a light of the night, counted by the hours of the night.</summary>
    public bool IsOfTheNight => HighestDegrees <= -12;

    /// <summary>Whether all it is judged by can be computed: cloud can't.</summary>
    public bool IsComputed => (Needs & LightNeeds.Cloud) == 0;

    /// <summary>Whether the skyline decides anything.</summary>
    public bool LooksAtSkyline =>
        Disc != DiscNeed.Any || WithinLandSkylineDegrees is not null
        || Moon is { IsSeen: true } or { MostOverSkylineDegrees: not null } || Galaxy == GalaxyNeed.CoreInSpan;
}
