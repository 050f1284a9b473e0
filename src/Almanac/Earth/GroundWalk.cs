namespace Foreshore.Almanac.Earth;

/// <summary>What a ray found.</summary>
internal readonly record struct RayEdge(SkylineKind Kind, double AltitudeDegrees);

/// <summary>Walks the ground along rays from one stance.</summary>
internal sealed class GroundWalk
{
    private const double Degree = 180 / Math.PI;

    // Between points of a geodesic so far apart a cubic keeps to it within millimetres.
    private const double LegMetres = 5000;

    private readonly SkylineQuestion question;
    private readonly ElevationGrid[] grids;
    private readonly double highest;
    private readonly double[] distances;
    private readonly Leg[] legs;
    private GeodesicEnd laidTo;

    internal GroundWalk(SkylineQuestion question, ElevationGrid[] finestFirst, double highestMetres)
    {
        (this.question, grids, highest) = (question, finestFirst, highestMetres);
        distances = [.. Distances()];
        legs = new Leg[(int)Math.Ceiling(question.ReachMetres / LegMetres)];
    }

    internal RayEdge Look(Bearing toward)
    {
        var eye = question.EyeMetresAboveSea;
        var radius = RadiusMetres(toward) / (1 - question.RefractionCoefficient);
        var horizonDegrees = SkylineFromElevation.HorizonDipDegrees(eye, radius);
        var horizon = -Math.Tan(horizonDegrees / Degree);
        var horizonMetres = horizonDegrees / Degree * radius;
        var laid = 0;

        var (land, unmeasured) = (double.NegativeInfinity, double.NegativeInfinity);
        var endsInLand = false;
        // Past the distance at which the highest ground would show highest, what any ground could reach only shrinks; past the
        // horizon the sea's edge hides what stays below it.
        var shrinksFrom = highest > eye ? 0 : Math.Sqrt(2 * radius * (eye - highest)) * 1.01 + 1;
        foreach (var distance in distances)
        {
            var arc = new SkylineFromElevation.Arc(distance / radius, radius);
            if (distance >= shrinksFrom && (distance > horizonMetres || land > horizon) && !arc.ShowsAbove(Math.Max(land, horizon), highest, eye)) break;

            var leg = Math.Min((int)(distance / LegMetres), legs.Length - 1);
            while (laid <= leg) Lay(toward, laid++);
            var (latitude, longitude) = legs[leg].At(distance - leg * LegMetres);
            var metres = Ground(latitude, longitude);
            if (double.IsNaN(metres)) unmeasured = Math.Max(unmeasured, arc.Slope(highest, eye));
            else if (metres > 0 && arc.ShowsAbove(land, metres, eye)) land = arc.Slope(metres, eye);
            if (distance <= horizonMetres) endsInLand = metres > 0;
        }

        var seen = Math.Max(land, horizon);
        if (unmeasured > seen || (land <= horizon && endsInLand && horizonMetres > question.ReachMetres)) return new RayEdge(SkylineKind.Unknown, 0);
        return land > horizon ? new RayEdge(SkylineKind.Land, Math.Atan(land) * Degree) : new RayEdge(SkylineKind.Sea, -horizonDegrees);
    }

    private double Ground(double latitude, double longitude)
    {
        var isCovered = false;
        foreach (var grid in grids)
        {
            var metres = grid.MetresAt(latitude, longitude, out var covers);
            if (!double.IsNaN(metres)) return metres;
            isCovered |= covers;
        }

        return question.OutsideIsSea && !isCovered ? 0 : double.NaN;
    }

    // Half a sample near by, as far apart as the rays are where those spread wider.
    private IEnumerable<double> Distances()
    {
        var here = grids.FirstOrDefault(grid => grid.Covers(question.Position)) ?? grids[0];
        var spread = 2 * Math.PI / question.Rays;
        for (var distance = here.SpacingMetres; distance <= question.ReachMetres; distance += Math.Max(here.SpacingMetres / 2, distance * spread))
            yield return distance;
    }

    // Euler: the ellipsoid's radius of curvature in a direction.
    private double RadiusMetres(Bearing toward)
    {
        var (sin, cos) = Math.SinCos(toward.Degrees / Degree);
        var (alongMeridian, across) = Radii(question.Position.LatitudeDegrees);
        return 1 / (cos * cos / alongMeridian + sin * sin / across);
    }

    private static (double AlongMeridian, double Across) Radii(double latitude)
    {
        var sin = Math.Sin(latitude / Degree);
        var w2 = 1 - Ellipsoid.EccentricitySquared * sin * sin;
        var across = Ellipsoid.EquatorialMetres / Math.Sqrt(w2);
        return (across * (1 - Ellipsoid.EccentricitySquared) / w2, across);
    }

    private void Lay(Bearing toward, int leg)
    {
        if (leg == 0) laidTo = new GeodesicEnd(question.Position, toward);
        var end = Geodesic.Along(question.Position, toward, (leg + 1) * LegMetres);
        legs[leg] = new Leg(laidTo, end);
        laidTo = end;
    }

    /// <summary>A cubic in latitude and one in longitude between two points of a geodesic and their directions.</summary>
    private readonly struct Leg
    {
        private readonly double a0, a1, a2, a3, b0, b1, b2, b3;

        internal Leg(GeodesicEnd start, GeodesicEnd end)
        {
            var (north0, east0) = Rates(start);
            var (north1, east1) = Rates(end);
            (a0, a1, a2, a3) = Cubic(start.Position.LatitudeDegrees, end.Position.LatitudeDegrees, north0, north1);
            var longitude = start.Position.LongitudeDegrees;
            var turn = Math.IEEERemainder(end.Position.LongitudeDegrees - longitude, 360);
            (b0, b1, b2, b3) = Cubic(longitude, longitude + turn, east0, east1);
        }

        internal (double Latitude, double Longitude) At(double metres)
        {
            var t = metres / LegMetres;
            return (a0 + t * (a1 + t * (a2 + t * a3)), b0 + t * (b1 + t * (b2 + t * b3)));
        }

        private static (double North, double East) Rates(GeodesicEnd at)
        {
            var (alongMeridian, across) = Radii(at.Position.LatitudeDegrees);
            var (sin, cos) = Math.SinCos(at.Final.Degrees / Degree);
            return (LegMetres * cos / alongMeridian * Degree, LegMetres * sin / (across * Math.Cos(at.Position.LatitudeDegrees / Degree)) * Degree);
        }

        private static (double, double, double, double) Cubic(double from, double to, double rateFrom, double rateTo)
        {
            var step = to - from;
            return (from, rateFrom, 3 * step - 2 * rateFrom - rateTo, rateFrom + rateTo - 2 * step);
        }
    }
}
