namespace Foreshore.Guide.Shell;

/// <summary>What stands wherever the site says that one can stand somewhere: a country's usual cautions and whom to ring.</summary>
/// <param name="Lines">Whole sentences, in the order to print them.</param>
/// <param name="EmergencyNumber">As one dials it there.</param>
/// <param name="AskFor">The service to ask for, for example the coastguard.</param>
/// <param name="WarningsName">Who issues the official warnings.</param>
/// <param name="WarningsLink">Where they are to be read.</param>
public sealed record Cautions(
    IReadOnlyList<string> Lines, string EmergencyNumber, string AskFor, string? WarningsName = null, string? WarningsLink = null);
