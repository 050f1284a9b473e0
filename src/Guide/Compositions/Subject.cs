using Foreshore.Almanac.Earth;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>The thing in the picture, with its place and size, so that its direction and apparent size can be computed.</summary>
public sealed record Subject
{
    private Subject() { }

    public Subject(string name, Position position, double baseMetresAboveMeanSea, double heightMetres)
    {
        Name = Require.Text(name, 80, "The subject's name");
        (LatitudeDegrees, LongitudeDegrees) = (position.LatitudeDegrees, position.LongitudeDegrees);
        BaseMetresAboveMeanSea = Require.Between(baseMetresAboveMeanSea, -10, 3000, "The height of the subject's foot", "m above mean sea level");
        HeightMetres = Require.Between(heightMetres, 0.1, 1000, "The subject's height", "m");
    }

    public string Name { get; private init; } = "";

    public double LatitudeDegrees { get; private init; }

    public double LongitudeDegrees { get; private init; }

    public double BaseMetresAboveMeanSea { get; private init; }

    /// <summary>From foot to top.</summary>
    public double HeightMetres { get; private init; }

    public Position Position => new(LatitudeDegrees, LongitudeDegrees);

    /// <summary>Bearing, distance and apparent size as seen from the vantage point.</summary>
    public SubjectSeen SeenFrom(VantagePoint vantagePoint, double? meanSeaLevelAboveChartDatumMetres)
    {
        var segment = Geodesic.Between(vantagePoint.Position, Position);
        var eye = vantagePoint.EyeMetresAboveMeanSea(meanSeaLevelAboveChartDatumMetres);
        return new SubjectSeen(segment.Initial, segment.Metres,
            eye is { } from ? AltitudeDegrees(BaseMetresAboveMeanSea, from, segment.Metres) : null,
            eye is { } same ? AltitudeDegrees(BaseMetresAboveMeanSea + HeightMetres, same, segment.Metres) : null,
            double.RadiansToDegrees(Math.Atan2(HeightMetres, segment.Metres)));
    }

    /// <summary>
    /// Apparent altitude of a point over curved ground: the sagitta d²/2R with the effective radius R/(1 − k), k = 0.13, the
    /// coefficient of terrestrial refraction usual in levelling (Gauss's mean value).
    /// </summary>
    private static double AltitudeDegrees(double metresAboveSea, double eyeMetres, double distanceMetres)
    {
        const double EarthRadiusMetres = 6_371_008.8;
        const double TerrestrialRefraction = 0.13;
        if (distanceMetres < 1)
            return 0;

        var drop = (1 - TerrestrialRefraction) * distanceMetres * distanceMetres / (2 * EarthRadiusMetres);
        return double.RadiansToDegrees(Math.Atan2(metresAboveSea - eyeMetres - drop, distanceMetres));
    }
}

/// <param name="Bearing">From the vantage point, true.</param>
/// <param name="DistanceMetres">Along the ground.</param>
/// <param name="FootAltitudeDegrees">Null when the eye's height is unknown.</param>
/// <param name="TopAltitudeDegrees">Null when the eye's height is unknown.</param>
/// <param name="ApparentHeightDegrees">Angle between foot and top, always known.</param>
public sealed record SubjectSeen(Bearing Bearing, double DistanceMetres, double? FootAltitudeDegrees, double? TopAltitudeDegrees, double ApparentHeightDegrees);

/// <summary>A facing as read from a compass: reading plus declination (east positive) is the true direction.</summary>
public sealed record CompassReading
{
    private CompassReading() { }

    /// <summary>A reading with a declination from a map or sign; the model's own comes from <see cref="ByModel"/>.</summary>
    public CompassReading(double readingDegrees, double declinationDegrees, LocalDate readOn, string? model = null)
    {
        ReadingDegrees = Require.Degrees(readingDegrees, "The compass reading");
        DeclinationDegrees = Require.Between(declinationDegrees, -90, 90, "The declination", "degrees, east positive");
        ReadOn = readOn;
        Model = Require.TextOrNull(model, 20, "The declination's model");
    }

    public double ReadingDegrees { get; private init; }

    /// <summary>East positive.</summary>
    public double DeclinationDegrees { get; private init; }

    public LocalDate ReadOn { get; private init; }

    /// <summary>The magnetic model that gave the declination; null: somebody entered it.</summary>
    public string? Model { get; private init; }

    /// <summary>A reading with the declination that the magnetic model gives for its place and day, rounded to a tenth of a degree.</summary>
    public static CompassReading ByModel(double readingDegrees, Position at, LocalDate readOn) =>
        new(readingDegrees, Declination.On(readOn, at), readOn, MagneticField.Model);

    public double TrueDegrees => ((ReadingDegrees + DeclinationDegrees) % 360 + 360) % 360;
}
