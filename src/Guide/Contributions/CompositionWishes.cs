using Foreshore.Guide.Compositions;

namespace Foreshore.Guide.Contributions;

/// <summary>The tide, ground and sea a picture wants.</summary>
internal static class CompositionWishes
{
    private static readonly SheetPart<Composition> Tide = new("Wanted tide",
    [
        .. HeightFields.Of("tide-lowest", "Tide at least").Select(field => field with { IsGuarded = false }),
        .. HeightFields.Of("tide-highest", "Tide at most").Select(field => field with { IsGuarded = false }),
        SheetField.Of<TideTurn>("tide-turn", "Or counted from", turn => turn == TideTurn.LowWater ? "low water" : "high water"),
        new SheetField("tide-from", "from, minutes (before the turn: negative)", FieldKind.Whole),
        new SheetField("tide-to", "to, minutes", FieldKind.Whole),
        SheetField.Of<TideFlow>("tide-flow", "While the tide is", flow => flow == TideFlow.Any ? "rising or falling" : flow == TideFlow.Rising ? "rising" : "falling"),
        SheetField.Of<TideRange>("tide-range", "At", range => range switch { TideRange.Any => "any range", TideRange.Springs => "springs", TideRange.Neaps => "neaps", _ => "a range of at least" }),
        new SheetField("tide-range-metres", "metres", FieldKind.Number),
    ],
        picture => picture.Tide is not { } wish ? [.. Enumerable.Repeat("", 14)]
            : [.. HeightFields.Read(wish.Lowest), .. HeightFields.Read(wish.Highest), Written.Of(wish.Turn), Written.Of(wish.FromMinutes), Written.Of(wish.ToMinutes),
                Written.Of<TideFlow>(wish.Flow), Written.Of<TideRange>(wish.Range), Written.Of(wish.RangeAtLeastMetres)],
        (picture, answers) => picture.WishTide(OfTide(answers)));

    private static readonly SheetPart<Composition> Ground = new("Wanted ground",
        [SheetField.Of<GroundState>("ground-state", "The foreground is", Words), .. HeightFields.Of("foreground", "The foreground lies at").Select(field => field with { IsGuarded = false })],
        picture => picture.Ground is not { } wish ? ["", "", "", "", ""] : [Written.Of<GroundState>(wish.State), .. HeightFields.Read(wish.Foreground)],
        (picture, answers) => picture.WishGround(answers.Choice<GroundState>("ground-state") is { } state ? new GroundWish(state, HeightFields.Write("foreground", answers)) : null));

    private static readonly SheetPart<Composition> Sea = new("Wanted sea",
    [
        new SheetField("sea", "The sea in words") { Longest = 60, Hint = "Like calm only, some action, reflections" },
        new SheetField("sea-lowest", "Significant wave height at least, metres", FieldKind.Number),
        new SheetField("sea-highest", "at most, metres", FieldKind.Number),
        new SheetField("sea-shortest", "Peak period at least, seconds", FieldKind.Number),
        new SheetField("sea-longest", "at most, seconds", FieldKind.Number),
        new SheetField("sea-direction-from", "Waves from, degrees true", FieldKind.Number),
        new SheetField("sea-direction-to", "clockwise to", FieldKind.Number),
        new SheetField("sea-wind", "Wind below, m/s", FieldKind.Number),
    ],
        picture => picture.Sea is not { } wish ? [.. Enumerable.Repeat("", 8)]
            : [wish.Words, Written.Of(wish.LowestWaveMetres), Written.Of(wish.HighestWaveMetres), Written.Of(wish.ShortestPeriodSeconds), Written.Of(wish.LongestPeriodSeconds),
                Written.Of(wish.FromDegrees), Written.Of(wish.ToDegrees), Written.Of(wish.HighestWindMetresPerSecond)],
        (picture, answers) => picture.WishSea(OfSea(answers)));

    public static readonly IReadOnlyList<SheetPart<Composition>> Parts = [Tide, Ground, Sea];

    private static TideWish? OfTide(Answers answers)
    {
        var (lowest, highest) = (HeightFields.Write("tide-lowest", answers), HeightFields.Write("tide-highest", answers));
        var turn = answers.Choice<TideTurn>("tide-turn");
        if (lowest is null && highest is null && turn is null)
            return answers.Choice<TideRange>("tide-range") is null or TideRange.Any && answers.Choice<TideFlow>("tide-flow") is null or TideFlow.Any ? null
                : throw Answers.Fault("tide-lowest", "A wished range or direction needs a height, or hours from a turn, to go with it. Give one of them.");
        if (turn is not null && (lowest ?? highest) is not null)
            throw Answers.Fault("tide-turn", "Give either a height or a time from high or low water, not both.");

        var wish = turn is { } about
            ? TideWish.About(about,
                answers.Needed("tide-from", answers.Whole("tide-from"), "From how many minutes before (negative) or after the turn?"),
                answers.Needed("tide-to", answers.Whole("tide-to"), "Until how many minutes after the turn? Before it is negative."))
            : TideWish.Band(lowest, highest);
        wish = wish.While(answers.Choice<TideFlow>("tide-flow") ?? TideFlow.Any);
        return answers.Choice<TideRange>("tide-range") switch
        {
            null or TideRange.Any => wish,
            TideRange.AtLeast => wish.RangeAtLeast(answers.Needed("tide-range-metres", answers.Number("tide-range-metres"), "A range of at least how many metres?")),
            { } range => wish.At(range),
        };
    }

    private static SeaWish? OfSea(Answers answers)
    {
        if (answers.Text("sea") is not { } words)
            return null;
        var (lowest, highest, wind) = (answers.Number("sea-lowest"), answers.Number("sea-highest"), answers.Number("sea-wind"));
        var wish = SeaWish.Band(words, lowest, highest).Period(answers.Number("sea-shortest"), answers.Number("sea-longest"));
        if (answers.Number("sea-direction-from") is { } from)
            wish = wish.ComingFrom(from, answers.Needed("sea-direction-to", answers.Number("sea-direction-to"), "Up to which direction? Enter degrees true."));
        return wind is { } below ? wish.InWindBelow(below) : wish;
    }

    private static string Words(GroundState state) => state switch
    {
        GroundState.FreshlyWashed => "freshly washed",
        GroundState.Dry => "dry",
        _ => "as it comes",
    };
}
