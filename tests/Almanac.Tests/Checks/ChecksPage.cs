using System.Globalization;
using System.Text;

namespace Foreshore.Almanac.Checks;

/// <summary>docs/checks.md: written from the checks, and read back to hold them.</summary>
public static class ChecksPage
{
    /// <summary>Where it lies.</summary>
    public static string FilePath => Path.Combine(Repository.Root, "docs", "checks.md");

    /// <summary>All checks of this assembly.</summary>
    public static IReadOnlyList<Check> Checks { get; } =
    [
        .. typeof(IChecks).Assembly.GetTypes()
            .Where(type => type is { IsClass: true, IsAbstract: false } && type.IsAssignableTo(typeof(IChecks)))
            .OrderBy(type => type.FullName, StringComparer.Ordinal)
            .SelectMany(type => ((IChecks)Activator.CreateInstance(type)!).All()),
    ];

    /// <summary>The whole page.</summary>
    public static string Write()
    {
        var page = new StringBuilder("""
            # Checks

            Every quantity that the almanac computes, held against something outside the project (and, where it says so,
            its fast form against its plain one). Written by `./test --write-checks`; do not edit by hand. The ordinary run fails when a row is missing, a bound differs, or an
            error exceeds the one printed here by a fifth. *Excused* counts cases in which either answer is right, such as a
            sun that only grazes the horizon. The tables themselves: [tests/Almanac.Tests/Published](../tests/Almanac.Tests/Published/README.md).


            """);
        foreach (var subject in Checks.GroupBy(check => check.Quantity.Split(':')[0]))
        {
            page.Append("## ").Append(subject.Key).Append("\n\n");
            page.Append("| quantity | held against | unit | cases | excused | RMS error | largest error | bound | why that bound |\n");
            page.Append("| --- | --- | --- | ---: | ---: | ---: | ---: | --- | --- |\n");
            foreach (var check in subject)
                page.Append(Line.Of(check)).Append('\n');
            page.Append('\n');
        }

        return page.ToString().TrimEnd('\n') + "\n";
    }

    /// <summary>What is wrong between the page as it stands and the checks as they ran; empty when all is well.</summary>
    public static IReadOnlyList<string> Faults(string page)
    {
        var printed = page.Split('\n').Where(line => line.StartsWith("| ", StringComparison.Ordinal) && !line.StartsWith("| ---", StringComparison.Ordinal)
            && !line.StartsWith("| quantity", StringComparison.Ordinal)).Select(Line.Parse).ToDictionary(line => line.Key);
        var faults = new List<string>();
        foreach (var check in Checks)
        {
            var now = Line.Of(check);
            if (!printed.Remove(now.Key, out var then))
            {
                faults.Add($"No row for {now.Key}.");
                continue;
            }

            if (then.Bound != now.Bound) faults.Add($"{now.Key}: the page's bound is {then.Bound}, the check's {now.Bound}.");
            if (then.Why != now.Why || then.Unit != now.Unit) faults.Add($"{now.Key}: unit or reason differ.");
            if (then.Cases != now.Cases || then.Excused != now.Excused) faults.Add($"{now.Key}: {now.Cases} cases and {now.Excused} excused, {then.Cases} and {then.Excused} on the page.");
            // Rounding noise differs between processors: a thousandth of the tolerance is let through.
            var noise = check.Outcome.LargestShare > 0 ? check.Outcome.Largest / check.Outcome.LargestShare / 1000 : 0;
            if (check.Outcome.Largest > 1.2 * then.Largest + noise) faults.Add($"{now.Key}: largest error {now.LargestText}, {then.LargestText} on the page.");
            if (check.Outcome.RootMeanSquare > 1.2 * then.RootMeanSquare + noise) faults.Add($"{now.Key}: RMS error {now.RmsText}, {then.RmsText} on the page.");
        }

        faults.AddRange(printed.Keys.Select(key => $"The page has a row that no check fills: {key}."));
        return faults;
    }

    private sealed record Line(string Quantity, string Source, string Unit, string Cases, string Excused, string RmsText, string LargestText, string Bound, string Why)
    {
        public string Key => $"{Quantity} | {Source}";

        public double RootMeanSquare => double.Parse(RmsText, CultureInfo.InvariantCulture);

        public double Largest => double.Parse(LargestText, CultureInfo.InvariantCulture);

        public static Line Of(Check check) => new(
            check.Quantity, check.Source, check.Unit,
            check.Outcome.Cases.ToString(CultureInfo.InvariantCulture), check.Outcome.Excused.ToString(CultureInfo.InvariantCulture),
            Short(check.Outcome.RootMeanSquare), Short(check.Outcome.Largest), check.Tolerance, check.Why);

        public static Line Parse(string text)
        {
            var cells = text.Trim('|', ' ').Split(" | ");
            return cells.Length == 9
                ? new Line(cells[0], cells[1], cells[2], cells[3], cells[4], cells[5], cells[6], cells[7], cells[8])
                : throw new FormatException("Not a row of nine cells: " + text);
        }

        public override string ToString() => $"| {Quantity} | {Source} | {Unit} | {Cases} | {Excused} | {RmsText} | {LargestText} | {Bound} | {Why} |";

        private static string Short(double value) => value.ToString("G3", CultureInfo.InvariantCulture);
    }
}
