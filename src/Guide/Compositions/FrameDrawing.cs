using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using Foreshore.Guide.Shell.Ink;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>A margin's time with its fine leader: from a body's way to the frame's edge and on to where the figures stand.</summary>
public sealed record MarginTime(FrameTime Time, IReadOnlyList<(double X, double Y)> Leader, double X, double Y, MarginSide Side);

public enum MarginSide { Left, Right, Top, Bottom }

/// <summary>What the lens sees, in the units of <see cref="FramePicture"/>.</summary>
public sealed record FrameDrawing(
    FramePicture Picture,
    IReadOnlyList<IReadOnlyList<(double X, double Y)>> Land,
    IReadOnlyList<IReadOnlyList<(double X, double Y)>> Edges,
    IReadOnlyList<IReadOnlyList<(double X, double Y)>> UnknownEdges,
    IReadOnlyList<(double X, double Y)> Sea,
    IReadOnlyList<IReadOnlyList<(double X, double Y)>> Water,
    SubjectSeen? Subject,
    IReadOnlyList<(double X, double Y)> Block,
    IReadOnlyList<FrameTrack> Tracks,
    FrameBand? Band,
    IReadOnlyList<MarginTime> Times)
{
    // A width is not recorded: a tower's proportions, so that the block reads as an upright thing.
    private const double BlockWidthOfHeight = 0.3;

    private const double Figures = 15, WideFigures = 34, WithBody = 78, Gap = 10;

    /// <param name="observer">Who looks.</param>
    /// <param name="frame">Where to, through which lens.</param>
    /// <param name="subject">What the picture is of, when recorded.</param>
    /// <param name="today">The sun's day now.</param>
    /// <param name="best">The sun's day of the best of the coming dates; null when there is none.</param>
    /// <param name="sun">Covers both days.</param>
    /// <param name="nights">Moon and galaxy; null: the sun alone.</param>
    public static FrameDrawing Of(Observer observer, Frame frame, SubjectSeen? subject, SunDay today, SunDay? best, SunEphemeris sun, FrameNights? nights = null)
    {
        var picture = new FramePicture(frame);
        var reach = picture.ReachDegrees;
        var runs = SkylineRun.Across(observer, frame.Facing.Plus(-reach), 2 * reach);
        var dip = observer.DipDegrees;
        var seesSea = runs.Any(r => r.Kind == SkylineKind.Sea && Edge(r).Any(picture.Holds));
        List<FrameTrack> tracks = [SunsWay(today, false)];
        if (best is not null && best.Date != today.Date) tracks.Add(SunsWay(best, true));
        tracks.AddRange(nights?.Tracks ?? []);

        return new(picture,
            [.. runs.Where(r => r.Kind == SkylineKind.Land).Select(r => Base(r))],
            [.. runs.Where(r => r.Kind != SkylineKind.Unknown).Select(Edge)],
            [.. runs.Where(r => r.Kind == SkylineKind.Unknown).Select(Edge)],
            seesSea ? SeaArea() : [],
            seesSea ? [.. SeaLines.Below(dip, picture)] : [],
            subject,
            subject is null ? [] : BlockOf(subject),
            tracks,
            nights?.Band,
            [.. InMargins([.. tracks.SelectMany(t => t.Times)], picture)]);

        FrameTrack SunsWay(SunDay day, bool isBest) =>
            new FrameTracer(FrameBody.Sun, isBest, picture, observer, FrameTracer.SunsRadius, time => sun.At(time, observer.Position))
                .Trace(day.Date, day.Noon, Up(day));

        (double X, double Y)? Turned(double right, double altitude) => picture.At(frame.Facing.Degrees - reach + right, altitude);

        List<(double X, double Y)> Edge(SkylineRun run) => [.. Fine(run.Corners).Select(c => Turned(c.Right, c.Altitude)).OfType<(double, double)>()];

        List<(double X, double Y)> Base(SkylineRun run) =>
            [.. Edge(run), .. Fine(run.Corners).Reverse().Select(c => Turned(c.Right, Math.Min(c.Altitude, -dip))).OfType<(double, double)>()];

        List<(double X, double Y)> SeaArea()
        {
            var horizon = Fine([(0, -dip), (2 * reach, -dip)]).Select(c => Turned(c.Right, c.Altitude)).OfType<(double X, double Y)>().ToList();
            return [.. horizon, (horizon[^1].X, picture.Height + 1), (horizon[0].X, picture.Height + 1)];
        }

        List<(double X, double Y)> BlockOf(SubjectSeen block)
        {
            // Without a ground height the foot's altitude is not known: the block stands on the horizon, and the words say so.
            var foot = block.FootAltitudeDegrees ?? -dip;
            var top = block.TopAltitudeDegrees ?? foot + block.ApparentHeightDegrees;
            var (turn, half) = (block.Bearing.Degrees, (top - foot) * BlockWidthOfHeight / 2);
            (double, double)?[] corners = [picture.At(turn - half, foot), picture.At(turn - half, top), picture.At(turn + half, top), picture.At(turn + half, foot)];
            return corners.Any(c => c is null) ? [] : [.. corners.OfType<(double, double)>()];
        }
    }

    private static IEnumerable<Interval> Up(SunDay day)
    {
        var (rise, set) = (day.Rise ?? day.MidnightBefore, day.Set ?? day.MidnightAfter);
        return rise < set ? [new Interval(rise, set)] : [];
    }

    /// <summary>Corners with points between them, for a line straight in angles is bent in a picture.</summary>
    private static IEnumerable<(double Right, double Altitude)> Fine(IReadOnlyList<(double Right, double Altitude)> corners)
    {
        const double Degrees = 3;
        yield return corners[0];
        for (var i = 1; i < corners.Count; i++)
        {
            var (a, b) = (corners[i - 1], corners[i]);
            var pieces = Math.Max(1, (int)Math.Ceiling((b.Right - a.Right) / Degrees));
            for (var k = 1; k <= pieces; k++)
                yield return (a.Right + (b.Right - a.Right) * k / pieces, a.Altitude + (b.Altitude - a.Altitude) * k / pieces);
        }
    }

    private static IEnumerable<MarginTime> InMargins(IReadOnlyList<FrameTime> times, FramePicture picture)
    {
        foreach (var margin in times.GroupBy(t => Side(t, picture)))
        {
            var upright = margin.Key is MarginSide.Left or MarginSide.Right;
            var held = upright ? margin.ToList() : ThatFit(margin, picture.Width);
            var wide = held.Exists(t => t.Body != FrameBody.Sun) ? WithBody : WideFigures;
            var places = upright
                ? LabelRows.Spread(held.ConvertAll(t => t.Y), Figures, Figures / 2, picture.Height - Figures / 2)
                : LabelRows.Spread(held.ConvertAll(t => t.X), wide, wide / 2, picture.Width - wide / 2);
            for (var i = 0; i < held.Count; i++)
            {
                var (time, at) = (held[i], places[i]);
                var (edge, end) = margin.Key switch
                {
                    MarginSide.Left => ((0.0, time.Y), (-Gap, at)),
                    MarginSide.Right => ((picture.Width, time.Y), (picture.Width + Gap, at)),
                    MarginSide.Top => ((time.X, 0.0), (at, -Gap)),
                    _ => ((time.X, picture.Height), (at, picture.Height + Gap)),
                };
                yield return new(time, [(time.X, time.Y), edge, end], end.Item1, end.Item2, margin.Key);
            }
        }
    }

    /// <summary>Side by side there is room for few times: today's nights go first, the table has them all.</summary>
    private static List<FrameTime> ThatFit(IEnumerable<FrameTime> times, double width)
    {
        var held = times.ToList();
        while (held.Count * (held.Exists(t => t.Body != FrameBody.Sun) ? WithBody : WideFigures) > width && held.FindLastIndex(t => t.Body != FrameBody.Sun) is >= 0 and var last)
            held.RemoveAt(held.FindLastIndex(t => t.Body != FrameBody.Sun && !t.IsBest) is >= 0 and var today ? today : last);
        return held;
    }

    private static MarginSide Side(FrameTime time, FramePicture picture) => time.Line switch
    {
        FrameLine.LeftEdge or FrameLine.LeftThird => MarginSide.Left,
        FrameLine.RightEdge or FrameLine.RightThird => MarginSide.Right,
        FrameLine.TopEdge => MarginSide.Top,
        FrameLine.BottomEdge => MarginSide.Bottom,
        _ => time.X < picture.Width / 2 ? MarginSide.Left : MarginSide.Right,
    };
}
