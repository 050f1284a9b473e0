using System.Numerics;

namespace Foreshore.Almanac.Tides;

/// <summary>Series in node and perigee: IHO Standard Constituent List (TWCWG, 8 May 2017), Annex A.</summary>
internal sealed class IhoFactors : NodeFactors
{
    internal IhoFactors(AstronomicalArguments at)
    {
        double n = at.Node, p = at.Perigee;
        double Cos(double degrees) => Math.Cos(degrees * Math.PI / 180);
        double Sin(double degrees) => Math.Sin(degrees * Math.PI / 180);

        this[NodeRule.Mm] = NodeFactor.Of(1 - 0.1311 * Cos(n) + 0.0538 * Cos(2 * p) + 0.0205 * Cos(2 * p - n), 0);
        this[NodeRule.Mf] = NodeFactor.Of(1.084 + 0.415 * Cos(n) + 0.039 * Cos(2 * n), -23.7 * Sin(n) + 2.7 * Sin(2 * n) - 0.4 * Sin(3 * n));
        this[NodeRule.O1] = NodeFactor.Of(1.0176 + 0.1871 * Cos(n) - 0.0147 * Cos(2 * n), 10.80 * Sin(n) - 1.34 * Sin(2 * n) + 0.19 * Sin(3 * n));
        this[NodeRule.K1] = NodeFactor.Of(1.0060 + 0.1150 * Cos(n) - 0.0088 * Cos(2 * n) + 0.0006 * Cos(3 * n), -8.86 * Sin(n) + 0.68 * Sin(2 * n) - 0.07 * Sin(3 * n));
        this[NodeRule.J1] = NodeFactor.Of(1.1029 + 0.1676 * Cos(n) - 0.0170 * Cos(2 * n) + 0.0016 * Cos(3 * n), -12.94 * Sin(n) + 1.34 * Sin(2 * n) - 0.19 * Sin(3 * n));
        this[NodeRule.M2] = NodeFactor.Of(1.0007 - 0.0373 * Cos(n) + 0.0002 * Cos(2 * n), -2.14 * Sin(n));
        this[NodeRule.K2] = NodeFactor.Of(1.0246 + 0.2863 * Cos(n) + 0.0083 * Cos(2 * n) - 0.0015 * Cos(3 * n), -17.74 * Sin(n) + 0.68 * Sin(2 * n) - 0.04 * Sin(3 * n));
        this[NodeRule.L2] = NodeFactor.Of(1 - Turn(0.2505, 2 * p) - Turn(0.1102, 2 * p - n) - Turn(0.0156, 2 * p - 2 * n) - Turn(0.037, n));
        this[NodeRule.Eta2] = NodeFactor.Of(1 + Turn(0.439, -n));

        // M1 turns with the perigee: its argument holds p, so that this is the M1A of the list; the list's own M1 goes with half of M2.
        this[NodeRule.M1] = NodeFactor.Of(1 + Turn(0.3593, -2 * p) + Turn(0.2, -n) + Turn(0.066, n - 2 * p));
        this[NodeRule.M1C] = NodeFactor.Of(new Complex(2 * (Cos(p) + 0.2 * Cos(p - n)), Sin(p) + 0.2 * Sin(p - n)));

        // Note d: as KQ1, that is K2 − Q1.
        this[NodeRule.OO1] = new NodeFactor(this[NodeRule.K2].LogF + this[NodeRule.O1].LogF, this[NodeRule.K2].U - this[NodeRule.O1].U);
        FillRare(n, p, at.SolarPerigee);
    }
}
