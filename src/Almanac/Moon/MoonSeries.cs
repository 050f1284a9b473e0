namespace Foreshore.Almanac.Moon;

/// <summary>
/// The moon's geometric place as Meeus, Astronomical Algorithms (2nd ed.), chapter 47 sums it from Chapront's
/// ELP-2000/82: about 10″ in longitude, 4″ in latitude.
/// </summary>
internal static partial class MoonSeries
{
    private const double Radian = Math.PI / 180;

    /// <summary>Longitude and latitude, degrees, in the mean equinox of the date, light time counted; distance, kilometres.</summary>
    /// <param name="t">Centuries of terrestrial time from J2000.0.</param>
    internal static (double LongitudeDegrees, double LatitudeDegrees, double DistanceKm) At(double t)
    {
        // Formulas 47.1 to 47.6; the mean longitude holds the mean light time, −0.70″.
        var mean = Folded(218.3164477 + t * (481267.88123421 + t * (-0.0015786 + t * (1.0 / 538841 - t / 65194000))));
        var d = Folded(297.8501921 + t * (445267.1114034 + t * (-0.0018819 + t * (1.0 / 545868 - t / 113065000))));
        var m = Folded(357.5291092 + t * (35999.0502909 + t * (-0.0001536 + t / 24490000)));
        var mMoon = Folded(134.9633964 + t * (477198.8675055 + t * (0.0087414 + t * (1.0 / 69699 - t / 14712000))));
        var f = Folded(93.2720950 + t * (483202.0175233 + t * (-0.0036539 + t * (-1.0 / 3526000 + t / 863310000))));
        // Venus, Jupiter and the flattening of the Earth.
        var a1 = Folded(119.75 + 131.849 * t);
        var a2 = Folded(53.09 + 479264.290 * t);
        var a3 = Folded(313.45 + 481266.484 * t);
        // The eccentricity of the Earth's orbit shrinks.
        var e = 1 - t * (0.002516 + t * 0.0000074);

        var longitude = 3958 * Math.Sin(a1) + 1962 * Math.Sin(mean - f) + 318 * Math.Sin(a2);
        var latitude = -2235 * Math.Sin(mean) + 382 * Math.Sin(a3) + 175 * Math.Sin(a1 - f) + 175 * Math.Sin(a1 + f)
            + 127 * Math.Sin(mean - mMoon) - 115 * Math.Sin(mean + mMoon);
        var metres = 0.0;

        var terms = LongitudeAndDistance;
        for (var i = 0; i + 5 < terms.Length; i += 6)
        {
            var (sin, cos) = Math.SinCos(terms[i] * d + terms[i + 1] * m + terms[i + 2] * mMoon + terms[i + 3] * f);
            var weight = Weight(terms[i + 1], e);
            longitude += terms[i + 4] * weight * sin;
            metres += terms[i + 5] * weight * cos;
        }

        terms = Latitude;
        for (var i = 0; i + 4 < terms.Length; i += 5)
            latitude += terms[i + 4] * Weight(terms[i + 1], e) * Math.Sin(terms[i] * d + terms[i + 1] * m + terms[i + 2] * mMoon + terms[i + 3] * f);

        return (mean / Radian + longitude / 1e6, latitude / 1e6, 385000.56 + metres / 1000);
    }

    private static double Weight(double multipleOfM, double e) => multipleOfM switch { 0 => 1, 1 or -1 => e, _ => e * e };

    private static double Folded(double degrees) => degrees % 360 * Radian;
}
