namespace Foreshore.Almanac.Earth;

/// <summary>The edge of land and sea round an observer: corners joined by straight lines in azimuth and altitude.</summary>
public sealed class Skyline
{
    private readonly SkylinePoint[] points;

    /// <summary>Sorts and checks recorded corners.</summary>
    /// <param name="points">At least one corner; azimuths [0, 360) without repeats, altitudes −90…90 degrees.</param>
    /// <exception cref="ArgumentException">There is no corner, or two share an azimuth.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A corner lies outside the ranges.</exception>
    public Skyline(IEnumerable<SkylinePoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        this.points = [.. points.OrderBy(point => point.AzimuthDegrees)];
        if (this.points.Length == 0)
            throw new ArgumentException("A skyline has at least one point; without any, use the assumed sea.", nameof(points));

        for (var i = 0; i < this.points.Length; i++)
        {
            var point = this.points[i];
            if (!(point.AzimuthDegrees is >= 0 and < 360))
                throw new ArgumentOutOfRangeException(nameof(points), point.AzimuthDegrees, "A skyline azimuth lies from 0 to below 360 degrees.");
            if (!(point.AltitudeDegrees is >= -90 and <= 90))
                throw new ArgumentOutOfRangeException(nameof(points), point.AltitudeDegrees, "A skyline altitude lies from −90 to 90 degrees.");
            if (!Enum.IsDefined(point.Kind))
                throw new ArgumentOutOfRangeException(nameof(points), point.Kind, "A skyline piece is land, sea or unknown.");
            if (i > 0 && this.points[i - 1].AzimuthDegrees == point.AzimuthDegrees)
                throw new ArgumentException(FormattableString.Invariant($"Two skyline points share the azimuth {point.AzimuthDegrees}."), nameof(points));
        }

        HasUnknown = this.points.Any(point => point.Kind == SkylineKind.Unknown);
    }

    /// <summary>Sea all round, because nothing was recorded. Pages say that it is assumed.</summary>
    public static Skyline AssumedSea { get; } = new([new SkylinePoint(0, 0, SkylineKind.Sea)]);

    /// <summary>True for <see cref="AssumedSea"/> alone.</summary>
    public bool IsAssumed => ReferenceEquals(this, AssumedSea);

    /// <summary>The corners, by azimuth.</summary>
    public IReadOnlyList<SkylinePoint> Points => points;

    /// <summary>Whether any piece is unknown.</summary>
    public bool HasUnknown { get; }

    /// <summary>What lies in a direction. A corner belongs to the piece that begins there.</summary>
    public SkylineKind KindAt(Bearing direction) => points[PieceAt(direction.Degrees)].Kind;

    /// <summary>Altitude of the edge in a direction, degrees: the straight line over land, −dip over sea, 0 where unknown.</summary>
    /// <param name="direction">Where one looks.</param>
    /// <param name="dipDegrees">Dip of the sea horizon, degrees, 0 or more: see <see cref="Dip"/>.</param>
    public double AltitudeDegreesAt(Bearing direction, double dipDegrees)
    {
        var index = PieceAt(direction.Degrees);
        var start = points[index];
        if (start.Kind == SkylineKind.Sea) return -dipDegrees;
        if (start.Kind == SkylineKind.Unknown) return 0;

        var end = points[(index + 1) % points.Length];
        var width = end.AzimuthDegrees - start.AzimuthDegrees;
        if (width <= 0) width += 360;
        var along = direction.Degrees - start.AzimuthDegrees;
        if (along < 0) along += 360;
        return start.AltitudeDegrees + (end.AltitudeDegrees - start.AltitudeDegrees) * along / width;
    }

    /// <summary>The altitude of the edge, degrees, where it is the same all round; null elsewhere.</summary>
    internal double? LevelDegrees(double dipDegrees)
    {
        if (points.All(point => point.Kind == SkylineKind.Sea)) return -dipDegrees;
        return points.All(point => point.Kind == SkylineKind.Unknown) ? 0 : null;
    }

    /// <summary>The lowest and the highest altitude of the edge, degrees.</summary>
    internal (double Lowest, double Highest) RangeDegrees(double dipDegrees)
    {
        var (lowest, highest) = (double.PositiveInfinity, double.NegativeInfinity);
        for (var i = 0; i < points.Length; i++)
        {
            var start = points[i];
            var (from, to) = start.Kind switch
            {
                SkylineKind.Sea => (-dipDegrees, -dipDegrees),
                SkylineKind.Unknown => (0, 0),
                _ => (start.AltitudeDegrees, points[(i + 1) % points.Length].AltitudeDegrees),
            };
            (lowest, highest) = (Math.Min(lowest, Math.Min(from, to)), Math.Max(highest, Math.Max(from, to)));
        }

        return (lowest, highest);
    }

    private int PieceAt(double azimuthDegrees)
    {
        // Skylines from elevation have hundreds of corners: halve.
        var (low, high) = (0, points.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (points[middle].AzimuthDegrees <= azimuthDegrees) low = middle + 1;
            else high = middle;
        }

        return low == 0 ? points.Length - 1 : low - 1;
    }
}
