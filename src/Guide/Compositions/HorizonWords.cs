using System.Globalization;
using Foreshore.Almanac.Earth;
using Foreshore.Guide.Shell.Ink;

namespace Foreshore.Guide.Compositions;

/// <summary>The horizon ruler in words: its captions, its description and the cells of its table.</summary>
public static class HorizonWords
{
    private const double CaptionApart = 46; // degrees: "sun comes up" on a phone's strip

    /// <summary>A bearing as it is printed: three figures.</summary>
    public static string Degrees(Bearing bearing) =>
        string.Create(CultureInfo.InvariantCulture, $"{Math.Round(bearing.Degrees) % 360:000}°");

    public static string Of(SunEdge edge, HorizonDrawing drawing) => edge is { Time: { } time, Bearing: { } bearing }
        ? string.Create(CultureInfo.InvariantCulture, $"{Degrees(bearing)} at {Clock(time)}") + (drawing.Holds(edge) ? "" : ", outside the strip")
        : edge.Rises ? "does not come up" : "does not go down";

    public static string Summary(HorizonDrawing drawing)
    {
        var skyline = drawing.Observer.Skyline;
        var kinds = drawing.Skyline.Select(run => run.Kind).ToHashSet();
        return string.Join(' ', new[]
        {
            $"The lens takes in {drawing.LensWords}.",
            skyline.IsAssumed ? "No skyline is recorded: a sea horizon is assumed." : "The skyline is drawn with its height stretched.",
            kinds.Contains(SkylineKind.Unknown) ? "Broken line: not recorded, taken as level." : "",
            "Letters: months, on whose 21st the sun comes up or goes down there; January to June above, July to December below.",
            drawing.Exposed.Count > 0 ? $"Wave line: {Exposed(drawing)}." : "",
        }.Where(words => words.Length > 0));
    }

    public static string Exposed(HorizonDrawing drawing) => drawing.Sector is var (from, to)
        ? from == to ? "open to waves all round" : $"open to waves {Degrees(from)}–{Degrees(to)}"
        : "";

    /// <summary>What the two groups of letters are, each over its own, moved apart where they would touch.</summary>
    public static IEnumerable<(string Words, double Right)> Captions(HorizonDrawing drawing)
    {
        var groups = drawing.Ticks.GroupBy(tick => tick.Edge.Rises)
            .Select(group => (group.Key ? "sun comes up" : "sun goes down", group.Average(tick => tick.LetterRight))).ToList();
        var places = LabelRows.Spread(groups.ConvertAll(g => g.Item2), CaptionApart, CaptionApart / 2, HorizonDrawing.Span - CaptionApart / 2);
        return groups.Select((group, i) => (group.Item1, places[i]));
    }

    private static string Clock(NodaTime.ZonedDateTime time) =>
        time.ToString("HH:mm", CultureInfo.InvariantCulture) + " " + time.GetZoneInterval().Name;
}
