using Foreshore.Almanac.Earth;

namespace Foreshore.Almanac.Stars;

/// <summary>
/// The galaxy's own coordinates: the IAU's system of 1958 as ESA SP-1200 (the Hipparcos catalogue, vol. 1, section 1.5.3)
/// ties it to ICRS. The centre is its origin, l = b = 0; the radio source Sagittarius A* stands 0.07 degrees from it.
/// </summary>
public static class Galactic
{
    private const double Radian = Math.PI / 180;

    /// <summary>North pole of the galaxy, ICRS.</summary>
    public static Equatorial NorthPole { get; } = new(192.85948, 27.12825);

    /// <summary>Galactic longitude of the north celestial pole, degrees.</summary>
    public const double LongitudeOfCelestialPoleDegrees = 122.93192;

    /// <summary>The galaxy's centre (l = b = 0), ICRS: right ascension 266.40500, declination −28.93617 degrees.</summary>
    public static Equatorial Centre { get; } = ToIcrs(0, 0);

    /// <summary>
    /// Half the width of the band that counts as seen, degrees of galactic latitude: about what is bright to the eye along
    /// most of it. Common practice, no source.
    /// </summary>
    public const double BandHalfWidthDegrees = 5;

    /// <summary>From galactic longitude and latitude, degrees, to ICRS.</summary>
    public static Equatorial ToIcrs(double longitudeDegrees, double latitudeDegrees)
    {
        var (sinPole, cosPole) = Math.SinCos(NorthPole.DeclinationDegrees * Radian);
        var (sinLatitude, cosLatitude) = Math.SinCos(latitudeDegrees * Radian);
        var (sinTurn, cosTurn) = Math.SinCos((LongitudeOfCelestialPoleDegrees - longitudeDegrees) * Radian);
        var declination = Math.Asin(Math.Clamp(sinPole * sinLatitude + cosPole * cosLatitude * cosTurn, -1, 1));
        var turn = Math.Atan2(cosLatitude * sinTurn, cosPole * sinLatitude - sinPole * cosLatitude * cosTurn);
        return new Equatorial(Bearing.FromDegrees(NorthPole.RightAscensionDegrees + turn / Radian).Degrees, declination / Radian);
    }

    /// <summary>From ICRS to galactic longitude [0, 360) and latitude, degrees.</summary>
    public static (double LongitudeDegrees, double LatitudeDegrees) FromIcrs(Equatorial place)
    {
        var (sinPole, cosPole) = Math.SinCos(NorthPole.DeclinationDegrees * Radian);
        var (sin, cos) = Math.SinCos(place.DeclinationDegrees * Radian);
        var (sinTurn, cosTurn) = Math.SinCos((place.RightAscensionDegrees - NorthPole.RightAscensionDegrees) * Radian);
        var latitude = Math.Asin(Math.Clamp(sinPole * sin + cosPole * cos * cosTurn, -1, 1));
        var turn = Math.Atan2(cos * sinTurn, cosPole * sin - sinPole * cos * cosTurn);
        return (Bearing.FromDegrees(LongitudeOfCelestialPoleDegrees - turn / Radian).Degrees, latitude / Radian);
    }
}
