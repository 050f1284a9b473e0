using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Contributions;

/// <summary>What lives may hang on at a stance: its height, the tide and sea it holds in, the way back, where one watches from.</summary>
internal static class VantageLimits
{
    private static readonly SheetPart<VantagePoint> Ground = new("Height of the ground",
    [
        new SheetField("ground", "Ground above chart datum, metres", FieldKind.Number) { IsGuarded = true, Hint = "By a still-water mark, levelling, lidar or chart. A phone's altitude can be metres out and is not taken" },
        new SheetField("ground-plus-minus", "Plus or minus, metres", FieldKind.Number) { IsGuarded = true },
        SheetField.Of<HeightMethod>("ground-method", "How it was got", method => method.Words()).Guarded(),
        new SheetField("ground-station", "By the tide station") { Longest = StationIds.Longest, IsGuarded = true },
        new SheetField("ground-measured", "Measured on", FieldKind.Date) { IsGuarded = true },
        new SheetField("ground-how", "How, in words") { Longest = 300, IsGuarded = true, Hint = "For a still-water mark: the clock times at which calm water reached it, on which two tides" },
    ],
        stance => stance.Ground is not { } ground ? ["", "", "", "", "", ""]
            : [Written.Of(ground.Metres), Written.Of(ground.PlusMinusMetres), Written.Of<HeightMethod>(ground.Method), ground.StationId, Written.Of(ground.MeasuredOn), ground.How ?? ""],
        (stance, answers) => stance.Measure(answers.Number("ground") is not { } metres ? null : new GroundHeight(metres,
            answers.Needed("ground-plus-minus", answers.Number("ground-plus-minus"), "How far may the height be out? Enter plus or minus how many metres."),
            answers.Needed("ground-method", answers.Choice<HeightMethod>("ground-method"), "How was the height got? Choose one."),
            answers.Needed("ground-station", "Name the tide station whose chart datum the height is counted from."),
            answers.Needed("ground-measured", answers.Date("ground-measured"), "On which day was it measured? Enter a date."),
            answers.Text("ground-how"))));

    private static readonly SheetPart<VantagePoint> CutOff = new("The way back and the tide",
        [.. HeightFields.Of("cut-off", "The path is cut off when the tide is above"), SheetField.YesOrNo("never-cut-off", "The tide never cuts the way back off").Guarded()],
        stance => [.. HeightFields.Read(stance.PathCutOff), Written.Of(stance.IsNeverCutOff)],
        (stance, answers) =>
        {
            var height = HeightFields.Write("cut-off", answers);
            if (!answers.Yes("never-cut-off"))
                stance.CutOffAbove(height);
            else if (height is null)
                stance.NeverCutOff();
            else
                throw Answers.Fault("never-cut-off", "A way that is never cut off has no height at which it is. Clear one of the two.");
        });

    private static readonly SheetPart<VantagePoint> Usable = new("Highest usable tide",
        HeightFields.Of("usable-tide", "The stance is usable while the tide is below"),
        stance => HeightFields.Read(stance.HighestUsableTide),
        (stance, answers) => stance.UsableBelow(HeightFields.Write("usable-tide", answers)));

    private static readonly SheetPart<VantagePoint> Sea = new("Highest usable sea",
    [
        new SheetField("sea-height", "Significant wave height at most, metres", FieldKind.Number) { IsGuarded = true },
        new SheetField("sea-period", "Longest peak period at which that was seen to hold, seconds", FieldKind.Number) { IsGuarded = true },
        new SheetField("sea-from", "Exposed from, degrees true", FieldKind.Number) { IsGuarded = true },
        new SheetField("sea-to", "clockwise to, degrees true", FieldKind.Number) { IsGuarded = true },
        SheetField.YesOrNo("sea-repeated", "Found the same by a second member").Guarded(),
        new SheetField("sea-outside", "Why waves from outside the sector need not count") { Longest = 300, IsGuarded = true, IsWardens = true },
    ],
        stance => stance.Sea is not { } sea ? ["", "", "", "", "", ""]
            : [Written.Of(sea.HighestWaveMetres), Written.Of(sea.LongestPeriodSeconds), Written.Of(sea.ExposedFromDegrees), Written.Of(sea.ExposedToDegrees), Written.Of(sea.IsRepeated), sea.OutsideBecause ?? ""],
        (stance, answers) => stance.UsableIn(OfSea(answers)));

    private static readonly SheetPart<VantagePoint> Watch = Nearby("watch", "Watch place", "Where one sees ledge and swell and the water cannot come",
        stance => stance.WatchPlace, (stance, place) => stance.WatchFrom(place),
        new SheetField("watch-minus-nine", "Why ledge and white water are seen from there with the sun 9 degrees down") { Longest = 300, IsGuarded = true, IsWardens = true });

    private static readonly SheetPart<VantagePoint> Dark = Nearby("dark", "Dark stance", "Where to work until it is light enough to watch",
        stance => stance.DarkStance, (stance, place) => stance.WorkInTheDarkFrom(place));

    public static readonly IReadOnlyList<SheetPart<VantagePoint>> Parts = [Ground, CutOff, Usable, Sea, Watch, Dark];

    private static SeaLimit? OfSea(Answers answers)
    {
        if (answers.Number("sea-height") is not { } height)
            return null;
        var limit = new SeaLimit(height,
            answers.Needed("sea-period", answers.Number("sea-period"), "At which longest peak period was that seen to hold? A longer swell reaches higher."),
            answers.Needed("sea-from", answers.Number("sea-from"), "From which direction on, clockwise, do waves come? Enter degrees true."),
            answers.Needed("sea-to", answers.Number("sea-to"), "Up to which direction do waves come? Enter degrees true."), answers.Yes("sea-repeated"));
        return answers.Text("sea-outside") is { } because ? limit.ShelteredOutside(because) : limit;
    }

    private static SheetPart<VantagePoint> Nearby(string name, string title, string hint, Func<VantagePoint, NearbyPlace?> read, Action<VantagePoint, NearbyPlace?> write, params SheetField[] early) => new(title,
    [
        new SheetField(name, title) { Longest = 200, IsGuarded = true, Hint = hint },
        new SheetField($"{name}-position", $"{title}: position", FieldKind.Position) { IsGuarded = true },
        new SheetField($"{name}-minutes", $"{title}: minutes to the stance", FieldKind.Number) { IsGuarded = true },
        .. early,
    ],
        stance => read(stance) is not { } place ? ["", "", "", .. early.Select(_ => "")]
            : [place.Text, Written.Of(place.Position), Written.Of(place.MinutesToStance), .. early.Select(_ => place.SeenFromMinusNineBecause ?? "")],
        (stance, answers) => write(stance, OfNearby(name, answers)));

    private static NearbyPlace? OfNearby(string name, Answers answers)
    {
        if (answers.Text(name) is not { } text)
            return null;
        var place = new NearbyPlace(text,
            answers.Needed($"{name}-position", answers.Position($"{name}-position"), "Where is it? Enter a position."),
            answers.Needed($"{name}-minutes", answers.Number($"{name}-minutes"), "How many minutes is it from there to the stance?"));
        return answers.Text($"{name}-minus-nine") is { } because ? place.SeenFromMinusNine(because) : place;
    }
}
