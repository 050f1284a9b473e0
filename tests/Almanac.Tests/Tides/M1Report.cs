using Foreshore.Almanac.Checks;

namespace Foreshore.Almanac.Tides;

/// <summary>The part of docs/tides.md on M1.</summary>
internal static class M1Report
{
    internal static IEnumerable<string> Lines()
    {
        var pairs = PublishedTable.Read("Tides/m1-pairs.csv").Rows;
        yield return "";
        yield return "## M1";
        yield return "";
        yield return "NOAA's M1 is Schureman's, τ + p − 90°. TICON's is another: no text at hand gives its argument, so it was looked for in the data. Kept is";
        yield return "number 155.555 of the IHO's list without a quarter turn (τ, with T nought at midnight), with f and u of that list's Annex A: f cos u =";
        yield return "2 cos p + 0.4 cos(p − N), f sin u = sin p + 0.2 sin(p − N), after Doodson. The list has three M1 of that number, which differ only in their";
        yield return "last letter. Foreman has no M1: his NO1 is 155.655, which is NOAA's argument.";
        yield return "";
        yield return FormattableString.Invariant($"- {pairs.Count} pairs of stations of NOAA and TICON within 2 km in the same water (tests/Almanac.Tests/Published/Tides/m1-pairs.csv). Median of the");
        yield return FormattableString.Invariant($"  difference over NOAA's wave, 2020 to 2038: {Median(pairs, null):F2}; read as NOAA's M1 {Median(pairs, "M1"):F2}, as M1C {Median(pairs, "M1C"):F2}, as NO1 {Median(pairs, "NO1"):F2}; left out 1.");
        yield return "- On open coasts the sea answers waves of nearly one speed alike. So M1 must lie between the station's own O1 and K1. Read so it does, within";
        yield return "  4 degrees in the middle of the stations of Japan, Australia and Chile (`M1Tests`).";
        yield return "- Fits to short records, less than a round of the perigee (8.85 years), are larger than that by about f in the years they cover: they seem to";
        yield return "  have been made without the factor. Records whose first and last year are less than nine apart therefore keep the turn u, with f = 1.";
        yield return "  A long span with few years in it is still taken with f.";
        yield return "";
        yield return "The worst in nineteen years, against M1 as the station's own O1 and K1 ask for it, of the stations that were over 10 cm off, in metres:";
        yield return "";
        yield return "| station | read as NOAA's M1 | read so |";
        yield return "| --- | ---: | ---: |";
        foreach (var id in M1Answers.Stations())
            if (M1Answers.M1(id) is { } wave && M1Answers.Expected(id) is { } expected && M1Answers.WorstMetres(wave, expected, "M1") is > 0.1 and var before)
                yield return FormattableString.Invariant($"| {id} | {before:F3} | {M1Answers.WorstMetres(wave, expected, wave.Constituent.Name):F3} |");
    }

    private static double Median(IReadOnlyList<PublishedRow> pairs, string? name) =>
        pairs.Select(row => M1Checks.Error(row, name ?? M1Checks.NameOf(row))).Order().ElementAt(pairs.Count / 2);
}
