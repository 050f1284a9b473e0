using System.Globalization;
using Foreshore.Almanac.Earth;
using Foreshore.Guide.Shell;
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
        Body(time.Body), Day(track), When(track, time.Time), Line(time.Line),
        HorizonWords.Degrees(Bearing.FromDegrees(time.AzimuthDegrees)), string.Create(Plain, $"{time.ApparentDegrees:0.0}°"),
    }));

    public string TableName => Drawing.Tracks.Any(track => track.Body != FrameBody.Sun) ? "Sun, moon and galaxy in the frame, as a table" : "The sun in the frame, as a table";

    private Foreshore.Almanac.Camera.Frame Frame => Drawing.Picture.Frame;

    public string Clock(Instant time) => time.InZone(Zone).ToString("HH:mm", Plain);

    /// <summary>As it stands in the margin: the sun's times are bare, the others' say whose they are.</summary>
    public string InMargin(FrameTime time) => time.Body switch { FrameBody.Moon => $"moon {Clock(time.Time)}", FrameBody.Core => $"core {Clock(time.Time)}", _ => Clock(time.Time) };

    public string KeyOf(FrameTrack track) => track.Body switch
    {
        FrameBody.Moon => string.Create(Plain, $"moon, {Day(track)} ({Abbreviation(track.Middle)}), {Math.Round(track.LitFraction!.Value * 100):0} % lit"),
        FrameBody.Core => $"galaxy’s core in the dark, {Day(track)} ({Abbreviation(track.Middle)})",
        _ => track.Runs.Count > 0 ? $"sun {(track.IsBest ? "on " : "")}{Day(track)} ({Abbreviation(track.Middle)})" : $"{Day(track)}: the sun does not enter the frame",
    };

    public string KeyOf(FrameBand band) =>
        $"edges of the galaxy’s band, {band.Time.InZone(Zone).ToString("ddd d MMM HH:mm", Plain)} {Abbreviation(band.Time)}";

    private string Sentence(FrameTrack track) => track.Times.Count > 0
        ? $"{char.ToUpperInvariant(Body(track.Body)[0])}{Body(track.Body)[1..]} on {Day(track)}: {string.Join(", ", track.Times.OrderBy(t => t.Time).Select(t => $"{Line(t.Line)} {Clock(t.Time)}"))}."
        : $"On {Day(track)} the {Body(track.Body)} meets neither edge nor third.";

    private static string Body(FrameBody body) => body switch { FrameBody.Moon => "moon", FrameBody.Core => "galaxy’s core", _ => "sun" };

    private string When(FrameTrack track, Instant time)
    {
        var local = time.InZone(Zone);
        return (local.Date == track.Date ? Clock(time) : local.ToString("ddd d MMM HH:mm", Plain)) + " " + Abbreviation(time);
    }

    private string Abbreviation(Instant time) => Zone.Abbreviation(time);

    private static string Day(FrameTrack track) =>
        (track.Body, track.IsBest) switch
        {
            (FrameBody.Sun, true) => "the best date, ",
            (FrameBody.Sun, false) => "today, ",
            (_, true) => "the best date’s night, from ",
            _ => "tonight, from ",
        } + track.Date.ToString("ddd d MMM", Plain);

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
