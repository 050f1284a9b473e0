using Foreshore.Almanac.Checks;
using Foreshore.Almanac.Time;

namespace Foreshore.Almanac.Tides;

internal sealed class ConstituentChecks : IChecks
{
    public IEnumerable<Check> All()
    {
        yield return Check.Against(PublishedTable.Read("Tides/speeds.csv"), "Tide: speeds from Doodson's numbers", (log, row) =>
            log.Compare(row.Number("speed"), Constituents.Of(row["constituent"]).SpeedDegreesPerHour, row["constituent"] == "M1C" ? 6e-7 : 3e-7));
        var factors = PublishedTable.Read("Tides/schureman-factors.csv");
        yield return Check.Against(factors, "Tide: f after Schureman", "1", "0.002", (log, row) => log.Compare(row.Number("f"), Schureman(row).F, 0.002));
        yield return Check.Against(factors, "Tide: u after Schureman", "degrees", "0.1", (log, row) => log.CompareAngles(row.Number("u"), Schureman(row).UDegrees, 0.1));
        yield return Check.Against(factors, "Tide: I, the moon's orbit to the equator", "degrees", "0.1", (log, row) =>
            log.Compare(row.Number("inclination"), new SchuremanFactors(Arguments(row)).InclinationDegrees, 0.1));
        yield return Check.Against(PublishedTable.Read("Tides/greenwich-arguments.csv"), "Tide: V at Greenwich at new year", (log, row) =>
            log.CompareAngles(row.Number("v"), Argument(row), 0.06));
        var predictor = PublishedTable.Read("Tides/predictor-constituents.csv");
        yield return Check.Against(predictor, "Tide: f of each constituent, Schureman and IHO", "1", "0.004", (log, row) =>
            log.Compare(row.Number("f"), At(row).F, 0.004));
        yield return Check.Against(predictor, "Tide: V + u of each constituent, Schureman and IHO", "degrees", "0.15", (log, row) =>
            log.CompareAngles(row.Number("vPlusU"), Argument(row) + At(row).UDegrees, 0.15));
    }

    private static NodeFactor At(PublishedRow row) =>
        NodeFactors.At(row["model"] == "iho" ? NodalModel.Iho : NodalModel.Schureman, Arguments(row)).Of(Constituents.Of(row["constituent"]));

    private static NodeFactor Schureman(PublishedRow row) => NodeFactors.At(NodalModel.Schureman, Arguments(row)).Of(Constituents.Of(row["constituent"]));

    private static double Argument(PublishedRow row) => Arguments(row).Of(Constituents.Of(row["constituent"]).Doodson);

    private static AstronomicalArguments Arguments(PublishedRow row) => AstronomicalArguments.At(JulianDay.DaysFromJ2000(row.Time("time")));
}
