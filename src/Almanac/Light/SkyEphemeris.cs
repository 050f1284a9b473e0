using Foreshore.Almanac.Moon;
using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Almanac.Light;

/// <summary>Where sun and moon are over one span of time, worked out once and shared by all places.</summary>
/// <param name="Sun">The sun's way.</param>
/// <param name="Moon">The moon's way.</param>
public sealed record SkyEphemeris(SunEphemeris Sun, MoonEphemeris Moon)
{
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
}
