using Foreshore.Almanac.Earth;
using NodaTime;

namespace Foreshore.Guide.Api;

/// <summary>How far a compass points beside true north, at a place on a day.</summary>
/// <param name="DeclinationDegrees">East positive: true bearing = compass reading + declination.</param>
/// <param name="DeclinationUncertaintyDegrees">One standard deviation of the model; a compass in the hand adds a degree or two.</param>
/// <param name="InclinationDegrees">Below level.</param>
/// <param name="CompassZone">usual, caution (horizontal field under 6,000 nT) or blackout (under 2,000 nT: do not use a compass).</param>
internal sealed record DeclinationAnswer(double LatitudeDegrees, double LongitudeDegrees, LocalDate Date, string Model, LocalDate ModelFrom, LocalDate ModelTo,
    double DeclinationDegrees, double DeclinationUncertaintyDegrees, double InclinationDegrees,
    double NorthNanotesla, double EastNanotesla, double DownNanotesla, double HorizontalNanotesla, double TotalNanotesla,
    CompassZone CompassZone, string Note)
{
    public static DeclinationAnswer Of(AlmanacQuestion question, GeomagneticField field) => new(
        question.Position.LatitudeDegrees, question.Position.LongitudeDegrees, question.Date, MagneticField.Model, MagneticField.FirstDate, MagneticField.LastDate,
        Math.Round(field.DeclinationDegrees, 2), Math.Round(field.DeclinationUncertaintyDegrees, 2), Math.Round(field.InclinationDegrees, 2),
        Math.Round(field.NorthNanotesla, 1), Math.Round(field.EastNanotesla, 1), Math.Round(field.DownNanotesla, 1),
        Math.Round(field.HorizontalNanotesla, 1), Math.Round(field.TotalNanotesla, 1), field.Zone,
        "At the ellipsoid's level. Rock, iron, a car or a tripod can turn a compass by many degrees more. " + Words.NotForNavigation);
}
