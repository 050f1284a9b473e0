namespace Foreshore.Guide.Contributions;

/// <summary>One question on a phone, one part of the page on a desktop.</summary>
/// <param name="Parts">Asked of everybody.</param>
/// <param name="More">Folded away: known to few on the day.</param>
/// <param name="MoreTitle">What is folded away.</param>
public sealed record Step(string Id, string Title, IReadOnlyList<SheetPart> Parts, IReadOnlyList<SheetPart> More, string MoreTitle = "");

/// <summary>The order in which a new vantage point is asked for: first what only somebody standing there knows.</summary>
internal static class NewStanceSteps
{
    public static readonly IReadOnlyList<Step> All =
    [
        new("where", "Where does the tripod stand?", Of("position"), Of("accuracy"), "How the position was got"),
        new("facing", "Which way does the picture face?", Of("picture-facing"), Of("picture-subject"), "The subject, for its bearing and apparent size"),
        new("lens", "Through which lens?", Of("picture-focal-length"), []),
        new("light", "In which light?", Of("picture-wanted"), Of("picture-water"), "Look of the water, kit"),
        new("name", "What is it?", Of("name"), Of("picture-name"), "Another name for the picture than for the spot"),
        new("place", "Which place does it belong to?", Of("place"), []),
        new("dangers", "What is dangerous there?", Of("hazard-1-kind"), Of("reach", "edge", "cliff-height", "watch", "dark"), "Reach of the water, edge, cliff, watch place, dark stance"),
        new("tide", "Tide, sea and the way back", Of("walk-in"), Of("picture-tide-turn", "picture-ground-state", "picture-sea", "cut-off", "usable-tide", "sea-height", "ground", "tripods"), "Wishes for tide and sea; limits that somebody has seen to hold"),
    ];

    /// <summary>The step that asks for a field.</summary>
    public static string StepOf(string field) =>
        All.FirstOrDefault(step => step.Parts.Concat(step.More).Any(part => part.Fields.Any(each => each.Name == field)))?.Id ?? "send";

    private static List<SheetPart> Of(params ReadOnlySpan<string> fields)
    {
        var parts = new List<SheetPart>();
        foreach (var name in fields)
            parts.Add(NewStanceSheet.Whole.Parts.Single(part => part.Fields.Any(field => field.Name == name)));
        return parts;
    }
}
