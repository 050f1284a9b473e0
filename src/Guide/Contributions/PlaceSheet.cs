using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Contributions;

/// <summary>What a member can say of a place as a whole, and of how bad its hazards are.</summary>
internal static class PlaceSheet
{
    private static readonly SheetField[] EmergencyFields =
    [
        new("whom-to-ring", "Whom to ring") { Longest = 200 },
        new("read-out", "Position to read out", FieldKind.Position),
        new("grid-reference", "Grid reference") { Longest = 60 },
        new("nearest-road", "Nearest road an ambulance can reach") { Longest = 300 },
        new("last-signal", "Last point on the walk with phone signal") { Longest = 300 },
        new("throw-line", "Nearest throw-line or ring") { Longest = 300 },
        new("throw-line-seen", "Seen there on", FieldKind.Date),
        new("way-out", "Way out of the water") { Longest = 300 },
        new("shelter", "Shelter") { Longest = 300 },
        new("warnings-link", "Link to official warnings") { Longest = 400 },
    ];

    public static readonly Sheet<Location> Whole = new(
        new SheetPart<Location>("Name", [new SheetField("name", "Name") { Longest = 80, IsRequired = true }], place => [place.Name], (place, answers) => place.Call(answers.Text("name") ?? "")),
        new SheetPart<Location>("What it is",
        [
            new SheetField("summary", "In a line or two", FieldKind.Text) { Longest = 200, IsRequired = true },
            new SheetField("background", "Background", FieldKind.Text) { Longest = 4000, IsRequired = true, Hint = "Its features, their sizes and ages" },
            new SheetField("other-names", "Other names, one a line", FieldKind.Text) { Longest = 800 },
        ],
            place => [place.Summary, place.Background, string.Join('\n', place.OtherNames)],
            (place, answers) => place.Describe(answers.Text("summary") ?? "", answers.Text("background") ?? "",
                (answers.Text("other-names") ?? "").Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))),
        new SheetPart<Location>("In an emergency", EmergencyFields, place => Read(place.Emergency), (place, answers) => place.InEmergency(OfEmergency(answers))),
        new SheetPart<Location>("The foreshore",
            [new SheetField("foreshore-owner", "Owner of the foreshore") { Longest = 200 }, new SheetField("byelaws", "Byelaws", FieldKind.Text) { Longest = 600, IsGuarded = true, Hint = "Enter the hours they leave below as well: byelaws without hours leave the place not judged" }],
            place => [place.ForeshoreOwner ?? "", place.Byelaws ?? ""],
            (place, answers) => place.OwnForeshore(answers.Text("foreshore-owner"), answers.Text("byelaws"))),
        new SheetPart<Location>("Hours of the place", [HoursFields.Hours("When one may be there"), HoursFields.Ask],
            place => [Written.Of(place.Hours), place.AskWhom ?? ""], (place, answers) => place.OpenBy(answers.Hours(HoursFields.Name), answers.Text(HoursFields.Ask.Name))));

    /// <summary>Which station a place's tide goes by, and the place's own corrections. Heights judged by another station need checking from then on.</summary>
    public static readonly Sheet<Location> Tide = new(
        new SheetPart<Location>("The tide",
        [
            new SheetField("station", "Tide station") { Longest = StationIds.Longest, IsRequired = true, Hint = "By its id, like noaa/8410140" }.Guarded(),
            new SheetField("high-minutes", "High water later here by, minutes", FieldKind.Whole).Guarded(),
            new SheetField("low-minutes", "Low water later here by, minutes", FieldKind.Whole).Guarded(),
            new SheetField("high-ratio", "High-water height, times", FieldKind.Number).Guarded(),
            new SheetField("low-ratio", "Low-water height, times", FieldKind.Number).Guarded(),
            new SheetField("mean-sea-level", "Mean sea level above chart datum, metres", FieldKind.Number).Guarded(),
        ],
            place => [place.TideStationId ?? "", Written.Of(place.TideCorrections?.HighWaterMinutes), Written.Of(place.TideCorrections?.LowWaterMinutes),
                Written.Of(place.TideCorrections?.HighWaterRatio), Written.Of(place.TideCorrections?.LowWaterRatio), Written.Of(place.MeanSeaLevelAboveChartDatumMetres)],
            (place, answers) => place.JudgeTideBy(answers.Needed("station", "Which station does the tide go by? Enter its id."), answers.Number("mean-sea-level"), OfCorrections(answers))));

    public static readonly Sheet<HazardRating> Rating = new(
        new SheetPart<HazardRating>("How bad it is",
        [
            new SheetField("severity", "Severity, 0 none known to 4 severe", FieldKind.Whole) { IsGuarded = true, Hint = "Empty: not rated" },
            .. AccessSheets.Checked,
        ],
            rating => [Written.Of(rating.Severity), .. AccessSheets.Read(rating.Check)],
            (rating, answers) => rating.Confirm(answers.Whole("severity"), AccessSheets.Check(answers, rating.Check))));

    private static IReadOnlyList<string> Read(EmergencyBlock? block) => block is null ? [.. EmergencyFields.Select(_ => "")]
        : [block.WhomToRing, Written.Of(block.Position), block.GridReference ?? "", block.NearestRoad ?? "", block.LastPhoneSignal ?? "", block.ThrowLine ?? "",
            Written.Of(block.ThrowLineSeenOn), block.WayOutOfWater ?? "", block.Shelter ?? "", block.WarningsLink ?? ""];

    private static TideCorrections? OfCorrections(Answers answers)
    {
        var corrections = new TideCorrections(answers.Whole("high-minutes") ?? 0, answers.Whole("low-minutes") ?? 0, answers.Number("high-ratio") ?? 1, answers.Number("low-ratio") ?? 1);
        return corrections == new TideCorrections(0, 0) ? null : corrections;
    }

    private static EmergencyBlock? OfEmergency(Answers answers)
    {
        if (answers.Text("whom-to-ring") is not { } ring)
            return null;
        return new EmergencyBlock(answers.Needed("read-out", answers.Position("read-out"), "Which position is to be read out? Enter one."), ring)
        {
            GridReference = answers.Text("grid-reference"),
            NearestRoad = answers.Text("nearest-road"),
            LastPhoneSignal = answers.Text("last-signal"),
            ThrowLine = answers.Text("throw-line"),
            ThrowLineSeenOn = answers.Date("throw-line-seen"),
            WayOutOfWater = answers.Text("way-out"),
            Shelter = answers.Text("shelter"),
            WarningsLink = answers.Text("warnings-link"),
        };
    }
}
