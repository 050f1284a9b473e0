using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;

using NodaTime;

namespace Foreshore.Guide.Compositions;

public enum PathDay { JuneSolstice, Equinox, DecemberSolstice, Today }

/// <summary>The sun's way over the sky on one day: degrees right of the chart's left end, altitude as seen.</summary>
public sealed record SunPath(PathDay Kind, SunDay Day, IReadOnlyList<IReadOnlyList<(double Right, double Altitude)>> Runs);

/// <summary>
/// The altitude–azimuth chart of architecture: the sun's ways between the solstices over the whole skyline, with the frame
/// drawn in. Laid out in degrees.
/// </summary>
public sealed record SunPathDrawing(
    Bearing Left,
    double Span,
    double Top,
    double Bottom,
    IReadOnlyList<SkylineRun> Skyline,
    IReadOnlyList<SunPath> Paths,
    IReadOnlyList<IReadOnlyList<(double Right, double Altitude)>> Frame,
    IReadOnlyList<(int Hour, double Right)> Clock)
{
    private static readonly Duration Step = Duration.FromMinutes(8);

    /// <summary>Closer than this two hours of the clock scale would touch on a phone, degrees of a full circle.</summary>
    private const double HourApart = 0.06;

    private static readonly int[] HourSteps = [1, 2, 3, 4, 6, 12, 24];

    /// <param name="observer">Who looks.</param>
    /// <param name="frame">Where to, through which lens.</param>
    /// <param name="today">The date of the bold line.</param>
    /// <param name="zone">The place's zone.</param>
    /// <param name="sun">Covers a year from today, a day more on either side.</param>
    public static SunPathDrawing Of(Observer observer, Frame frame, LocalDate today, DateTimeZone zone, SunEphemeris sun)
    {
        var days = new (PathDay Kind, SunDay Day)[]
        {
            (PathDay.JuneSolstice, Coming(6, 21)), (PathDay.Equinox, Coming(3, 20)),
            (PathDay.DecemberSolstice, Coming(12, 21)), (PathDay.Today, On(today)),
        };
        var border = new FramePicture(frame).Border().ToList();
        var (left, span) = Axis(observer, frame, days.Select(d => d.Day), border, sun);
        var top = Math.Min(90, 10 * Math.Ceiling(Math.Max(20, days.Max(d => d.Day.NoonAltitudeDegrees) + 4) / 10));
        return new(left, span, top, -Math.Max(4, top / 12), SkylineRun.Across(observer, left, span),
            [.. days.Select(d => new SunPath(d.Kind, d.Day, Runs(d.Day)))],
            Pieces(border.Select(b => (Right(frame.Facing.Degrees + b.Turn), b.Altitude)), span),
            Hours());

        // Within a day of the true moment the way is the same to 0.01 degrees.
        SunDay Coming(int month, int day) => On(new(new LocalDate(today.Year, month, day) < today ? today.Year + 1 : today.Year, month, day));

        SunDay On(LocalDate date) => SunDays.On(date, observer, zone, sun);

        double Right(double azimuth) => Bearing.FromDegrees(azimuth - left.Degrees).Degrees;

        (double Right, double Altitude) At(Instant time)
        {
            var place = sun.At(time, observer.Position);
            return (Right(place.AzimuthDegrees), Refraction.Apparent(place.AltitudeDegrees));
        }

        IReadOnlyList<IReadOnlyList<(double, double)>> Runs(SunDay day)
        {
            var points = new List<(double Right, double Altitude)>();
            var runs = new List<IReadOnlyList<(double, double)>>();
            for (var time = day.MidnightBefore; time <= day.MidnightAfter; time += Step)
            {
                var point = At(time);
                if (point.Altitude < -1.5)
                {
                    Finish();
                    continue;
                }
                points.Add(point);
            }
            Finish();
            return runs;

            void Finish()
            {
                if (points.Count > 1) runs.AddRange(Pieces(points, span));
                points = [];
            }
        }

        List<(int Hour, double Right)> Hours()
        {
            var day = days[^1].Day;
            var hours = new List<(int Hour, double Right)>();
            // Every zone in use is whole quarters of an hour from UTC, so whole hours of its clock are among the quarters.
            var quarter = Instant.FromUnixTimeSeconds(day.MidnightBefore.ToUnixTimeSeconds() / 900 * 900 + 900);
            for (var time = quarter; time <= day.MidnightAfter; time += Duration.FromMinutes(15))
            {
                var local = time.InZone(zone);
                if (local.Minute != 0) continue;
                var at = At(time);
                if (at.Altitude >= 0 && at.Right <= span) hours.Add((local.Hour, at.Right));
            }
            // Every hour where there is room, else every second, third …: an even scale is read more quickly than a full one.
            return HourSteps.Select(step => hours.FindAll(h => h.Hour % step == 0)).First(k => HaveRoom(k) || k.Count < 2);
        }

        bool HaveRoom(List<(int Hour, double Right)> hours)
        {
            var places = hours.ConvertAll(h => h.Right);
            places.Sort();
            return places.Zip(places.Skip(1)).All(pair => pair.Second - pair.First >= HourApart * span);
        }
    }

    /// <summary>
    /// The chart's middle is the side of the sky where the year's noons stand: south for most of the north, north for most of
    /// the south. It is as wide as the sun's ways and the frame need, in steps of 30 degrees.
    /// </summary>
    private static (Bearing Left, double Span) Axis(Observer observer, Frame frame, IEnumerable<SunDay> days, List<(double Turn, double)> border, SunEphemeris sun)
    {
        var middle = Bearing.FromDegrees(observer.Position.LatitudeDegrees >= 0 ? 180 : 0);
        var half = border.Max(b => Math.Abs(middle.SignedTo(frame.Facing.Plus(b.Turn))));
        foreach (var day in days)
            for (var time = day.MidnightBefore; time <= day.MidnightAfter; time += Step)
            {
                var place = sun.At(time, observer.Position);
                if (place.AltitudeDegrees > -1) half = Math.Max(half, middle.AngleTo(Bearing.FromDegrees(place.AzimuthDegrees)));
            }
        half = Math.Min(180, 15 * Math.Ceiling((half + 3) / 15));
        return (middle.Plus(-half), 2 * half);
    }

    /// <summary>Cuts a line where it leaves the chart at one end and comes in at the other.</summary>
    private static List<IReadOnlyList<(double, double)>> Pieces(IEnumerable<(double Right, double Altitude)> points, double span)
    {
        var pieces = new List<IReadOnlyList<(double, double)>>();
        List<(double Right, double Altitude)>? piece = null;
        foreach (var point in points)
        {
            // A chart of less than the full circle has an outside: whatever lies there is left or right of it.
            var right = span < 360 && point.Right > span + (360 - span) / 2 ? point.Right - 360 : point.Right;
            if (piece is null || Math.Abs(right - piece[^1].Right) > 180) pieces.Add(piece = []);
            piece.Add((right, point.Altitude));
        }
        return pieces;
    }
}
