using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Moon;
using Foreshore.Almanac.Stars;
using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Almanac.Light;

/// <summary>Where sun, moon and galaxy are over one span of time, worked out once and shared by all places.</summary>
/// <param name="Sun">The sun's way.</param>
/// <param name="Moon">The moon's way.</param>
public sealed record SkyEphemeris(SunEphemeris Sun, MoonEphemeris Moon)
{
    private readonly GalaxyEphemeris galaxy = GalaxyEphemeris.Covering(Instant.Max(Sun.From, Moon.From), Instant.Min(Sun.To, Moon.To));

    /// <summary>The galaxy's way.</summary>
    public GalaxyEphemeris Galaxy => galaxy;

    /// <summary>First instant that may be asked for.</summary>
    public Instant From => Instant.Max(Sun.From, Moon.From);

    /// <summary>Last instant that may be asked for.</summary>
    public Instant To => Instant.Min(Sun.To, Moon.To);

    /// <summary>Works out both ways from one instant to another: about 20 microseconds a day.</summary>
    /// <param name="from">First instant that will be asked for.</param>
    /// <param name="to">Last one; not before the first, at most 250 years after it.</param>
    /// <exception cref="ArgumentOutOfRangeException">The span is turned round or too long.</exception>
    public static SkyEphemeris Covering(Instant from, Instant to) =>
        new(SunEphemeris.Covering(from, to), MoonEphemeris.Covering(from, to));

    /// <summary>The moon's lit fraction, and its light as a share of a full moon's.</summary>
    internal (double Fraction, double Brightness) MoonlightAt(double days)
    {
        var (a, b, c, distance) = Sun.VectorAt(days);
        var (x, y, z) = Moon.VectorAt(days);
        var radii = Math.Sqrt(x * x + y * y + z * z);
        var km = radii * (Ellipsoid.EquatorialMetres / 1000);
        var angle = MoonBrightness.PhaseAngle((a * x + b * y + c * z) / radii, km, distance);
        return ((1 + Math.Cos(angle)) / 2, MoonBrightness.Relative(angle * (180 / Math.PI), km, distance));
    }
}
