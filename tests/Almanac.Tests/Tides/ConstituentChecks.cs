using Foreshore.Almanac.Checks;
using Foreshore.Almanac.Time;

namespace Foreshore.Almanac.Tides;

internal sealed class ConstituentChecks : IChecks
{
    public IEnumerable<Check> All()
    {
        yield return Check.Against(PublishedTable.Read("Tides/speeds.csv"), "Tide: speeds from Doodson's numbers", (log, row) =>
            log.Compare(row.Number("speed"), Constituents.Of(row["constituent"]).SpeedDegreesPerHour, row["constituent"] == "M1C" ? 6e-7 : 3e-7));
        var list = PublishedTable.Read("Tides/iho-list.csv");
        yield return Check.Against(list, "Tide: speeds of the IHO's list", (log, row) => Of(list, row, log, (wave, variant) => wave.SpeedDegreesPerHour - variant.Number("speed"), 2e-6, "M(KS)2"));
        yield return Check.Against(list, "Tide: Doodson's numbers of the IHO's list", "1", "0", (log, row) => Of(list, row, log, Apart, 1e-9));
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

    // By the list's own Annex B NSK5 is N2 + S2 + K1, 73.4807981, and not 73.4715; 4MSN8 is 4M2 + S2 − N2, 117.4966874, and not
    // 117.5788, which is 4MKN8. M(KS)2 is printed 29.0251788; its own numbers make 29.0251708.
    private static readonly string[] Contradicted = ["NSK5", "4MSN8"];

    /// <summary>Waves of the list that go by one name may differ; ours is one of them. Those that no name here stands for are excused.</summary>
    private static void Of(PublishedTable list, PublishedRow row, CheckLog log, Func<Constituent, PublishedRow, double> error, double bound, string? misprint = null)
    {
        if (!Constituents.TryFind(row["constituent"], out var wave) || Contradicted.Contains(row["constituent"]) || row["constituent"] == misprint) log.Excuse();
        else log.Add(list.Rows.Where(one => one["constituent"] == row["constituent"]).Select(one => error(wave, one)).MinBy(Math.Abs), bound);
    }

    private static double Apart(Constituent wave, PublishedRow row)
    {
        var n = wave.Doodson;
        return Math.Abs(n.LunarTime - row.Number("t")) + Math.Abs(n.Moon - row.Number("s")) + Math.Abs(n.Sun - row.Number("h"))
            + Math.Abs(n.Perigee - row.Number("p")) + Math.Abs(row.Number("n")) + Math.Abs(n.SolarPerigee - row.Number("p1"));
    }

    private static NodeFactor At(PublishedRow row) =>
        NodeFactors.At(row["model"] == "iho" ? NodalModel.Iho : NodalModel.Schureman, Arguments(row)).Of(Constituents.Of(row["constituent"]));

    private static NodeFactor Schureman(PublishedRow row) => NodeFactors.At(NodalModel.Schureman, Arguments(row)).Of(Constituents.Of(row["constituent"]));

    private static double Argument(PublishedRow row) => Arguments(row).Of(Constituents.Of(row["constituent"]).Doodson);

    private static AstronomicalArguments Arguments(PublishedRow row) => AstronomicalArguments.At(JulianDay.DaysFromJ2000(row.Time("time")));
}
