using System.Globalization;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Shell;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>Passages behind a subject in words.</summary>
internal static class BehindWords
{
    public static string HeadWords(this SubjectAlignments view, string subject, DateTimeZone zone, int most) =>
        $"{(view.Found.Count > most ? $"The next {most} of {view.Found.Count}" : "All")} passages behind {subject}, clock of {zone.Id}";

    public static string WhenWords(this Alignment one, DateTimeZone zone)
    {
        var local = one.Time.InZone(zone);
        return $"{local.Date.ToString("ddd d MMM uuuu", CultureInfo.InvariantCulture)}, {one.Time.Clock(zone)} {zone.Abbreviation(one.Time)}";
    }

    public static string BodyWords(this Alignment one) => $"{(one.Body == SkyBody.Sun ? "sun" : "moon")}, {(one.IsRising ? "climbing" : "sinking")}";

    /// <summary>"moonrise 16:31, sunset 16:20 EST".</summary>
    public static string TimesWords(this FullMoonAtTwilight one, DateTimeZone zone) => one.IsRising
        ? $"moonrise {one.Moon.Clock(zone)}, sunset {one.Sun.Clock(zone)} {zone.Abbreviation(one.Moon)}"
        : $"moonset {one.Moon.Clock(zone)}, sunrise {one.Sun.Clock(zone)} {zone.Abbreviation(one.Moon)}";

    public static string DayWords(this FullMoonAtTwilight one, DateTimeZone zone) =>
        $"{one.Moon.InZone(zone).Date.ToString("ddd d MMM uuuu", CultureInfo.InvariantCulture)} {(one.IsRising ? "dusk" : "dawn")}";

    /// <summary>"062°, 45° left of the lighthouse".</summary>
    public static string WhereWords(this FullMoonAtTwilight one, SubjectSeen? seen, string? subject)
    {
        var at = Almanac.Earth.Bearing.FromDegrees(one.AzimuthDegrees);
        var words = HorizonWords.Degrees(at);
        if (seen is null || subject is null) return words;
        var off = Math.Round(Math.IEEERemainder(one.AzimuthDegrees - seen.Bearing.Degrees, 360));
        return string.Create(CultureInfo.InvariantCulture, $"{words}, {(off == 0 ? $"in line with {subject}" : $"{Math.Abs(off):0}° {(off < 0 ? "left" : "right")} of {subject}")}");
    }

    public static string LitWords(this FullMoonAtTwilight one) => Percent(one.IlluminatedFraction);

    public static string OffWords(this Alignment one) => string.Create(CultureInfo.InvariantCulture, $"{one.OffDegrees:0.00}°");

    public static string HeightWords(this Alignment one) => string.Create(CultureInfo.InvariantCulture, $"{one.SeenDegrees:0.0}°").Replace('-', '−');

    public static string LitWords(this Alignment one) => one.IlluminatedFraction is { } lit ? Percent(lit) : "–";

    private static string Percent(double lit) => string.Create(CultureInfo.InvariantCulture, $"{Math.Round(lit * 100):0}\u00a0%");
}

/// <summary>How near and how long: read from the page's address; what can't be used is said and the usual taken.</summary>
/// <param name="Tolerance">As typed.</param>
/// <param name="Degrees">As read.</param>
/// <param name="Years">Ahead.</param>
/// <param name="Body">both, sun or moon.</param>
/// <param name="DaytimeMoon">Whether a moon by day counts.</param>
/// <param name="Fault">What can't be used, and what to do.</param>
internal sealed record BehindQuestion(string Tolerance, double Degrees, int Years, string Body, bool DaytimeMoon, string? Fault)
{
    public static BehindQuestion Usual { get; } = new("0.5", SubjectAlignments.UsualToleranceDegrees, 1, "both", true, null);

    public static IReadOnlyList<(string Value, string Words)> BodyChoices { get; } = [("both", "sun and moon"), ("sun", "sun"), ("moon", "moon")];

    public WantedBodies Bodies => new(Body != "moon", Body != "sun", DaytimeMoon);

    public static BehindQuestion From(IQueryCollection query)
    {
        var (within, years) = (query["within"].ToString().Trim().Replace(',', '.'), query["years"].ToString());
        var asks = Usual with
        {
            Years = TypedValue.Whole(years, 1, SubjectAlignments.MostYears) ?? Usual.Years,
            Body = BodyChoices.Any(choice => choice.Value == query["body"]) ? query["body"].ToString() : Usual.Body,
            DaytimeMoon = query["daytime"] != "no",
        };
        if (within.Length == 0)
            return asks;
        return TypedValue.Number(within, 0.05, 5) is { } degrees
            ? asks with { Tolerance = within, Degrees = degrees }
            : asks with { Tolerance = within.Length > 20 ? "" : within, Fault = "“Within” is a number of degrees from 0.05 to 5, for example 0.5: type one and look again." };
    }
}
