using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>Follows a body over the picture.</summary>
/// <param name="body">Which.</param>
/// <param name="isBest">Whether it is the best date's way.</param>
/// <param name="picture">The picture's plane.</param>
/// <param name="observer">Whose skyline hides it.</param>
/// <param name="radiusDegrees">Half the disc: it is seen as long as its upper edge is.</param>
/// <param name="place">Airless azimuth and altitude of the centre at a time.</param>
internal sealed class FrameTracer(
    FrameBody body, bool isBest, FramePicture picture, Observer observer, double radiusDegrees, Func<Instant, Horizontal> place)
{
    public const double SunsRadius = 0.267, MoonsRadius = 0.259; // degrees, the means

    private static readonly Duration Step = Duration.FromMinutes(4);

    // Four minutes halved to a millisecond.
    private const int Halvings = 18;

    public FrameTrack Trace(LocalDate date, Instant middle, IEnumerable<Interval> spans)
    {
        var runs = new List<IReadOnlyList<(double, double)>>();
        var times = new List<FrameTime>();
        foreach (var span in spans)
            Follow(span, runs, times);
        return new(body, date, isBest, middle, runs, FrameTrack.WithoutCrowd(times));
    }

    private void Follow(Interval span, List<IReadOnlyList<(double, double)>> runs, List<FrameTime> times)
    {
        List<(double, double)>? run = null;
        (Instant Time, (double X, double Y) Point)? last = null;
        foreach (var (time, point) in Seen(span))
        {
            if (point is { } now && last is { } before)
            {
                if (picture.Holds(now) || picture.Holds(before.Point))
                {
                    if (run is null) runs.Add(run = [before.Point]);
                    run.Add(now);
                }
                else run = null;
                times.AddRange(Crossed(before.Time, before.Point, time, now));
            }
            else run = null;
            last = point is { } seen ? (time, seen) : null;
        }
    }

    /// <summary>The span in steps, with the moments at which the skyline lets the body go or takes it.</summary>
    private IEnumerable<(Instant Time, (double X, double Y)? Point)> Seen(Interval span)
    {
        (Instant Time, (double X, double Y)? Point)? last = null;
        foreach (var time in Moments(span))
        {
            var now = (Time: time, Point: Point(time));
            if (last is { } before && before.Point is null != now.Point is null)
            {
                var (hidden, shown) = before.Point is null ? (before.Time, time) : (time, before.Time);
                for (var i = 0; i < Halvings; i++)
                {
                    var middle = hidden + (shown - hidden) / 2;
                    if (Point(middle) is null) hidden = middle;
                    else shown = middle;
                }
                if (shown != before.Time && shown != time) yield return (shown, Point(shown));
            }
            yield return now;
            last = now;
        }
    }

    private static IEnumerable<Instant> Moments(Interval span)
    {
        for (var time = span.Start; time < span.End; time += Step) yield return time;
        yield return span.End;
    }

    private (double X, double Y)? Point(Instant time)
    {
        var (azimuth, altitude) = SeenAt(time);
        var edge = observer.Skyline.AltitudeDegreesAt(Bearing.FromDegrees(azimuth), observer.DipDegrees);
        return altitude + radiusDegrees < edge ? null : picture.At(azimuth, altitude);
    }

    private (double Azimuth, double Altitude) SeenAt(Instant time)
    {
        var at = place(time);
        return (at.AzimuthDegrees, Refraction.Apparent(at.AltitudeDegrees));
    }

    private IEnumerable<FrameTime> Crossed(Instant from, (double X, double Y) a, Instant to, (double X, double Y) b)
    {
        foreach (var line in Enum.GetValues<FrameLine>())
        {
            if (Beyond(line, a) == Beyond(line, b)) continue;
            var (early, late) = (from, to);
            for (var i = 0; i < Halvings; i++)
            {
                var middle = early + (late - early) / 2;
                if (Point(middle) is not { } p || Beyond(line, p) == Beyond(line, a)) early = middle;
                else late = middle;
            }
            if (Point(late) is { } at && Within(line, at))
                yield return new(body, line, late, at.X, at.Y, SeenAt(late).Azimuth, SeenAt(late).Altitude, isBest);
        }
    }

    private bool Beyond(FrameLine line, (double X, double Y) p) => line switch
    {
        FrameLine.LeftEdge => p.X > 0,
        FrameLine.LeftThird => p.X > picture.Width / 3,
        FrameLine.RightThird => p.X > picture.Width * 2 / 3,
        FrameLine.RightEdge => p.X > picture.Width,
        FrameLine.TopEdge => p.Y > 0,
        FrameLine.UpperThird => p.Y > picture.Height / 3,
        FrameLine.LowerThird => p.Y > picture.Height * 2 / 3,
        FrameLine.BottomEdge => p.Y > picture.Height,
        _ => throw new ArgumentOutOfRangeException(nameof(line), line, "Not a line of the picture."),
    };

    private bool Within(FrameLine line, (double X, double Y) p) => line <= FrameLine.RightEdge
        ? p.Y >= 0 && p.Y <= picture.Height
        : p.X >= 0 && p.X <= picture.Width;
}
