namespace Foreshore.Almanac.Checks;

/// <summary>
/// One computed quantity held against one source outside the project. Offer checks from a class that implements
/// <see cref="IChecks"/>: each becomes a test, and a row of docs/checks.md.
/// </summary>
/// <param name="Quantity">What is computed; with the source it names the row.</param>
/// <param name="Source">Where the values it is held against come from, in full.</param>
/// <param name="Unit">Unit of the errors.</param>
/// <param name="Tolerance">The bound, as printed.</param>
/// <param name="Why">Why that bound.</param>
/// <param name="Run">Adds one error for each case.</param>
public sealed record Check(string Quantity, string Source, string Unit, string Tolerance, string Why, Action<CheckLog> Run)
{
    private readonly Lock once = new();
    private CheckLog? log;

    /// <summary>The errors, worked out once however many tests ask.</summary>
    public CheckLog Outcome
    {
        get
        {
            lock (once)
            {
                if (log is not null) return log;
                var fresh = new CheckLog();
                Run(fresh);
                return log = fresh;
            }
        }
    }

    /// <summary>A check of each row of a checked-in table, whose header gives source, unit, bound and why.</summary>
    public static Check Against(PublishedTable table, string quantity, Action<CheckLog, PublishedRow> run) =>
        Against(table, quantity, table.Unit, table.Tolerance, run);

    /// <summary>A check of one column of a checked-in table that holds several, with that column's unit and bound.</summary>
    public static Check Against(PublishedTable table, string quantity, string unit, string tolerance, Action<CheckLog, PublishedRow> run) =>
        new(quantity, table.Source, unit, tolerance, table.Why, log =>
        {
            foreach (var row in table.Rows)
            {
                log.At(row.Text);
                run(log, row);
            }
        });
}

/// <summary>A class that offers checks. It has a constructor without arguments.</summary>
public interface IChecks
{
    /// <summary>The checks, in the order of the page.</summary>
    IEnumerable<Check> All();
}
