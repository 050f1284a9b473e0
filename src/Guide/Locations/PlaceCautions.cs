using Foreshore.Guide.Shell;

namespace Foreshore.Guide.Locations;

/// <summary>The cautions a page prints, from the country's row.</summary>
public static class PlaceCautions
{
    /// <summary>
    /// What stands when the club has kept no row at all, not even the general one: a page that says one can stand somewhere is
    /// never without cautions. Thirty minutes is the longer of the published 20 to 30; 112 reaches emergency services from GSM
    /// phones in most countries (ETSI TS 122 101).
    /// </summary>
    private static readonly Cautions General = new(
        ["Watch the sea for 30 minutes before you go down, and face it all the time.", "Do not go alone; tell someone where you are and when you will be back.",
         "If you can feel the spray, you are too close. One wave is enough.", "Turn back before the tide does it for you; keep a cliff's height away from its foot."],
        "112", "the coastguard");

    /// <summary>The row of the country, else the general default; null where there is neither.</summary>
    public static CountryCautions? Of(this IReadOnlyList<CountryCautions> rows, string countryCode) =>
        rows.FirstOrDefault(row => row.CountryCode == countryCode) ?? rows.FirstOrDefault(row => row.CountryCode is null);

    /// <summary>Of each country, in the order given; those without a row of their own share the general default, which then stands once.</summary>
    public static IReadOnlyList<(string? CountryCode, Cautions Cautions)> ToPrint(this IReadOnlyList<CountryCautions> rows, IEnumerable<string> countryCodes) =>
        [.. countryCodes.Distinct().Select(rows.Of).Distinct().Select(row => (row?.CountryCode, row.ToPrint()))];

    public static Cautions ToPrint(this CountryCautions? row) => row is null ? General
        : new Cautions(row.Cautions, row.EmergencyNumber, row.AskFor, row.WarningsName, row.WarningsLink);
}
