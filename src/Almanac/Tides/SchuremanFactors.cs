using System.Numerics;

namespace Foreshore.Almanac.Tides;

/// <summary>
/// Closed formulas of the inclination I of the moon's orbit to the equator, and of ν and ξ, where the two meet: Schureman
/// (SP 98), equations 73 to 79, 191 to 235. Obliquity 23.452 and inclination to the ecliptic 5.145 degrees as there.
/// </summary>
internal sealed class SchuremanFactors : NodeFactors
{
    private const double Degree = Math.PI / 180, Obliquity = 23.452 * Degree, Inclination = 5.145 * Degree;

    internal SchuremanFactors(AstronomicalArguments at)
    {
        var n = Math.IEEERemainder(at.Node, 360) * Degree;
        var i = Math.Acos(Math.Cos(Inclination) * Math.Cos(Obliquity) - Math.Sin(Inclination) * Math.Sin(Obliquity) * Math.Cos(n));
        // Napier's analogies for half the sum and half the difference of the two arcs.
        double sum = Math.Atan(Math.Cos((Obliquity - Inclination) / 2) / Math.Cos((Obliquity + Inclination) / 2) * Math.Tan(n / 2));
        double difference = Math.Atan(Math.Sin((Obliquity - Inclination) / 2) / Math.Sin((Obliquity + Inclination) / 2) * Math.Tan(n / 2));
        double xi = n - sum - difference, nu = sum - difference;
        InclinationDegrees = i / Degree;

        double sinI = Math.Sin(i), sin2I = Math.Sin(2 * i), squareSin = sinI * sinI, cosHalf = Math.Cos(i / 2), sinHalf = Math.Sin(i / 2);
        void Set(NodeRule rule, double f, double u) => this[rule] = new NodeFactor(Math.Log(f), u);

        Set(NodeRule.Mm, (2.0 / 3 - squareSin) / 0.5021, 0);
        Set(NodeRule.Mf, squareSin / 0.1578, -2 * xi);
        Set(NodeRule.O1, sinI * cosHalf * cosHalf / 0.3800, 2 * xi - nu);
        Set(NodeRule.J1, sin2I / 0.7214, -nu);
        Set(NodeRule.OO1, sinI * sinHalf * sinHalf / 0.0164, -2 * xi - nu);
        Set(NodeRule.M2, Math.Pow(cosHalf, 4) / 0.9154, 2 * xi - 2 * nu);
        Set(NodeRule.Eta2, squareSin / 0.1565, -2 * nu);
        Set(NodeRule.K1, Math.Sqrt(0.8965 * sin2I * sin2I + 0.6001 * sin2I * Math.Cos(nu) + 0.1006), -Math.Atan2(sin2I * Math.Sin(nu), sin2I * Math.Cos(nu) + 0.3347));
        Set(NodeRule.K2, Math.Sqrt(19.0444 * squareSin * squareSin + 2.7702 * squareSin * Math.Cos(2 * nu) + 0.0981), -Math.Atan2(squareSin * Math.Sin(2 * nu), squareSin * Math.Cos(2 * nu) + 0.0727));

        // L2: R of equation 214 and Ra of 213 are angle and inverse length of one arrow.
        var perigee = at.Perigee * Degree - xi;
        var tangent = sinHalf / cosHalf;
        var l2 = NodeFactor.Of(1 - Complex.FromPolarCoordinates(6 * tangent * tangent, 2 * perigee));
        this[NodeRule.L2] = new NodeFactor(this[NodeRule.M2].LogF + l2.LogF, this[NodeRule.M2].U + l2.U);

        // M1: two waves of the perigee, P before and behind (equations 191 to 204); Q so lies in the quadrant of P, which the
        // tangent alone would not tell. The argument holds p, so p is taken off again.
        var q = NodeFactor.Of(Complex.FromPolarCoordinates(0.5, -perigee) + Complex.FromPolarCoordinates(1.5 * Math.Cos(i) / (cosHalf * cosHalf), perigee));
        this[NodeRule.M1C] = new NodeFactor(this[NodeRule.O1].LogF + q.LogF, xi - nu + q.U);
        this[NodeRule.M1] = new NodeFactor(this[NodeRule.M1C].LogF, Math.IEEERemainder(this[NodeRule.M1C].U - at.Perigee * Degree, 2 * Math.PI));
        FillRare(at.Node, at.Perigee, at.SolarPerigee);
    }

    /// <summary>I, for the check against the published table.</summary>
    internal double InclinationDegrees { get; }
}
