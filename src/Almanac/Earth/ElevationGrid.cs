namespace Foreshore.Almanac.Earth;

/// <summary>
/// Ground heights above mean sea level at the corners of a grid of meridians and parallels: rows from north to south, in
/// each row from west to east. Heights between are bilinear.
/// </summary>
public sealed class ElevationGrid
{
    /// <summary>What stands for a height that nobody measured.</summary>
    public const short Void = short.MinValue;

    private readonly short[] samples;

    /// <summary>Checks and keeps a grid; the samples are not copied.</summary>
    /// <param name="northDegrees">Latitude of the first row.</param>
    /// <param name="westDegrees">Longitude of the first column, −180…180.</param>
    /// <param name="latitudeStepDegrees">Degrees from a row to the next one southward, above 0.</param>
    /// <param name="longitudeStepDegrees">Degrees from a column to the next one eastward, above 0.</param>
    /// <param name="columns">At least 2.</param>
    /// <param name="rows">At least 2.</param>
    /// <param name="samples">Heights in steps of <paramref name="metresPerUnit"/>; <see cref="Void"/> where unmeasured.</param>
    /// <param name="metresPerUnit">Height of one step, metres, above 0.</param>
    /// <exception cref="ArgumentException">Sizes or georeference contradict each other.</exception>
    public ElevationGrid(
        double northDegrees, double westDegrees, double latitudeStepDegrees, double longitudeStepDegrees,
        int columns, int rows, short[] samples, double metresPerUnit = 1)
    {
        ArgumentNullException.ThrowIfNull(samples);
        if (columns < 2 || rows < 2)
            throw new ArgumentException(FormattableString.Invariant($"A grid has at least 2 by 2 heights; this one has {columns} by {rows}."), nameof(columns));
        if ((long)columns * rows != samples.Length)
            throw new ArgumentException(FormattableString.Invariant($"{columns} by {rows} heights are {(long)columns * rows}; {samples.Length} are given."), nameof(samples));
        if (!(latitudeStepDegrees > 0 && longitudeStepDegrees > 0 && metresPerUnit > 0))
            throw new ArgumentException("Steps of latitude, longitude and height are above 0.", nameof(latitudeStepDegrees));
        var south = northDegrees - (rows - 1) * latitudeStepDegrees;
        if (!(northDegrees <= 90.000001 && south >= -90.000001))
            throw new ArgumentException(FormattableString.Invariant($"Latitudes from {south} to {northDegrees} leave the globe."), nameof(northDegrees));
        if (!(westDegrees is >= -180.01 and <= 180) || !((columns - 1) * longitudeStepDegrees <= 360.01))
            throw new ArgumentException(FormattableString.Invariant($"{columns} columns from longitude {westDegrees} leave the globe."), nameof(westDegrees));

        (NorthDegrees, WestDegrees, LatitudeStepDegrees, LongitudeStepDegrees) = (northDegrees, westDegrees, latitudeStepDegrees, longitudeStepDegrees);
        (Columns, Rows, MetresPerUnit, this.samples) = (columns, rows, metresPerUnit, samples);
        short highest = Void;
        foreach (var sample in samples)
        {
            if (sample > highest) highest = sample;
            if (sample == Void) VoidCount++;
        }

        HighestMetres = VoidCount == samples.Length ? null : highest * metresPerUnit;
    }

    /// <summary>Latitude of the first row, degrees.</summary>
    public double NorthDegrees { get; }

    /// <summary>Longitude of the first column, degrees.</summary>
    public double WestDegrees { get; }

    /// <summary>Latitude of the last row, degrees.</summary>
    public double SouthDegrees => NorthDegrees - (Rows - 1) * LatitudeStepDegrees;

    /// <summary>Longitude of the last column, degrees; may exceed 180.</summary>
    public double EastDegrees => WestDegrees + (Columns - 1) * LongitudeStepDegrees;

    /// <summary>Degrees from row to row.</summary>
    public double LatitudeStepDegrees { get; }

    /// <summary>Degrees from column to column.</summary>
    public double LongitudeStepDegrees { get; }

    /// <summary>Heights in a row.</summary>
    public int Columns { get; }

    /// <summary>Rows.</summary>
    public int Rows { get; }

    /// <summary>Metres of one step of a sample.</summary>
    public double MetresPerUnit { get; }

    /// <summary>The samples, row by row from the north, as given.</summary>
    public ReadOnlySpan<short> Samples => samples;

    /// <summary>How many samples are unmeasured.</summary>
    public int VoidCount { get; }

    /// <summary>Highest sample, metres; null when all are unmeasured.</summary>
    public double? HighestMetres { get; }

    /// <summary>Distance of neighbouring samples, metres: the shorter of the two ways.</summary>
    public double SpacingMetres
    {
        get
        {
            const double metresPerDegree = Math.PI / 180 * Ellipsoid.EquatorialMetres;
            var cosine = Math.Cos((NorthDegrees + SouthDegrees) / 2 * (Math.PI / 180));
            return Math.Max(0.1, metresPerDegree * Math.Min(LatitudeStepDegrees, LongitudeStepDegrees * cosine));
        }
    }

    /// <summary>Height at a position, metres above mean sea level; null outside the grid and beside unmeasured samples.</summary>
    public double? MetresAt(Position position) =>
        MetresAt(position.LatitudeDegrees, position.LongitudeDegrees, out _) is var metres && double.IsNaN(metres) ? null : metres;

    /// <summary>Whether a position lies within the outermost samples.</summary>
    public bool Covers(Position position) => TryPlace(position.LatitudeDegrees, position.LongitudeDegrees, out _, out _);

    /// <summary>The same as <see cref="MetresAt(Position)"/> with NaN for null.</summary>
    internal double MetresAt(double latitude, double longitude, out bool isCovered)
    {
        isCovered = TryPlace(latitude, longitude, out var y, out var x);
        if (!isCovered) return double.NaN;
        var row = Math.Min((int)y, Rows - 2);
        var column = Math.Min((int)x, Columns - 2);
        var (down, right) = (y - row, x - column);
        var at = row * Columns + column;
        short a = samples[at], b = samples[at + 1], c = samples[at + Columns], d = samples[at + Columns + 1];
        if (a == Void || b == Void || c == Void || d == Void) return double.NaN;
        var above = a + (b - a) * right;
        var below = c + (d - c) * right;
        return (above + (below - above) * down) * MetresPerUnit;
    }

    private bool TryPlace(double latitude, double longitude, out double y, out double x)
    {
        // A few millimetres of grace, so that two grids that share an edge leave no crack.
        const double grace = 1e-7;
        y = (NorthDegrees - latitude) / LatitudeStepDegrees;
        x = longitude - WestDegrees;
        if (x < -180) x += 360;
        if (x > 360) x -= 360;
        if (x < 0 && x > -grace) x = 0;
        // Grids may run over the date line: then the longitude comes from the other side.
        if (x < 0) x += 360;
        x /= LongitudeStepDegrees;
        var graceInSteps = grace / LatitudeStepDegrees;
        var inside = y >= -graceInSteps && y <= Rows - 1 + graceInSteps && x <= Columns - 1 + grace / LongitudeStepDegrees;
        y = Math.Clamp(y, 0, Rows - 1);
        x = Math.Clamp(x, 0, Columns - 1);
        return inside;
    }
}
