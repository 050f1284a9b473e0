namespace Foreshore.Almanac.Earth;

/// <summary>What a skyline is to be computed for, and how finely.</summary>
/// <param name="Position">Where the eye is; at most 85 degrees from the equator.</param>
/// <param name="EyeMetresAboveSea">Height of the eye above mean sea level, metres, −500…10,000.</param>
public sealed record SkylineQuestion(Position Position, double EyeMetresAboveSea)
{
    /// <summary>
    /// How much of the Earth's curvature the air takes back along a line near the ground: C. F. Gauss's 0.13, from his survey
    /// of Hanover, the value of surveying to this day (W. Torge and J. Müller, Geodesy, 4th ed., section 5.1). From 0 to 1, 1 excluded.
    /// </summary>
    public double RefractionCoefficient { get; init; } = 0.13;

    /// <summary>How far ground is looked for, metres. A 1,000 m summit shows over the sea at 120 km.</summary>
    public double ReachMetres { get; init; } = 100_000;

    /// <summary>Rays round the circle, 360…36,000; 7,200 stand a twentieth of a degree apart.</summary>
    public int Rays { get; init; } = 7200;

    /// <summary>How far, degrees of altitude, the corners' straight lines may leave the edge that was found.</summary>
    public double ToleranceDegrees { get; init; } = 0.02;

    /// <summary>Most corners; where the tolerance needs more, it is widened, and the answer says how far.</summary>
    public int MostCorners { get; init; } = 240;

    /// <summary>Take ground outside all grids as open sea. Otherwise it is unknown.</summary>
    public bool OutsideIsSea { get; init; }

    internal void Check()
    {
        if (!(Math.Abs(Position.LatitudeDegrees) <= 85))
            throw new ArgumentOutOfRangeException(nameof(Position), Position.LatitudeDegrees, "Skylines are computed up to 85 degrees from the equator.");
        Require(EyeMetresAboveSea is >= -500 and <= 10_000, nameof(EyeMetresAboveSea), EyeMetresAboveSea, "The eye is from −500 to 10,000 m above mean sea level.");
        Require(RefractionCoefficient is >= 0 and < 1, nameof(RefractionCoefficient), RefractionCoefficient, "A refraction coefficient lies from 0 to below 1.");
        Require(ReachMetres is >= 100 and <= 400_000, nameof(ReachMetres), ReachMetres, "Ground is looked for over 100 m to 400 km.");
        Require(Rays is >= 360 and <= 36_000, nameof(Rays), Rays, "Rays are 360 to 36,000 round the circle.");
        Require(ToleranceDegrees is > 0 and <= 1, nameof(ToleranceDegrees), ToleranceDegrees, "The tolerance is above 0 and at most a degree.");
        Require(MostCorners is >= 8 and <= 36_000, nameof(MostCorners), MostCorners, "At least 8 corners are allowed for.");
    }

    private static void Require(bool holds, string name, double value, string message)
    {
        if (!holds) throw new ArgumentOutOfRangeException(name, value, message);
    }
}

/// <summary>A skyline computed from ground heights.</summary>
/// <param name="Skyline">The edge, altitudes as seen.</param>
/// <param name="ToleranceDegrees">How far its lines may leave the edge that was found: the one asked for, or wider.</param>
/// <param name="GroundMetres">Ground at the stance by the grids, metres above mean sea level; null where unknown. Above the eye, what lies near is not to be relied on.</param>
/// <param name="HighestMetres">Highest ground in the grids, metres: unmeasured ground was taken as no higher.</param>
/// <param name="UnknownShare">Share of the circle that stays unknown, 0…1.</param>
public sealed record ComputedSkyline(Skyline Skyline, double ToleranceDegrees, double? GroundMetres, double HighestMetres, double UnknownShare);
