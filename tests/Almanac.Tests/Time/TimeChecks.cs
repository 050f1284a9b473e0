using Foreshore.Almanac.Checks;

namespace Foreshore.Almanac.Time;

internal sealed class TimeChecks : IChecks
{
    public IEnumerable<Check> All()
    {
        yield return Check.Against(PublishedTable.Read("Time/julian-day.csv"), "Time: Julian day", (log, row) =>
            log.Compare(row.Number("julianDay"), JulianDay.Of(row.Time("time")), 1e-5));

        yield return Check.Against(PublishedTable.Read("Time/delta-t.csv"), "Time: delta T", (log, row) =>
            log.Compare(row.Number("seconds"), DeltaT.Seconds(row.Number("year")), 1));

        yield return Check.Against(PublishedTable.Read("Time/meeus-sidereal.csv"), "Time: mean sidereal time", (log, row) =>
            log.CompareAngles(row.Number("mean"), SiderealTime.MeanDegrees(JulianDay.DaysFromJ2000(row.Time("time"))), 1e-6));
    }
}
