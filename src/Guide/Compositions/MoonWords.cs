using System.Globalization;
using Foreshore.Almanac.Light;
using Foreshore.Almanac.Moon;
using Foreshore.Guide.Shell;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>The moon in words.</summary>
public static class MoonWords
{
    // Half of what the moon gains on the sun in a day: a principal phase then names the day it falls on.
    private const double HalfDayDegrees = 6.1;

    /// <summary>"full moon", "waning gibbous"…</summary>
    public static string Name(this MoonPhase phase)
    {
        var quarter = (int)Math.Round(phase.ElongationDegrees / 90) % 4;
        if (Math.Abs(Math.IEEERemainder(phase.ElongationDegrees - 90 * quarter, 360)) <= HalfDayDegrees)
            return quarter switch { 0 => "new moon", 1 => "first quarter", 2 => "full moon", _ => "last quarter" };
        return $"{(phase.IsWaxing ? "waxing" : "waning")} {(phase.IlluminatedFraction < 0.5 ? "crescent" : "gibbous")}";
    }

    /// <summary>"96 %"; less than one is said, never rounded to nothing.</summary>
    public static string Lit(this MoonPhase phase) => phase.IlluminatedFraction < 0.005 ? "under 1 %"
        : string.Create(CultureInfo.InvariantCulture, $"{Math.Round(phase.IlluminatedFraction * 100):0} %");

    /// <summary>"waning gibbous, 96 % lit".</summary>
    public static string Words(this MoonPhase phase) => $"{phase.Name()}, {phase.Lit()} lit";

    /// <summary>"sets 08:44, rises 16:58" in the order of the clock; "up throughout" or "down throughout" without either.</summary>
    public static string Words(this MoonSpan span, DateTimeZone zone)
    {
        var events = new[] { (At: span.Rise, Verb: "rises"), (At: span.Set, Verb: "sets") }.Where(one => one.At is not null).OrderBy(one => one.At).ToList();
        return events.Count == 0 ? span.IsUpAtStart ? "up throughout" : "down throughout"
            : string.Join(", ", events.Select(one => $"{one.Verb}\u00a0{one.At!.Value.Clock(zone)}"));
    }

    /// <summary>"moon waning gibbous, 96 % lit, sets 06:10".</summary>
    public static string Words(this GoodDateMoon moon, DateTimeZone zone) => $"moon {(moon.IsUp ? $"{moon.Phase.Words()}, {moon.Span.Words(zone)}" : "down throughout")}";
}
