using Foreshore.Almanac.Checks;

namespace Foreshore.Almanac.Earth;

internal sealed class MagneticChecks : IChecks
{
    public IEnumerable<Check> All()
    {
        var official = PublishedTable.Read("Earth/wmm2025.csv");
        yield return Check.Against(official, "Earth: magnetic field, X, Y, Z, H, F", "nT", "0.001", (log, row) =>
        {
            var field = FieldOf(row);
            log.Compare(row.Number("x"), field.NorthNanotesla, 1e-3);
            log.Compare(row.Number("y"), field.EastNanotesla, 1e-3);
            log.Compare(row.Number("z"), field.DownNanotesla, 1e-3);
            log.Compare(row.Number("h"), field.HorizontalNanotesla, 1e-3);
            log.Compare(row.Number("f"), field.TotalNanotesla, 1e-3);
        });
        yield return Check.Against(official, "Earth: magnetic inclination and declination", "degrees", "0.005001", (log, row) =>
        {
            var field = FieldOf(row);
            log.Compare(row.Number("inclination"), field.InclinationDegrees, 0.005001);
            log.CompareAngles(row.Number("declination"), field.DeclinationDegrees, 0.005001);
        });
    }

    private static GeomagneticField FieldOf(PublishedRow row) => MagneticField.At(
        row.Number("year"), new Position(row.Number("latitude"), row.Number("longitude")), 1000 * row.Number("kilometres"))!.Value;
}
