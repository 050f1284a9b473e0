namespace Foreshore.Almanac.Earth;

/// <summary>
/// The edge of land and sea round a stance from ground heights, ray by ray along geodesics, over a sphere that touches the
/// ellipsoid in the ray's direction and is widened by refraction to R / (1 − k).
/// </summary>
/// <remarks>
/// A ray ends in land where ground shows above the sea horizon; in sea where none does and the ground lies at or below mean
/// sea level to the horizon or the reach; it stays unknown where unmeasured ground as high as the highest in the grids would
/// show above what was found, or where low ground goes on to the reach. Ground nearer than one sample is left out: the grid
/// does not know it. Trees and buildings are there only if the grids hold them.
/// </remarks>
public static class SkylineFromElevation
{
    private const double Degree = 180 / Math.PI;

    /// <summary>Ground height by the grids, metres above mean sea level; null where none of them knows it.</summary>
    public static double? GroundMetres(Position position, IReadOnlyList<ElevationGrid> grids)
    {
        ArgumentNullException.ThrowIfNull(grids);
        return grids.OrderBy(grid => grid.SpacingMetres).Select(grid => grid.MetresAt(position)).FirstOrDefault(metres => metres is not null);
    }

    /// <summary>How far the sea horizon lies below level, degrees, for an eye over a sphere widened by refraction: arccos(R′/(R′ + h)).</summary>
    /// <param name="eyeMetres">Height of the eye, metres; below 0 counts as 0.</param>
    /// <param name="radiusMetres">R′, metres.</param>
    public static double HorizonDipDegrees(double eyeMetres, double radiusMetres) =>
        Math.Acos(radiusMetres / (radiusMetres + Math.Max(0, eyeMetres))) * Degree;

    /// <summary>Altitude, as seen, of a point some way off, degrees.</summary>
    /// <param name="metresAboveSea">Its height.</param>
    /// <param name="distanceMetres">How far along the ground.</param>
    /// <param name="eyeMetres">Height of the eye.</param>
    /// <param name="radiusMetres">The Earth's radius over 1 − k, metres.</param>
    public static double AltitudeDegrees(double metresAboveSea, double distanceMetres, double eyeMetres, double radiusMetres) =>
        Math.Atan(new Arc(distanceMetres / radiusMetres, radiusMetres).Slope(metresAboveSea, eyeMetres)) * Degree;

    /// <summary>Computes a skyline.</summary>
    /// <param name="question">Where, and how finely.</param>
    /// <param name="grids">Ground heights; where they overlap the finest counts.</param>
    /// <param name="progress">Told the share that is done, 0…1, now and then.</param>
    /// <param name="cancellation">Asked at each ray.</param>
    /// <exception cref="ArgumentException">There is no measured height at all.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The question is outside its ranges.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static ComputedSkyline Of(
        SkylineQuestion question, IReadOnlyList<ElevationGrid> grids, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(grids);
        question.Check();
        if (grids.Max(grid => grid.HighestMetres) is not { } highest)
            throw new ArgumentException("No grid holds a measured height.", nameof(grids));

        ElevationGrid[] finestFirst = [.. grids.OrderBy(grid => grid.SpacingMetres)];
        var walk = new GroundWalk(question, finestFirst, highest);
        var edge = new RayEdge[question.Rays];
        for (var i = 0; i < edge.Length; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            if (i % 64 == 0) progress?.Report((double)i / edge.Length);
            edge[i] = walk.Look(Bearing.FromDegrees(360.0 * i / edge.Length));
        }

        progress?.Report(1);
        var (points, tolerance) = SkylineCorners.Of(edge, question.ToleranceDegrees, question.MostCorners);
        return new ComputedSkyline(
            new Skyline(points), tolerance, GroundMetres(question.Position, grids), highest,
            (double)edge.Count(ray => ray.Kind == SkylineKind.Unknown) / edge.Length);
    }

    /// <summary>An angle at the Earth's centre, made ready for slopes.</summary>
    internal readonly struct Arc
    {
        private readonly double rise, reach;

        internal Arc(double radians, double radiusMetres)
        {
            // Series, for 1 − cos loses digits; rays end within 4 degrees, where the next terms are below a micrometre.
            var square = radians * radians;
            rise = square / 2 * (1 - square / 12 * (1 - square / 30));
            reach = radians * (1 - square / 6 * (1 - square / 20 * (1 - square / 42)));
            Radius = radiusMetres;
        }

        private double Radius { get; }

        /// <summary>Tangent of the altitude at which a height shows.</summary>
        internal double Slope(double metres, double eyeMetres) =>
            (metres - eyeMetres - (Radius + metres) * rise) / ((Radius + metres) * reach);

        /// <summary>Whether it shows above such a tangent: the same without dividing.</summary>
        internal bool ShowsAbove(double slope, double metres, double eyeMetres) =>
            double.IsNegativeInfinity(slope) || metres - eyeMetres - (Radius + metres) * rise > slope * ((Radius + metres) * reach);
    }
}
