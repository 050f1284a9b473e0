using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Contributions;

/// <summary>A way in, with the place whose car parks serve it and among whose ways it has its order.</summary>
internal sealed record WayAt(AccessRoute Route, Location Place);

/// <summary>A stance, with the place whose ways may lead to it.</summary>
internal sealed record OwnWays(VantagePoint Stance, Location Place);

/// <summary>What a member can say of a way as a whole: its order, the car parks that serve it, and which ways lead to a stance.</summary>
internal static class WaySheets
{
    private const int MostLots = 5;
    private const int MostWays = 4;

    public static readonly SheetPart<WayAt> Lots = new("Where the car stands", [.. Enumerable.Range(1, MostLots).SelectMany(LotFields)],
        way => [.. Enumerable.Range(0, MostLots).SelectMany(n => way.Route.Parking.ElementAtOrDefault(n) is not { } served ? ["", ""]
            : (string[])[served.ParkingArea.Name, Written.Of(served.WalkMinutes)])],
        (way, answers) => way.Route.ServedBy(LotsOf(way, answers)));

    public static readonly Sheet<WayAt> Way = new(
        new SheetPart<WayAt>("The way in",
        [
            new SheetField("name", "Name of the way") { Longest = 80, IsRequired = true },
            new SheetField("notes", "Notes", FieldKind.Text) { Longest = 600 },
            new SheetField("order", "Its place in the club's order", FieldKind.Whole)
                { IsGuarded = true, IsRequired = true, Hint = "1 is the way outlooks are judged by, where it is open and may be recommended" },
        ],
            way => [way.Route.Name, way.Route.Notes ?? "", Written.Of(1 + way.Place.Routes.OrderBy(route => route.Order).ToList().IndexOf(way.Route))],
            (way, answers) =>
            {
                way.Route.Call(answers.Text("name") ?? "", answers.Text("notes"));
                way.Place.Prefer(way.Route, answers.Needed("order", answers.Whole("order"), "Which place does it have among the ways in? 1 is the first."));
            }),
        Lots);

    public static readonly Sheet<OwnWays> Own = new(
        new SheetPart<OwnWays>("Ways that lead to this vantage point", [.. Enumerable.Range(1, MostWays).SelectMany(OwnFields)],
            own => [.. Enumerable.Range(0, MostWays).SelectMany(n => own.Stance.Ways.ElementAtOrDefault(n) is not { } way ? ["", "", "", ""]
                : (string[])[way.Route.Name, Written.Of(way.EndMinutes), Written.Of(way.WalkInMinutes), Written.Of(way.WalkOutMinutes)])],
            (own, answers) => own.Stance.LedToBy(WaysOf(own, answers))));

    private static IEnumerable<SheetField> LotFields(int n) =>
    [
        new SheetField($"car-park-{n}", n == 1 ? "Car park the club would use first" : $"Car park {n}", FieldKind.Choice)
            { Names = NameList.CarParks, IsGuarded = true, Hint = n == 1 ? "Outlooks are judged with the car there, where it is open" : null },
        new SheetField($"car-park-{n}-walk", $"Minutes on foot, in daylight, from {(n == 1 ? "it" : $"car park {n}")} to where the way begins", FieldKind.Number)
            { IsGuarded = true, Hint = "0 where the way begins beside the car; empty until somebody has timed it" },
    ];

    private static IEnumerable<SheetField> OwnFields(int n) =>
    [
        new SheetField($"way-{n}", n == 1 ? "Way the club prefers for it" : $"Way {n}", FieldKind.Choice)
            { Names = NameList.Ways, IsGuarded = true, Hint = n == 1 ? "With none chosen, all ways of the place lead here, in the place's order. With one, no other counts" : null },
        new SheetField($"way-{n}-end", $"Minutes on foot from the end of {Which(n)} to the stance", FieldKind.Number) { IsGuarded = true },
        new SheetField($"way-{n}-in", $"Walk in by {Which(n)}, timed whole from its first car park, minutes", FieldKind.Number) { IsGuarded = true, Hint = "In daylight; empty until somebody has walked it so" },
        new SheetField($"way-{n}-out", $"Walk out by {Which(n)}, timed whole, minutes", FieldKind.Number) { IsGuarded = true },
    ];

    private static string Which(int n) => n == 1 ? "this way" : $"way {n}";

    /// <summary>Those of the form in its order, then what a way has beyond the form's room.</summary>
    private static IReadOnlyList<(ParkingArea Lot, double? WalkMinutes)> LotsOf(WayAt way, Answers answers) =>
    [
        .. from field in Filled(answers, "car-park", MostLots, "walk")
           select (One(field, answers.Text(field)!, way.Place.Parking, lot => lot.Name, "car park"), answers.Number($"{field}-walk")),
        .. way.Route.Parking.Skip(MostLots).Select(served => (served.ParkingArea, served.WalkMinutes)),
    ];

    private static IReadOnlyList<(AccessRoute Route, double? EndMinutes, double? WalkInMinutes, double? WalkOutMinutes)> WaysOf(OwnWays own, Answers answers) =>
    [
        .. from field in Filled(answers, "way", MostWays, "end", "in", "out")
           select (One(field, answers.Text(field)!, own.Place.Routes, route => route.Name, "way in"),
               answers.Number($"{field}-end"), answers.Number($"{field}-in"), answers.Number($"{field}-out")),
        .. own.Stance.Ways.Skip(MostWays).Select(way => (way.Route, way.EndMinutes, way.WalkInMinutes, way.WalkOutMinutes)),
    ];

    /// <summary>The slots that name something, from the top and without a gap; a figure of none is a fault, never dropped in silence.</summary>
    private static IEnumerable<string> Filled(Answers answers, string name, int most, params string[] figures)
    {
        var ended = false;
        foreach (var field in Enumerable.Range(1, most).Select(n => $"{name}-{n}"))
        {
            if (answers.Text(field) is null)
            {
                ended = true;
                if (figures.FirstOrDefault(figure => answers.Text($"{field}-{figure}") is not null) is { } lost)
                    throw Answers.Fault($"{field}-{lost}", "Which one is this of? Choose it above, or clear this.");
                continue;
            }

            yield return ended ? throw Answers.Fault(field, "Fill the list from its top: what stands before this one is empty.") : field;
        }
    }

    private static T One<T>(string field, string name, IEnumerable<T> all, Func<T, string> nameOf, string kind) =>
        all.Where(each => nameOf(each) == name).ToList() switch
        {
            [var one] => one,
            [] => throw Answers.Fault(field, $"The guide has no {kind} called \"{name}\" at this place. Choose one of the list, or add it to the place first."),
            _ => throw Answers.Fault(field, $"Here is more than one {kind} called \"{name}\". Give one of them another name first."),
        };
}
