using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Contributions;

/// <summary>A tide height in a sheet: metres, datum, the station it was judged by, and whether a second member found the same.</summary>
internal static class HeightFields
{
    public static IReadOnlyList<SheetField> Of(string name, string label) =>
    [
        new SheetField(name, $"{label}, metres", FieldKind.Number).Guarded(),
        SheetField.Of<TideDatum>($"{name}-datum", "above", Words).Guarded(),
        new SheetField($"{name}-station", "judged by the tide station") { Longest = StationIds.Longest, IsGuarded = true },
        SheetField.YesOrNo($"{name}-repeated", "found the same by a second member").Guarded(),
    ];

    public static IReadOnlyList<string> Read(TideHeight? height) => height is null ? ["", "", "", ""]
        : [Written.Of(height.Metres), Written.Of<TideDatum>(height.Datum), height.StationId, Written.Of(height.IsRepeated)];

    public static TideHeight? Write(string name, Answers answers) => answers.Number(name) is not { } metres ? null
        : new TideHeight(metres, answers.Needed($"{name}-station", "Name the tide station by whose curve this height was judged. Without it nobody can compare it with a tide."),
            answers.Yes($"{name}-repeated"), answers.Choice<TideDatum>($"{name}-datum") ?? TideDatum.ChartDatum);

    public static string Words(TideDatum datum) => datum switch
    {
        TideDatum.ChartDatum => "chart datum",
        TideDatum.MeanSeaLevel => "mean sea level",
        TideDatum.LowestAstronomicalTide => "lowest astronomical tide",
        _ => throw new ArgumentOutOfRangeException(nameof(datum), datum, "No such datum."),
    };
}
