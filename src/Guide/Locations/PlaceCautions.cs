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

    public static Cautions ToPrint(this CountryCautions? row) => row is null ? General
        : new Cautions(row.Cautions, row.EmergencyNumber, row.AskFor, row.WarningsName, row.WarningsLink);
}
