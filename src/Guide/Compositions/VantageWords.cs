using System.Globalization;
using Foreshore.Guide.Access;
using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Compositions;

/// <summary>How the pages say what is known of a stance. What nobody recorded is said to be unrecorded.</summary>
public static class VantageWords
{
    /// <summary>Which ways lead to a stance: "all of the place's", or its own in order with what is timed of each.</summary>
    public static string WaysInWords(this VantagePoint stance) => stance.Ways.Count == 0 ? "all of the place's, in its order"
        : string.Join("; else ", stance.Ways.OrderBy(way => way.Order).Select(InWords));

    private static string InWords(StanceWay way)
    {
        string?[] figures =
        [
            way.WalkInMinutes is { } walkIn ? $"in {AccessWords.Minutes(walkIn)}" : null,
            way.WalkOutMinutes is { } walkOut ? $"out {AccessWords.Minutes(walkOut)}" : null,
            way.EndMinutes is { } end ? $"{AccessWords.Minutes(end)} from its end" : null,
        ];
        return string.Join(", ", figures.OfType<string>()) is { Length: > 0 } known ? $"{way.Route.Name} ({known})" : $"{way.Route.Name} (not timed)";
    }

    public static string Words(this VantageKind kind) => kind switch
    {
        VantageKind.OpenGround => "open ground",
        VantageKind.Ledge => "ledge",
        VantageKind.Ramp => "ramp",
        VantageKind.Beach => "beach",
        VantageKind.CliffTop => "cliff top",
        VantageKind.UnderCliff => "under a cliff",
        VantageKind.HarbourWall => "harbour wall",
        VantageKind.Pier => "pier",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such kind of vantage point."),
    };

    public static string Words(this Reach reach) => reach switch
    {
        Reach.Unknown => "not known: counts as within reach of waves",
        Reach.None => "none",
        Reach.StillWaterOnly => "still water only",
        Reach.Waves => "waves reach it",
        _ => throw new ArgumentOutOfRangeException(nameof(reach), reach, "No such reach."),
    };

    public static string Words(this Footing footing) => footing switch
    {
        Footing.Anyone => "anyone",
        Footing.Steady => "steady",
        Footing.SureFooted => "sure-footed",
        Footing.Scramble => "scramble",
        _ => throw new ArgumentOutOfRangeException(nameof(footing), footing, "No such footing."),
    };

    public static string Words(this EdgeDistance edge) => edge switch
    {
        EdgeDistance.None => "none near the stance",
        EdgeDistance.WithinFiveMetres => "within 5 m",
        EdgeDistance.OnIt => "the stance is on it",
        _ => throw new ArgumentOutOfRangeException(nameof(edge), edge, "No such distance."),
    };

    public static string Words(this HeightMethod method) => method switch
    {
        HeightMethod.StillWaterMark => "by a still-water mark",
        HeightMethod.Levelling => "by levelling",
        HeightMethod.Lidar => "from lidar",
        HeightMethod.Chart => "from the chart",
        _ => throw new ArgumentOutOfRangeException(nameof(method), method, "No such method."),
    };

    /// <summary>For example "4.1 m ± 0.2 m above chart datum at station 8411060, by levelling, 3 Nov 2026".</summary>
    public static string Words(this GroundHeight ground) => string.Create(CultureInfo.InvariantCulture,
        $"{ground.Metres:0.0#} m ± {ground.PlusMinusMetres:0.0#} m above {ground.Datum.Words()} at station {ground.StationId}, {ground.Method.Words()}, {AccessWords.Day(ground.MeasuredOn)}; judged by the lower end, {ground.LowerEndMetres:0.0#} m");

    public static string Words(this SeaLimit sea) => string.Create(CultureInfo.InvariantCulture,
        $"significant wave height to {sea.HighestWaveMetres:0.0#} m, seen to hold with peak periods to {sea.LongestPeriodSeconds:0.#} s");

    public static string SectorWords(this SeaLimit sea) =>
        $"from {Degrees(sea.ExposedFromDegrees)} clockwise to {Degrees(sea.ExposedToDegrees)} true";

    public static string Words(this CliffAbove cliff) => string.Create(CultureInfo.InvariantCulture,
        $"{cliff.HeightMetres:0.#} m high, its foot {cliff.DistanceMetres:0.#} m away");

    /// <summary>Three figures, as on a chart: 007°.</summary>
    public static string Degrees(double degrees) => string.Create(CultureInfo.InvariantCulture, $"{Math.Round(degrees) % 360:000}°");

    /// <summary>Facing and, where it was read from a compass, how.</summary>
    public static string FacingWords(this Composition composition)
    {
        var compass = composition.Compass is { } reading
            ? $" ({reading.Words()})"
            : "";
        var tilt = composition.TiltDegrees == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $", tilted {Math.Abs(composition.TiltDegrees):0.#}° {(composition.TiltDegrees > 0 ? "up" : "down")}");
        return $"{Degrees(composition.FacingDegrees)} true{compass}{tilt}";
    }

    /// <summary>For example "read 214° by compass, declination 15.9° W (WMM2025, 25 Nov 2026)".</summary>
    public static string Words(this CompassReading reading) =>
        $"read {Degrees(reading.ReadingDegrees)} by compass, declination {Declination.Words(reading.DeclinationDegrees)} ({(reading.Model is { } model ? $"{model}, " : "")}{AccessWords.Day(reading.ReadOn)})";

    public static string LensWords(this Composition composition) => string.Create(CultureInfo.InvariantCulture,
        $"{composition.FocalLengthMm:0.#} mm on {composition.SensorWidthMm:0.#} × {composition.SensorHeightMm:0.#} mm, {composition.Orientation.ToString().ToLowerInvariant()}");
}
