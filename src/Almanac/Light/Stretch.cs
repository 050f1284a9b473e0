using Foreshore.Almanac.Time;

namespace Foreshore.Almanac.Light;

/// <summary>A stretch of time while it is still being reckoned with: days from J2000.</summary>
internal readonly record struct Stretch(double Start, double End)
{
    internal const double Minute = 1.0 / 1440;

    internal double Minutes => (End - Start) / Minute;

    internal LightRun As(WantedLight light) => new(light, JulianDay.FromDays(Start), JulianDay.FromDays(End));

    /// <summary>What lies in both. Each comes by start and apart.</summary>
    internal static List<Stretch> Intersection(IReadOnlyList<Stretch> one, IReadOnlyList<Stretch> other)
    {
        var both = new List<Stretch>();
        for (int i = 0, j = 0; i < one.Count && j < other.Count;)
        {
            var (start, end) = (Math.Max(one[i].Start, other[j].Start), Math.Min(one[i].End, other[j].End));
            if (end > start) both.Add(new Stretch(start, end));
            if (one[i].End < other[j].End) i++;
            else j++;
        }

        return both;
    }

    /// <summary>What of the first lies outside the other. Each comes by start and apart.</summary>
    internal static List<Stretch> Without(IReadOnlyList<Stretch> one, IReadOnlyList<Stretch> other)
    {
        var left = new List<Stretch>();
        var j = 0;
        foreach (var stretch in one)
        {
            var start = stretch.Start;
            while (j < other.Count && other[j].End <= start) j++;
            for (var k = j; k < other.Count && other[k].Start < stretch.End; k++)
            {
                if (other[k].Start > start) left.Add(new Stretch(start, other[k].Start));
                start = Math.Max(start, other[k].End);
            }

            if (start < stretch.End) left.Add(new Stretch(start, stretch.End));
        }

        return left;
    }

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
