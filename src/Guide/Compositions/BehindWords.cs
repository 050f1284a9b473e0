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

    public static string OffWords(this Alignment one) => string.Create(CultureInfo.InvariantCulture, $"{one.OffDegrees:0.00}°");

    public static string HeightWords(this Alignment one) => string.Create(CultureInfo.InvariantCulture, $"{one.SeenDegrees:0.0}°").Replace('-', '−');

    public static string LitWords(this Alignment one) => one.IlluminatedFraction is { } lit ? string.Create(CultureInfo.InvariantCulture, $"{lit:P0}").Replace(" ", " ", StringComparison.Ordinal) : "–";
}

/// <summary>How near and how long: read from the page's address; what can't be used is said and the usual taken.</summary>
internal sealed record BehindQuestion(string Tolerance, double Degrees, int Years, string? Fault)
{
    public static BehindQuestion Usual { get; } = new("0.5", SubjectAlignments.UsualToleranceDegrees, 1, null);

    public static BehindQuestion From(IQueryCollection query)
    {
        var (within, years) = (query["within"].ToString().Trim().Replace(',', '.'), query["years"].ToString());
        var ahead = int.TryParse(years, CultureInfo.InvariantCulture, out var asked) && asked is >= 1 and <= SubjectAlignments.MostYears ? asked : Usual.Years;
        if (within.Length == 0)
            return Usual with { Years = ahead };
        return double.TryParse(within, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var degrees) && degrees is >= 0.05 and <= 5
            ? new(within, degrees, ahead, null)
            : new(within.Length > 20 ? "" : within, Usual.Degrees, ahead, "“Within” is a number of degrees from 0.05 to 5, for example 0.5: type one and look again.");
    }
}
