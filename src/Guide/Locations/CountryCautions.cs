namespace Foreshore.Guide.Locations;

/// <summary>
/// The usual cautions, the emergency number and the official warnings of a country, kept as rows the club can edit. The row
/// without a country is the general default for places whose country has none.
/// </summary>
public sealed class CountryCautions
{
    private CountryCautions() { }

    public CountryCautions(string? countryCode, IReadOnlyList<string> cautions, string emergencyNumber, string askFor)
    {
        CountryCode = countryCode is null ? null : Location.Country(countryCode);
        Revise(cautions, emergencyNumber, askFor);
    }

    public int Id { get; private set; }

    /// <summary>ISO 3166-1 alpha-2; <c>null</c> for the general default.</summary>
    public string? CountryCode { get; private set; }

    /// <summary>Printed in this order wherever the site says that one can stand somewhere.</summary>
    public IReadOnlyList<string> Cautions { get; private set; } = [];

    public string EmergencyNumber { get; private set; } = "";

    /// <summary>Whom to ask for, for example the coastguard.</summary>
    public string AskFor { get; private set; } = "";

    public string? WarningsName { get; private set; }

    public string? WarningsLink { get; private set; }

    public uint Version { get; private set; }

    public CountryCautions Revise(IReadOnlyList<string> cautions, string emergencyNumber, string askFor)
    {
        Require.That(cautions.Count > 0, "There must be at least one caution: they stand wherever the site says that one can stand somewhere.");
        Cautions = [.. cautions.Select(line => Require.Text(line, 300, "A caution"))];
        EmergencyNumber = Require.Text(emergencyNumber, 40, "The emergency number");
        AskFor = Require.Text(askFor, 120, "Whom to ask for");
        return this;
    }

    public CountryCautions PointTo(string warningsName, string warningsLink)
    {
        WarningsName = Require.Text(warningsName, 120, "The name of the official warnings");
        WarningsLink = Require.LinkOrNull(warningsLink, "The link to the official warnings");
        return this;
    }
}
