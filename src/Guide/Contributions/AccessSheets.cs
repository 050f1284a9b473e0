using Foreshore.Guide.Access;
using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Contributions;

/// <summary>What a member can say of ways in, car parks and nights there: each with who says so, the day it was checked, and a link.</summary>
internal static class AccessSheets
{
    public static readonly IReadOnlyList<SheetField> Checked =
    [
        new SheetField("says-who", "Who says so") { Longest = 160, IsRequired = true, Hint = "A sign, an owner, a byelaw: what one would quote" },
        new SheetField("checked-on", "Checked on", FieldKind.Date) { IsRequired = true },
        new SheetField("link", "Link to the source") { Longest = 400 },
    ];

    public static readonly Sheet<Leg> Leg = new(
        new SheetPart<Leg>("The leg",
            [new SheetField("name", "Name of the leg") { Longest = 120, IsRequired = true }, new SheetField("notes", "Notes", FieldKind.Text) { Longest = 600 }],
            leg => [leg.Name, leg.Notes ?? ""],
            (leg, answers) => leg.Call(answers.Text("name") ?? "", answers.Text("notes"))),
        new SheetPart<Leg>("By what right",
            [SheetField.Of<LegalStatus>("legal-status", "Legal status", status => status.Words()).Required().Guarded(), .. Checked],
            leg => [Written.Of<LegalStatus>(leg.LegalStatus), .. Read(leg.Check)],
            (leg, answers) => leg.Stand(answers.Choice<LegalStatus>("legal-status") ?? LegalStatus.Unknown, Check(answers, leg.Check))),
        new SheetPart<Leg>("How far",
        [
            new SheetField("kilometres", "Distance, km", FieldKind.Number), new SheetField("minutes", "Usual minutes one way, in daylight", FieldKind.Number) { IsGuarded = true },
            new SheetField("climb", "Climb, metres", FieldKind.Number), new SheetField("surface", "Surface") { Longest = 120, IsGuarded = true },
        ],
            leg => [Written.Of(leg.DistanceKilometres), Written.Of(leg.Minutes), Written.Of(leg.ClimbMetres), leg.Surface ?? ""],
            (leg, answers) => leg.Measure(answers.Number("kilometres"), answers.Number("minutes"), answers.Number("climb"), answers.Text("surface"))),
        FerrySheet.Part,
        new SheetPart<Leg>("Underfoot, and at night",
        [
            SheetField.Of<LegGround>("ground", "The worst one walks on", ground => ground.Words()).Hinted("Weed, wet rock and soft ground set the pace when one must get back").Guarded(),
            SheetField.Of<LightAtNight>("light-at-night", "At night it is", light => light.Words()).Guarded(),
        ],
            leg => [Written.Of<LegGround>(leg.Ground), Written.Of<LightAtNight>(leg.LightAtNight)],
            (leg, answers) => leg.Over(answers.Choice<LegGround>("ground") ?? LegGround.Unknown).ByNight(answers.Choice<LightAtNight>("light-at-night") ?? LightAtNight.Unknown)),
        new SheetPart<Leg>("Who may go",
        [
            SheetField.Of<Consent>("group", "May a group go", consent => consent.Words()), SheetField.Of<Consent>("tripod", "May a tripod stand", consent => consent.Words()),
            SheetField.Of<DogRule>("dogs", "Dogs", rule => rule.Words()),
        ],
            leg => [Written.Of<Consent>(leg.Group), Written.Of<Consent>(leg.Tripod), Written.Of<DogRule>(leg.Dogs)],
            (leg, answers) => leg.Allow(answers.Choice<Consent>("group") ?? Consent.Unknown, answers.Choice<Consent>("tripod") ?? Consent.Unknown, answers.Choice<DogRule>("dogs") ?? DogRule.Unknown)),
        new SheetPart<Leg>("Hours",
        [
            HoursFields.Hours("When one can pass"),
            new SheetField("hours", "As the sign has it") { Longest = 300, IsGuarded = true, Hint = "Words about hours with no hours above leave the way not judged" },
            HoursFields.Ask,
        ],
            leg => [Written.Of(leg.Hours), leg.HoursText ?? "", leg.AskWhom ?? ""],
            (leg, answers) => leg.OpenBy(answers.Hours(HoursFields.Name), answers.Text("hours"), answers.Text(HoursFields.Ask.Name))),
        new SheetPart<Leg>("Sailings of a ferry", HoursFields.Sailings,
            leg => [Written.Of(leg.Ferry?.Out), Written.Of(leg.Ferry?.Back)],
            (leg, answers) => leg.Sail(answers.Sailings("sailings-out"), answers.Sailings("sailings-back"))),
        new SheetPart<Leg>("The leg and the tide",
        [
            SheetField.Of<TidalCut>("tidal-cut", "Does the tide ever cover any part of this leg, or cut it off", cut => cut.Words())
                .Hinted("Until somebody answers, no turn back is told for a way over it, and none of its outlooks is judged").Guarded(),
            .. HeightFields.Of("crossing", "Passable while the tide is below"),
            SheetField.YesOrNo("crossing-beach", "It is a beach").Guarded(),
            new SheetField("crossing-minutes", "Minutes from the stance to beyond the crossing", FieldKind.Number) { IsGuarded = true },
            new SheetField("crossing-sheltered", "Why no wave allowance is due") { Longest = 300, IsGuarded = true, IsWardens = true },
        ],
            leg => [Written.Of<TidalCut>(leg.TidalCut), .. leg.Crossing is not { } crossing ? ["", "", "", "", "", "", ""]
                : (string[])[.. HeightFields.Read(crossing.PassableBelow), Written.Of(crossing.IsBeach), Written.Of(crossing.MinutesFromStance), crossing.ShelteredBecause ?? ""]],
            Cut));

    public static readonly Sheet<ParkingArea> Parking = new(
        new SheetPart<ParkingArea>("The car park",
        [
            new SheetField("name", "Name") { Longest = 80, IsRequired = true }, new SheetField("position", "Position", FieldKind.Position) { IsRequired = true },
            new SheetField("surface", "Surface") { Longest = 80, IsRequired = true },
        ],
            area => [area.Name, Written.Of(area.Position), area.Surface],
            (area, answers) => area.Lie(answers.Text("name") ?? "", answers.Needed("position", answers.Position("position"), "Where is it? Enter a position."), answers.Text("surface") ?? "")),
        new SheetPart<ParkingArea>("Room and cost",
        [
            new SheetField("cars", "Cars it holds", FieldKind.Whole), new SheetField("cost", "Price of one stay", FieldKind.Number) { Hint = "0 is free; empty is not known" },
            new SheetField("currency", "Currency") { Longest = 3, Hint = "Three letters, like USD" },
        ],
            area => [Written.Of(area.Capacity), Written.Money(area.Cost), area.Currency ?? ""],
            (area, answers) => area.Hold(answers.Whole("cars"), (decimal?)answers.Number("cost"), answers.Text("currency"))),
        new SheetPart<ParkingArea>("Barrier", [new SheetField("barrier", "Clear height under the barrier, metres", FieldKind.Number)],
            area => [Written.Of(area.HeightBarrierMetres)], (area, answers) => area.Bar(answers.Number("barrier"))),
        new SheetPart<ParkingArea>("Hours", [HoursFields.Hours("When a car gets in and out"), HoursFields.Ask],
            area => [Written.Of(area.Hours), area.AskWhom ?? ""], (area, answers) => area.OpenBy(answers.Hours(HoursFields.Name), answers.Text(HoursFields.Ask.Name))),
        new SheetPart<ParkingArea>("Flooding", HeightFields.Of("floods", "Floods when the tide is above"),
            area => HeightFields.Read(area.FloodsAbove), (area, answers) => area.FloodAbove(HeightFields.Write("floods", answers))),
        new SheetPart<ParkingArea>("Notes", [new SheetField("notes", "Notes", FieldKind.Text) { Longest = 600 }],
            area => [area.Notes ?? ""], (area, answers) => area.Note(answers.Text("notes"))),
        new SheetPart<ParkingArea>("Who says so", Checked, area => Read(area.Check), (area, answers) => area.CheckedAs(Check(answers, area.Check))));

    public static readonly Sheet<OvernightRule> Overnight = new(
        new SheetPart<OvernightRule>("A night there",
        [
            SheetField.Of<OvernightStanding>("standing", "Staying overnight is", Words).Required(),
            new SheetField("granted-by", "Allowed by") { Longest = 200, Hint = "The sign or the letter that allows it" },
            .. Checked,
        ],
            rule => [Written.Of<OvernightStanding>(rule.Standing), rule.GrantedBy ?? "", .. Read(rule.Check)],
            (rule, answers) => rule.Stand(answers.Choice<OvernightStanding>("standing") ?? OvernightStanding.Unknown, Check(answers, rule.Check), answers.Text("granted-by"))));

    /// <summary>A rule that is not there yet says for what one sleeps in; it is about the whole place.</summary>
    public static readonly Sheet NewOvernight = new(
        [new SheetPart("Sleeping in what", [SheetField.Of<Sleeper>("sleeper", "A night", sleeper => sleeper.Words()).Required()]), .. Overnight.Parts]);

    /// <summary>A way that is not there yet: its name, its one leg, and where the car stands; more legs are put right later.</summary>
    public static readonly Sheet NewWay = new(
        [new SheetPart("The way", [new SheetField("way", "Name of the way") { Longest = 80, IsRequired = true }, SheetField.Of<LegKind>("leg-kind", "By", kind => kind.Words()).Required().Guarded()]), .. Leg.Parts, WaySheets.Lots]);

    public static IReadOnlyList<string> Read(FactCheck? check) => check is null ? ["", "", ""] : [check.SaysWho, Written.Of(check.LastChecked), check.Link ?? ""];

    /// <summary>Who looked is not typed: it is whoever proposes, written when the proposal is accepted.</summary>
    public static FactCheck Check(Answers answers, FactCheck? held) => new(
        answers.Needed("says-who", "Who says so? Name the sign, the owner or the byelaw."),
        answers.Needed("checked-on", answers.Date("checked-on"), "On which day was it checked? Enter a date like 2026-11-25."), held?.CheckedBy, answers.Text("link"));

    private static void Cut(Leg leg, Answers answers)
    {
        var crossing = OfCrossing(answers);
        switch (answers.Choice<TidalCut>("tidal-cut"))
        {
            case TidalCut.Never when crossing is not null:
                throw Answers.Fault("tidal-cut", "A leg that no tide cuts off has no height at which it is. Clear the height, or say that the tide cuts it off.");
            case TidalCut.Never:
                leg.NeverCutOff();
                break;
            case TidalCut.Crossing when crossing is null:
                throw Answers.Fault("crossing", "Below which height of the tide is it passable? Enter the height, or say \"not known\" above and write what you saw in the notes.");
            default:
                _ = crossing is null ? leg.CutOffUnknown() : leg.PassableWhile(crossing);
                break;
        }
    }

    private static Crossing? OfCrossing(Answers answers)
    {
        if (HeightFields.Write("crossing", answers) is not { } below)
            return null;
        var crossing = new Crossing(below, answers.Yes("crossing-beach"), answers.Number("crossing-minutes"));
        return answers.Text("crossing-sheltered") is { } because ? crossing.Sheltered(because) : crossing;
    }

    private static string Words(OvernightStanding standing) => standing switch
    {
        OvernightStanding.Allowed => "allowed, in writing or on a sign",
        OvernightStanding.NoRuleFound => "no rule found – that is not permission",
        OvernightStanding.Forbidden => "forbidden",
        _ => "not known",
    };
}
