using Foreshore.Almanac.Time;

namespace Foreshore.Almanac.Light;

/// <summary>A stretch of time while it is still being reckoned with: days from J2000.</summary>
internal readonly record struct Stretch(double Start, double End)
{
    internal const double Minute = 1.0 / 1440;

    internal double Minutes => (End - Start) / Minute;

    internal LightRun As(WantedLight light) => new(light, JulianDay.FromDays(Start), JulianDay.FromDays(End));

    /// <summary>All of them together, apart and in order.</summary>
    internal static List<Stretch> Union(IEnumerable<IReadOnlyList<Stretch>> several)
    {
        var union = new List<Stretch>();
        foreach (var stretch in several.SelectMany(one => one).OrderBy(stretch => stretch.Start))
        {
            if (union.Count > 0 && stretch.Start <= union[^1].End)
                union[^1] = union[^1] with { End = Math.Max(union[^1].End, stretch.End) };
            else
                union.Add(stretch);
        }

        return union;
    }
}
