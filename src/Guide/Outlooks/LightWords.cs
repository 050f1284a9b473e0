using System.Globalization;
using NodaTime;

namespace Foreshore.Guide.Outlooks;

/// <summary>The light strip in words.</summary>
public sealed record LightWords(LightDrawing Drawing, DateTimeZone Zone)
{
    private static readonly CultureInfo Plain = CultureInfo.InvariantCulture;

    public string Name => string.Create(Plain,
        $"Light on {Local(Drawing.Span.Start).ToString("ddd d MMM", Plain)} from {Clock(Drawing.Span.Start)} to {Clock(Drawing.Span.End)} {Zone.GetZoneInterval(Drawing.Span.Start).Name}");

    public string Summary => string.Join("; ",
        Drawing.Bands.Select(band => $"{Of(band.Ink)} {Clock(At(band.From))}–{Clock(At(band.To))}")
            .Concat(Drawing.Ticks.Select(Of))
            .Concat(Drawing.Windows.Select(window => "window " + Of(window)))) + ".";

    public string Of(LightTick tick) => (tick.Rises ? "sunrise " : "sunset ") + Clock(tick.Time);

    public string Of(LightBracket bracket) => string.Create(Plain,
        $"{Clock(bracket.Window.Start)}–{Clock(bracket.Window.End)} · {Math.Floor(bracket.Window.Duration.TotalMinutes)} min");

    public static string Of(LightInk ink) => ink switch
    {
        LightInk.Night => "night",
        LightInk.Astronomical => "astronomical twilight",
        LightInk.Nautical => "nautical twilight",
        LightInk.Civil => "civil twilight",
        LightInk.LowSun => "low sun",
        LightInk.Day => "day",
        _ => throw new ArgumentOutOfRangeException(nameof(ink), ink, "Not a light."),
    };

    public static string ClassOf(LightInk ink) => ink switch
    {
        LightInk.Night => "ink-night",
        LightInk.Astronomical => "ink-astronomical",
        LightInk.Nautical => "ink-nautical",
        LightInk.Civil => "ink-civil",
        // The rays are drawn one by one, each at its own slant.
        _ => "ink-day",
    };

    private Instant At(double share) => Drawing.Span.Start + Drawing.Span.Duration * share;

    private ZonedDateTime Local(Instant time) => time.InZone(Zone);

    private string Clock(Instant time) => Local(time).ToString("HH:mm", Plain);
}
