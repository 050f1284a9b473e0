using System.Globalization;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>The sun-path chart in words: axis, keys and table.</summary>
public sealed record SunPathWords(SunPathDrawing Drawing, DateTimeZone Zone)
{
    private static readonly CultureInfo Plain = CultureInfo.InvariantCulture;
    private static readonly string[] Points = ["N", "NE", "E", "SE", "S", "SW", "W", "NW"];

    public string Summary => string.Join(' ', Drawing.Paths.Select(path =>
        $"{KeyOf(path)}: {(path.Runs.Count == 0 ? "the sun does not come up" : string.Create(Plain, $"highest {path.Day.NoonAltitudeDegrees:0}° at {Clock(path.Day.Noon)}"))}."));

    /// <summary>The eight points of the compass that the chart holds, its very ends left out.</summary>
    public IEnumerable<(string Words, double Right)> Compass =>
        Points.Select((point, i) => (point, Bearing.FromDegrees(45 * i - Drawing.Left.Degrees).Degrees))
            .Where(p => p.Item2 >= 4 && p.Item2 <= Drawing.Span - 4);

    public IEnumerable<string[]> Rows => Drawing.Paths.Select(path => new[]
    {
        KeyOf(path),
        Edge(path.Day, path.Day.Rise),
        string.Create(Plain, $"{path.Day.NoonAltitudeDegrees:0.0}° at {Clock(path.Day.Noon)}"),
        Edge(path.Day, path.Day.Set),
    });

    public string KeyOf(SunPath path) => (path.Kind switch
    {
        PathDay.JuneSolstice => "June solstice, ",
        PathDay.Equinox => "equinox, ",
        PathDay.DecemberSolstice => "December solstice, ",
        _ => "today, ",
    }) + path.Day.Date.ToString("d MMM", Plain);

    public static string ClassOf(PathDay kind) => kind switch
    {
        PathDay.Today => "ink-sun ink-best",
        PathDay.Equinox => "ink-sun ink-broken",
        PathDay.JuneSolstice => "ink-sun",
        _ => "ink-sun ink-dotted",
    };

    private string Edge(SunDay day, Instant? time) => time is { } at
        ? Clock(at)
        : day.NoonAltitudeDegrees < 0 ? "stays below" : "no edge crossed";

    private string Clock(Instant time) => time.InZone(Zone).ToString("HH:mm", Plain) + " " + Zone.GetZoneInterval(time).Name;
}
