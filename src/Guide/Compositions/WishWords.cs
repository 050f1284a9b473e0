using System.Globalization;
using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Compositions;

/// <summary>What a composition asks of tide, ground, sea and water, in words. The wished sea is stored, not judged, and the page says so.</summary>
public static class WishWords
{
    public static string Words(this TideWish wish)
    {
        var parts = new List<string> { wish.IsBand ? Band(wish) : $"from {FromTurn(wish.FromMinutes ?? 0)} to {FromTurn(wish.ToMinutes ?? 0)} {TurnName(wish.Turn)}" };
        if (wish.Flow != TideFlow.Any)
            parts.Add(wish.Flow == TideFlow.Rising ? "rising" : "falling");
        if (wish.Range != TideRange.Any)
            parts.Add(wish.Range switch
            {
                TideRange.Springs => "springs",
                TideRange.Neaps => "neaps",
                _ => string.Create(CultureInfo.InvariantCulture, $"range at least {wish.RangeAtLeastMetres:0.0#} m"),
            });
        return string.Join(", ", parts);
    }

    public static string Words(this GroundWish wish) => wish.State switch
    {
        GroundState.FreshlyWashed => "freshly washed: covered within the last 3 h",
        GroundState.Dry => "dry: not covered for 6 h",
        _ => "any",
    } + (wish.Foreground is { } height ? $"; the foreground lies {height.Words()}" : wish.CanBeJudged ? "" : "; the foreground's height is not recorded, so this can't be judged");

    public static string InFull(this SeaWish wish)
    {
        var parts = new List<string> { wish.Words };
        Add(parts, Range(wish.LowestWaveMetres, wish.HighestWaveMetres, "significant wave height", "m"));
        Add(parts, Range(wish.ShortestPeriodSeconds, wish.LongestPeriodSeconds, "peak period", "s"));
        if (wish is { FromDegrees: { } from, ToDegrees: { } to })
            parts.Add($"waves from {VantageWords.Degrees(from)} clockwise to {VantageWords.Degrees(to)}");
        Add(parts, Range(null, wish.HighestWindMetresPerSecond, "wind", "m/s"));
        return string.Join("; ", parts);
    }

    /// <summary>Shutter times are common practice; no source gives them.</summary>
    public static string Words(this WaterLook look) => look switch
    {
        WaterLook.Any => "any",
        WaterLook.Frozen => "frozen: 1/1000 s or shorter, 1/500 s beyond 30 m with a wide lens",
        WaterLook.SoftMovement => "soft movement: 1/60–1/8 s",
        WaterLook.Streaks => "streaks of the backwash: ¼–1 s, fired as the wave withdraws",
        WaterLook.FlowingFormKept => "flowing, form kept: 2–8 s",
        WaterLook.Smooth => "smooth: 15 s–4 min",
        _ => throw new ArgumentOutOfRangeException(nameof(look), look, "No such look of the water."),
    };

    private static string Band(TideWish wish) => wish switch
    {
        { Lowest: { } low, Highest: { } high } => string.Create(CultureInfo.InvariantCulture, $"{low.Metres:0.0#} m to {high.Words()}"),
        { Lowest: { } low } => $"at least {low.Words()}",
        { Highest: { } high } => $"at most {high.Words()}",
        _ => "any height",
    };

    private static string TurnName(TideTurn? turn) => turn == TideTurn.HighWater ? "high water" : "low water";

    private static string FromTurn(int minutes) => minutes switch
    {
        0 => "the moment of",
        < 0 => $"{Access.AccessWords.Minutes(-minutes)} before",
        _ => $"{Access.AccessWords.Minutes(minutes)} after",
    };

    private static string? Range(double? least, double? most, string what, string unit) => (least, most) switch
    {
        (null, null) => null,
        (null, { } high) => string.Create(CultureInfo.InvariantCulture, $"{what} at most {high:0.0#} {unit}"),
        ({ } low, null) => string.Create(CultureInfo.InvariantCulture, $"{what} at least {low:0.0#} {unit}"),
        ({ } low, { } high) => string.Create(CultureInfo.InvariantCulture, $"{what} {low:0.0#}–{high:0.0#} {unit}"),
    };

    private static void Add(List<string> parts, string? part)
    {
        if (part is not null)
            parts.Add(part);
    }
}
