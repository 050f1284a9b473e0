using NodaTime;

namespace Foreshore.Almanac.Sun;

/// <summary>
/// One solar day at one place: from the sun's lower transit before a noon to the one after it. What does not happen is
/// null. Twilights are the centre's airless −6, −12 and −18 degrees, without skyline.
/// </summary>
/// <param name="Date">The local date on whose clock the noon falls.</param>
/// <param name="MidnightBefore">The sun crosses the meridian below the pole.</param>
/// <param name="Noon">The sun crosses the meridian above the pole (upper transit).</param>
/// <param name="MidnightAfter">The next crossing below the pole.</param>
/// <param name="NoonAltitudeDegrees">Airless altitude of the centre at <paramref name="Noon"/>, degrees.</param>
/// <param name="MidnightAltitudeDegrees">Airless altitude of the centre at <paramref name="MidnightAfter"/>, degrees.</param>
/// <param name="AstronomicalDawn">−18 degrees, rising.</param>
/// <param name="NauticalDawn">−12 degrees, rising.</param>
/// <param name="CivilDawn">−6 degrees, rising.</param>
/// <param name="StandardRise">−50′, rising, as in the printed tables: level horizon, no dip.</param>
/// <param name="Rise">The upper limb as seen comes over the observer's own skyline, for the first time that day.</param>
/// <param name="Set">The upper limb as seen goes below the observer's own skyline, for the last time that day.</param>
/// <param name="StandardSet">−50′, setting, as in the printed tables.</param>
/// <param name="CivilDusk">−6 degrees, setting.</param>
/// <param name="NauticalDusk">−12 degrees, setting.</param>
/// <param name="AstronomicalDusk">−18 degrees, setting.</param>
public sealed record SunDay(
    LocalDate Date,
    Instant MidnightBefore,
    Instant Noon,
    Instant MidnightAfter,
    double NoonAltitudeDegrees,
    double MidnightAltitudeDegrees,
    Instant? AstronomicalDawn,
    Instant? NauticalDawn,
    Instant? CivilDawn,
    Instant? StandardRise,
    Instant? Rise,
    Instant? Set,
    Instant? StandardSet,
    Instant? CivilDusk,
    Instant? NauticalDusk,
    Instant? AstronomicalDusk);
