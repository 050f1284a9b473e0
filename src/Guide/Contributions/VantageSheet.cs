using Foreshore.Almanac.Earth;
using Foreshore.Guide.Compositions;

namespace Foreshore.Guide.Contributions;

/// <summary>What a member can say of a stance: where, how one stands there, how one gets down and back.</summary>
internal static class VantageSheet
{
    private static readonly SheetPart<VantagePoint> Called = new("What it is called",
    [
        new SheetField("name", "Name") { Longest = 80, IsRequired = true, Hint = "As people call the spot, like Slip end" },
        new SheetField("summary", "In a line or two", FieldKind.Text) { Longest = 400, IsRequired = true, Hint = "What one stands on and what one sees" },
    ],
        stance => [stance.Name, stance.Summary],
        (stance, answers) => stance.Call(answers.Text("name") ?? "", answers.Text("summary") ?? ""));

    private static readonly SheetPart<VantagePoint> Stands = new("Where the tripod stands",
    [
        new SheetField("position", "Position", FieldKind.Position) { IsRequired = true, Hint = "Latitude and longitude, like 44.6512, -67.2534; degrees and minutes or a geo: address do as well" },
        SheetField.Of<VantageKind>("kind", "Kind of ground", kind => kind.Words()).Required().Guarded(),
        SheetField.Of<Footing>("footing", "Footing is found by", footing => footing.Words()).Required(),
    ],
        stance => [Written.Of(stance.Position), Written.Of<VantageKind>(stance.Kind), Written.Of<Footing>(stance.Footing)],
        (stance, answers) => stance.Stand(
            answers.Needed("kind", answers.Choice<VantageKind>("kind"), "What kind of ground is it? Choose one."),
            answers.Needed("position", answers.Position("position"), "Where does the tripod stand? Enter a position."),
            answers.Needed("footing", answers.Choice<Footing>("footing"), "Who finds a footing there? Choose one.")));

    private static readonly SheetPart<VantagePoint> Reached = new("Reach of the water",
    [
        SheetField.Of<Reach>("reach", "How far water comes", reach => reach.Words()).Hinted("Anything but waves, or not known, is for a warden to say, with the reason").Guarded().WardensAlone(Reach.None, Reach.StillWaterOnly),
        new SheetField("reach-reason", "Why no waves come there") { Longest = 300, IsGuarded = true, IsWardens = true },
    ],
        stance => [Written.Of<Reach>(stance.Reach), stance.ReachReason ?? ""],
        (stance, answers) => stance.Reached(answers.Choice<Reach>("reach") ?? Reach.Unknown, answers.Text("reach-reason")));

    private static readonly SheetPart<VantagePoint> Room = new("Room",
        [new SheetField("tripods", "Tripods that fit", FieldKind.Whole), new SheetField("eye-height", "Eye height, metres", FieldKind.Number)],
        stance => [Written.Of(stance.Tripods), Written.Of(stance.EyeHeightMetres)],
        (stance, answers) => stance.Fit(answers.Whole("tripods")).Look(answers.Number("eye-height") ?? VantagePoint.UsualEyeHeightMetres));

    private static readonly SheetPart<VantagePoint> Walked = new("The walk",
    [
        new SheetField("walk-in", "Walk in, minutes in daylight", FieldKind.Number).Guarded(),
        new SheetField("walk-out", "Walk out, minutes in daylight", FieldKind.Number).Guarded(),
        new SheetField("beyond-reach", "Minutes from the stance to beyond the last place the water can reach", FieldKind.Number) { IsGuarded = true },
        SheetField.YesOrNo("walked-in-the-dark", "A member has walked the way in the dark").Guarded(),
    ],
        stance => [Written.Of(stance.WalkInMinutes), Written.Of(stance.WalkOutMinutes), Written.Of(stance.MinutesToBeyondReach), Written.Of(stance.WalkedInTheDark)],
        (stance, answers) => stance.Walk(answers.Number("walk-in"), answers.Number("walk-out"), answers.Yes("walked-in-the-dark"), answers.Number("beyond-reach")));

    private static readonly SheetPart<VantagePoint> Edge = new("Edge and cliff",
    [
        SheetField.Of<EdgeDistance>("edge", "An edge to fall from", edge => edge.Words()).Guarded(),
        new SheetField("gust-limit", "Gust limit, m/s", FieldKind.Number) { IsGuarded = true },
    ],
        stance => [Written.Of<EdgeDistance>(stance.Edge), Written.Of(stance.GustLimitMetresPerSecond)],
        (stance, answers) => stance.OnEdge(answers.Choice<EdgeDistance>("edge") ?? EdgeDistance.None, answers.Number("gust-limit")));

    private static readonly SheetPart<VantagePoint> Cliff = new("Cliff above",
    [
        new SheetField("cliff-height", "Height of the cliff above, metres", FieldKind.Number) { IsGuarded = true },
        new SheetField("cliff-distance", "Distance of its foot, metres", FieldKind.Number) { IsGuarded = true },
        new SheetField("cliff-because", "Why one may stand so near") { Longest = 300, IsGuarded = true, IsWardens = true },
    ],
        stance => stance.Cliff is not { } cliff ? ["", "", ""] : [Written.Of(cliff.HeightMetres), Written.Of(cliff.DistanceMetres), cliff.AcceptedBecause ?? ""],
        (stance, answers) => stance.Under(answers.Number("cliff-height") is not { } height ? null
            : new CliffAbove(height, answers.Needed("cliff-distance", answers.Number("cliff-distance"), "How far is the cliff's foot? Enter metres; a cliff nearer than it is high keeps people off."), answers.Text("cliff-because"))));

    private static readonly SheetPart<VantagePoint> Horizon = new("Skyline",
        [new SheetField("skyline", "Skyline", FieldKind.Text) { Longest = 16_000, HasOwnPage = true }],
        stance => [stance.SkylineText ?? ""],
        (stance, answers) => stance.Draw(answers.Text("skyline") is { } text ? SkylineNotation.Parse(text) : Skyline.AssumedSea, "As proposed, or brought back from its history"));

    private static readonly SheetPart<VantagePoint> Checked = new("Who says so", AccessSheets.Checked,
        stance => AccessSheets.Read(stance.Check), (stance, answers) => stance.CheckedAs(AccessSheets.Check(answers, stance.Check)));

    public static readonly Sheet<VantagePoint> Whole = new(
        [Called, Stands, Reached, Room, Walked, Edge, Cliff, .. VantageLimits.Parts, Horizon, Checked]);
}
