using System.Globalization;
using Foreshore.Almanac.Earth;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>The frame view in words: its name, description, keys and table.</summary>
public sealed record FrameWords(FrameDrawing Drawing, DateTimeZone Zone, string? SubjectName)
{
    private static readonly CultureInfo Plain = CultureInfo.InvariantCulture;

    public string Name => string.Create(Plain,
        $"What the lens sees: facing {HorizonWords.Degrees(Frame.Facing)}{(Frame.TiltDegrees == 0 ? "" : $", tilted {Frame.TiltDegrees:+0.#;−0.#}°")}, {Frame.Lens.HorizontalAngleDegrees:0}° by {Frame.Lens.VerticalAngleDegrees:0}°");

    public string Summary => string.Join(' ', new[]
    {
        Drawing.UnknownEdges.Count > 0 ? "Broken line: skyline not recorded, taken as level." : "",
        Drawing.Sea.Count > 0 ? "Sea below the horizon." : "",
        Subject,
        string.Join(' ', Drawing.Tracks.Select(Sentence)),
    }.Where(words => words.Length > 0));

    public string Subject => Drawing.Subject is { } seen
        ? string.Create(Plain, $"Block: {SubjectName ?? "the subject"}, {Distance(seen.DistanceMetres)} away on {HorizonWords.Degrees(seen.Bearing)}, {seen.ApparentHeightDegrees:0.0}° high, its width not recorded")
          + (seen.FootAltitudeDegrees is null ? "; set on the horizon, as the height of this stance is not known." : ".")
        : "";

    public IEnumerable<string[]> Rows => Drawing.Tracks.SelectMany(track => track.Times.OrderBy(time => time.Time).Select(time => new[]
    {
        Day(track), Clock(time.Time) + " " + Zone.GetZoneInterval(time.Time).Name, Line(time.Line),
        HorizonWords.Degrees(Bearing.FromDegrees(time.AzimuthDegrees)), string.Create(Plain, $"{time.ApparentDegrees:0.0}°"),
    }));

    private Foreshore.Almanac.Camera.Frame Frame => Drawing.Picture.Frame;

    public string Clock(Instant time) => time.InZone(Zone).ToString("HH:mm", Plain);

    public string KeyOf(SunTrack track) => track.Runs.Count > 0 ? $"sun {(track.IsBest ? "on " : "")}{Day(track)} ({Zone.GetZoneInterval(track.Day.Noon).Name})" : $"{Day(track)}: the sun does not enter the frame";

    private string Sentence(SunTrack track) => track.Times.Count > 0
        ? $"Sun on {Day(track)}: {string.Join(", ", track.Times.OrderBy(t => t.Time).Select(t => $"{Line(t.Line)} {Clock(t.Time)}"))}."
        : $"On {Day(track)} the sun meets neither edge nor third.";

    private static string Day(SunTrack track) =>
        (track.IsBest ? "the best date, " : "today, ") + track.Day.Date.ToString("ddd d MMM", Plain);

    private static string Distance(double metres) => metres < 1000
        ? string.Create(Plain, $"{metres:0} m")
        : string.Create(Plain, $"{metres / 1000:0.0} km");

    private static string Line(FrameLine line) => line switch
    {
        FrameLine.LeftEdge => "left edge",
        FrameLine.LeftThird => "left third",
        FrameLine.RightThird => "right third",
        FrameLine.RightEdge => "right edge",
        FrameLine.TopEdge => "top edge",
        FrameLine.UpperThird => "upper third",
        FrameLine.LowerThird => "lower third",
        FrameLine.BottomEdge => "bottom edge",
        _ => throw new ArgumentOutOfRangeException(nameof(line), line, "Not a line of the picture."),
    };
}
