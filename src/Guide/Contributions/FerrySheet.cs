using Foreshore.Guide.Access;

namespace Foreshore.Guide.Contributions;

/// <summary>What a member can say of a ferry beside its sailings. Only a leg by ferry is asked.</summary>
internal static class FerrySheet
{
    public const string CrossingMinutes = "ferry-minutes";

    public static readonly SheetPart<Leg> Part = new("The ferry",
    [
        new SheetField(CrossingMinutes, "The crossing takes, minutes", FieldKind.Number) { IsGuarded = true },
        new SheetField("ferry-check-in", "Be there before a sailing, minutes", FieldKind.Whole) { IsGuarded = true, Hint = "The last check-in; 0 where one walks on board" },
        new SheetField("ferry-interval", "Minutes between sailings, as a rule", FieldKind.Number) { IsGuarded = true },
        new SheetField("ferry-fare", "Return fare for one on foot", FieldKind.Number) { Hint = "0 is free; empty is not known" },
        new SheetField("ferry-currency", "Currency of the fare") { Longest = 3, Hint = "Three letters, like USD" },
        new SheetField("ferry-saves", "Minutes saved over the road", FieldKind.Number) { Hint = "Empty where there is no road" },
    ],
        leg => leg.Ferry is not { } ferry ? ["", "", "", "", "", ""]
            : [Written.Of(ferry.CrossingMinutes), Written.Of(ferry.LastCheckInMinutes), Written.Of(ferry.IntervalMinutes), Written.Money(ferry.Fare), ferry.Currency ?? "", Written.Of(ferry.MinutesSaved)],
        Write);

    private static void Write(Leg leg, Answers answers)
    {
        var minutes = answers.Needed(CrossingMinutes, answers.Number(CrossingMinutes), "How many minutes does the crossing take?");
        var checkIn = answers.Needed("ferry-check-in", answers.Whole("ferry-check-in"), "How many minutes before a sailing must one be there? Enter 0 where one walks on board.");
        leg.Sail((leg.Ferry ?? FerryFacts.WithoutSailings(minutes, checkIn)).Take(minutes, answers.Number("ferry-interval"), checkIn)
            .Costing((decimal?)answers.Number("ferry-fare"), answers.Text("ferry-currency"), answers.Number("ferry-saves")));
    }
}
