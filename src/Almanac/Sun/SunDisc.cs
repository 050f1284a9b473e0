using Foreshore.Almanac.Earth;

namespace Foreshore.Almanac.Sun;

/// <summary>The sun as a disc.</summary>
public static class SunDisc
{
    /// <summary>Airless altitude of the centre at which the printed tables let the sun rise and set: −50′, of which 34′ are air and 16′ the disc.</summary>
    public const double StandardAltitudeDegrees = -50.0 / 60;

    /// <summary>Half the disc's angle, degrees: 959.63″ at one astronomical unit (Auwers 1891, as in the Astronomical Almanac).</summary>
    /// <param name="distanceAu">Distance, astronomical units.</param>
    public static double SemidiameterDegrees(double distanceAu) => 959.63 / 3600 / distanceAu;

    /// <summary>Altitude as seen of the upper limb, degrees.</summary>
    /// <param name="airlessDegrees">Airless altitude of the centre, degrees.</param>
    /// <param name="distanceAu">Distance, astronomical units.</param>
    public static double UpperLimbDegrees(double airlessDegrees, double distanceAu = 1) =>
        Refraction.Apparent(airlessDegrees + SemidiameterDegrees(distanceAu));
}
