using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>A line of the picture that a time is read at.</summary>
public enum FrameLine { LeftEdge, LeftThird, RightThird, RightEdge, TopEdge, UpperThird, LowerThird, BottomEdge }

/// <summary>What has a way over the picture.</summary>
public enum FrameBody { Sun, Moon, Core }

/// <summary>When a body stands on a line of the picture, and where.</summary>
public sealed record FrameTime(FrameBody Body, FrameLine Line, Instant Time, double X, double Y, double AzimuthDegrees, double ApparentDegrees, bool IsBest);

/// <summary>A body's way over the picture on one day or in one night, in pieces where land hides it, with the times at edges and thirds.</summary>
/// <param name="Body">Which.</param>
/// <param name="Date">The sun's local date; of a night its evening's.</param>
/// <param name="IsBest">The best of the coming dates, not today.</param>
/// <param name="Middle">Solar noon of the date, or the middle of the night.</param>
/// <param name="Runs">The pieces, in the units of <see cref="FramePicture"/>.</param>
/// <param name="Times">Where it meets edges and thirds.</param>
public sealed record FrameTrack(
    FrameBody Body, LocalDate Date, bool IsBest, Instant Middle, IReadOnlyList<IReadOnlyList<(double X, double Y)>> Runs, IReadOnlyList<FrameTime> Times)
{
    private const double CrowdedMinutes = 6;

    /// <summary>The moon's lit part in the middle of the night, 0…1; null for anything else.</summary>
    public double? LitFraction { get; init; }

    /// <summary>
    /// Level thirds are read only on a way that meets no upright third, and no third within minutes of an edge: three times
    /// tell a way, six crowd it.
    /// </summary>
    internal static IReadOnlyList<FrameTime> WithoutCrowd(List<FrameTime> times)
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
