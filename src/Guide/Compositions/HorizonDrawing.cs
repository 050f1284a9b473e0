using System.Globalization;
using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using Foreshore.Guide.Shell.Ink;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>Where the sun comes up or goes down on the 21st of a month; a null time when it does not.</summary>
public sealed record SunEdge(LocalDate Date, bool Rises, ZonedDateTime? Time, Bearing? Bearing);

/// <summary>A month's tick on the ruler, degrees right of its left end; the letter stands a little aside where two would touch.</summary>
public sealed record MonthTick(SunEdge Edge, double Right, double LetterRight, double Altitude)
{
    public bool IsFirstHalf => Edge.Date.Month <= 6;
    public string Letter => "JFMAMJJASOND"[Edge.Date.Month - 1].ToString();
}

/// <summary>
/// The horizon as somebody sees who looks along the facing: 180 degrees, laid out in degrees across and in degrees of
/// altitude upwards.
/// </summary>
public sealed record HorizonDrawing(
    Observer Observer,
    Frame Frame,
    Bearing Left,
    IReadOnlyList<SkylineRun> Skyline,
    IReadOnlyList<MonthTick> Ticks,
    IReadOnlyList<SunEdge> Edges,
    (Bearing From, Bearing To)? Sector,
    IReadOnlyList<(double From, double To)> Exposed)
{
    public const double Span = 180;

    /// <summary>The least distance of two letters, degrees: a letter's width on a strip as narrow as a phone's.</summary>
    public const double LetterApart = 5.8;

    /// <param name="observer">Who looks.</param>
    /// <param name="frame">Where to, through which lens.</param>
    /// <param name="exposed">The sector open to waves, from its left bearing clockwise to its right one; null when not recorded.</param>
    /// <param name="first">The first of the twelve months whose 21sts are ticked; their order of letters stays January to December.</param>
    /// <param name="zone">The place's zone.</param>
    /// <param name="sun">Covers those months and a day on either side.</param>
    public static HorizonDrawing Of(Observer observer, Frame frame, (Bearing From, Bearing To)? exposed, YearMonth first, DateTimeZone zone, SunEphemeris sun)
    {
        var left = frame.Facing.Plus(-Span / 2);
        var edges = Enumerable.Range(0, 12)
            .Select(month => SunDays.On(first.PlusMonths(month).OnDayOfMonth(21), observer, zone, sun))
            .OrderBy(day => day.Date.Month)
            .SelectMany(day => new[] { Edge(day, true, day.Rise), Edge(day, false, day.Set) })
            .ToList();
        return new(observer, frame, left, SkylineRun.Across(observer, left, Span), TicksOf(observer, left, edges), edges, exposed, Pieces(exposed, left));

        SunEdge Edge(SunDay day, bool rises, Instant? time) => time is { } at
            ? new(day.Date, rises, at.InZone(zone), Bearing.FromDegrees(sun.At(at, observer.Position).AzimuthDegrees))
            : new(day.Date, rises, null, null);
    }

    /// <summary>The lens's reach along the strip, degrees right of its left end; it may be wider than the strip.</summary>
    public (double From, double To) Lens =>
        (Math.Max(0, Span / 2 - Frame.Lens.HorizontalAngleDegrees / 2), Math.Min(Span, Span / 2 + Frame.Lens.HorizontalAngleDegrees / 2));

    /// <summary>The lens as it is written over its bracket.</summary>
    public string LensWords => string.Create(CultureInfo.InvariantCulture,
        $"{Frame.Lens.FocalLengthMm:0.#} mm on {Frame.Lens.FrameWidthMm:0.#} × {Frame.Lens.FrameHeightMm:0.#} · {Frame.Lens.HorizontalAngleDegrees:0}°");

    /// <summary>Units to a degree of altitude in a zone so many units high: six, or fewer where the skyline would leave it.</summary>
    public double UnitsPerDegree(double zone) =>
        Math.Min(6, zone / Math.Max(1, Skyline.SelectMany(run => run.Corners).Max(corner => corner.Altitude)));

    /// <summary>Whether the edge falls within the strip.</summary>
    public bool Holds(SunEdge edge) => edge.Bearing is { } bearing && RightOf(bearing, Left) <= Span;

    private static double RightOf(Bearing bearing, Bearing left) => Bearing.FromDegrees(bearing.Degrees - left.Degrees).Degrees;

    private static List<MonthTick> TicksOf(Observer observer, Bearing left, List<SunEdge> edges)
    {
        var ticks = new List<MonthTick>();
        // January to June stand above the skyline, July to December below, so a J is never in doubt.
        foreach (var half in edges.Where(e => e.Bearing is { } b && RightOf(b, left) <= Span).GroupBy(e => e.Date.Month <= 6))
        {
            var held = half.ToList();
            var places = held.ConvertAll(e => RightOf(e.Bearing!.Value, left));
            var letters = LabelRows.Spread(places, LetterApart, LetterApart / 2, Span - LetterApart / 2);
            ticks.AddRange(held.Select((edge, i) => new MonthTick(edge, places[i], letters[i],
                observer.Skyline.AltitudeDegreesAt(edge.Bearing!.Value, observer.DipDegrees))));
        }
        return ticks;
    }

    private static List<(double, double)> Pieces((Bearing From, Bearing To)? sector, Bearing left)
    {
        var pieces = new List<(double, double)>();
        if (sector is not var (from, to)) return pieces;
        var start = RightOf(from, left);
        var end = start + Bearing.FromDegrees(to.Degrees - from.Degrees).Degrees;
        if (end == start) end = start + 360; // from a bearing round to itself: open all round
        if (start < Span) pieces.Add((start, Math.Min(end, Span)));
        if (end > 360) pieces.Add((0, Math.Min(end - 360, Span)));
        return pieces;
    }
}
