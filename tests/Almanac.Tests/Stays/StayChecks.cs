using Foreshore.Almanac.Checks;
using Foreshore.Almanac.Light;
using NodaTime;

namespace Foreshore.Almanac.Stays;

internal sealed class StayChecks : IChecks
{
    private static readonly Instant Low = Instant.FromUtc(2026, 6, 10, 16, 0);

    public IEnumerable<Check> All()
    {
        yield return Check.Against(PublishedTable.Read("Stays/cut-off.csv"), "Stays: a crossing opens and closes", (log, row) =>
        {
            var plan = Shore.Plan with
            {
                TideGates = [new TideGate("causeway", row.Number("height"), 10, false)],
                Allowance = new Allowance(row.Number("allowance"), null),
            };
            var stay = StayTimes.Between(plan, Shore.Tide(Low), Low, Low + Duration.FromHours(1), Coast.Year2026.Sun).Single();
            log.Compare(row.Number("hoursAfterLowWater"), Shore.Hours(stay.ClosesAt, Low), 0.0006);
            log.Compare(-row.Number("hoursAfterLowWater"), Shore.Hours(stay.OpensAt, Low), 0.0006);
        });
    }
}
