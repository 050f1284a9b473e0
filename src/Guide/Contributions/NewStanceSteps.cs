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
        new("where", "Where does the tripod stand?", [Part("position")], [Part("accuracy")], "How the position was got"),
        new("facing", "Which way does the picture face?", [Part("picture-facing", "picture-facing", "picture-tilt")],
            [Part("picture-facing", "picture-compass", "picture-declination", "picture-compass-read", "picture-compass-model") with { Title = "Read from a compass" }, Part("picture-subject")],
            "Compass; the subject, for its bearing and apparent size"),
        new("lens", "Through which lens?", [Part("picture-focal-length")], []),
        new("light", "In which light?", [Part("picture-wanted", "picture-wanted")], [Part("picture-wanted", "picture-galaxy-from-five") with { Title = "The galaxy low over the sea" }, Part("picture-water")], "Look of the water, kit, the galaxy over the sea"),
        new("name", "What is it?", [Part("name")], [Part("picture-name")], "Another name for the picture than for the spot"),
        new("place", "Which place does it belong to?", [Part("place")], []),
        new("dangers", "What is dangerous there?", [Part("hazard-1-kind", "hazard-1-kind", "hazard-1-severity")],
            [Part("hazard-1-kind", "hazard-2-kind", "hazard-2-severity", "hazard-3-kind", "hazard-3-severity") with { Title = "More hazards" }, Part("reach"), Part("edge"), Part("cliff-height"), Part("watch"), Part("dark")],
            "More hazards; reach of the water, edge, cliff, watch place, dark stance"),
        new("tide", "The way, the tide and the sea", [Part("walk-in", "walk-in", "walk-out")],
            [Part("walk-in", "beyond-reach", "walked-in-the-dark") with { Title = "The way back" }, Part("picture-tide-turn"), Part("picture-ground-state"), Part("picture-sea"), Part("cut-off"), Part("usable-tide"), Part("sea-height"), Part("ground"), Part("tripods")],
            "Wishes for tide and sea; limits that somebody has seen to hold"),
    ];

    /// <summary>The step that asks for a field.</summary>
    public static string StepOf(string field) =>
        All.FirstOrDefault(step => step.Parts.Concat(step.More).Any(part => part.Fields.Any(each => each.Name == field)))?.Id ?? "send";

    /// <summary>The part that a field belongs to, or some of its fields.</summary>
    private static SheetPart Part(string of, params string[] fields)
    {
        var part = NewStanceSheet.Whole.Parts.Single(each => each.Fields.Any(field => field.Name == of));
        return new(part.Title, fields.Length == 0 ? part.Fields : [.. part.Fields.Where(field => fields.Contains(field.Name))]);
    }
}
