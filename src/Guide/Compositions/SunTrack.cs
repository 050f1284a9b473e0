using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>A line of the picture that a time is read at.</summary>
public enum FrameLine { LeftEdge, LeftThird, RightThird, RightEdge, TopEdge, UpperThird, LowerThird, BottomEdge }

/// <summary>When the sun stands on a line of the picture, and where.</summary>
public sealed record FrameTime(FrameLine Line, Instant Time, double X, double Y, double AzimuthDegrees, double ApparentDegrees, bool IsBest);

/// <summary>The sun's way over the picture on one day, in pieces where land hides it, with the times at edges and thirds.</summary>
public sealed record SunTrack(SunDay Day, bool IsBest, IReadOnlyList<IReadOnlyList<(double X, double Y)>> Runs, IReadOnlyList<FrameTime> Times)
{
    private static readonly Duration Step = Duration.FromMinutes(4);

    public static SunTrack Of(SunDay day, bool isBest, FramePicture picture, Observer observer, SunEphemeris sun)
    {
        var runs = new List<IReadOnlyList<(double, double)>>();
        var times = new List<FrameTime>();
        List<(double, double)>? run = null;
        (Instant Time, (double X, double Y) Point)? last = null;
        foreach (var time in Moments(day))
        {
            var point = Point(time);
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
        return new(day, isBest, runs, WithoutCrowd(times));

        (double X, double Y)? Point(Instant time)
        {
            var (azimuth, altitude) = Seen(time);
            var edge = observer.Skyline.AltitudeDegreesAt(Bearing.FromDegrees(azimuth), observer.DipDegrees);
            return altitude + SunsRadius < edge ? null : picture.At(azimuth, altitude);
        }

        (double Azimuth, double Altitude) Seen(Instant time)
        {
            var place = sun.At(time, observer.Position);
            return (place.AzimuthDegrees, Refraction.Apparent(place.AltitudeDegrees));
        }

        IEnumerable<FrameTime> Crossed(Instant from, (double X, double Y) a, Instant to, (double X, double Y) b)
        {
            foreach (var line in Enum.GetValues<FrameLine>())
            {
                if (Beyond(line, a) == Beyond(line, b)) continue;
                var (early, late) = (from, to);
                for (var i = 0; i < 18; i++) // four minutes halved to a millisecond
                {
                    var middle = early + (late - early) / 2;
                    if (Point(middle) is not { } p || Beyond(line, p) == Beyond(line, a)) early = middle;
                    else late = middle;
                }
                if (Point(late) is { } at && Within(line, at))
                    yield return new(line, late, at.X, at.Y, Seen(late).Azimuth, Seen(late).Altitude, isBest);
            }
        }

        bool Beyond(FrameLine line, (double X, double Y) p) => line switch
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

        bool Within(FrameLine line, (double X, double Y) p) => line <= FrameLine.RightEdge
            ? p.Y >= 0 && p.Y <= picture.Height
            : p.X >= 0 && p.X <= picture.Width;
    }

    private const double SunsRadius = 0.267; // degrees, the mean
    private const double CrowdedMinutes = 6;

    private static IEnumerable<Instant> Moments(SunDay day)
    {
        var end = day.Set ?? day.MidnightAfter;
        for (var time = day.Rise ?? day.MidnightBefore; time < end; time += Step) yield return time;
        yield return end;
    }

    /// <summary>
    /// Level thirds are read only on a way that meets no upright third, and no third within minutes of an edge: three times
    /// tell a way, six crowd it.
    /// </summary>
    private static List<FrameTime> WithoutCrowd(List<FrameTime> times)
    {
        var edges = times.FindAll(t => !IsThird(t.Line));
        var thirds = times.FindAll(t => IsThird(t.Line) && edges.All(e => Apart(e, t) > CrowdedMinutes));
        var upright = thirds.FindAll(t => t.Line is FrameLine.LeftThird or FrameLine.RightThird);
        return [.. edges, .. upright.Count > 0 ? upright : thirds];

        static double Apart(FrameTime a, FrameTime b) => Math.Abs((a.Time - b.Time).TotalMinutes);
    }

    private static bool IsThird(FrameLine line) =>
        line is FrameLine.LeftThird or FrameLine.RightThird or FrameLine.UpperThird or FrameLine.LowerThird;
}
