namespace Foreshore.Almanac.Tides;

/// <summary>The node corrections of one instant.</summary>
internal abstract class NodeFactors
{
    private readonly NodeFactor[] rules = new NodeFactor[(int)NodeRule.None];

    private protected NodeFactor this[NodeRule rule]
    {
        get => rules[(int)rule];
        set => rules[(int)rule] = value;
    }

    internal static NodeFactors At(NodalModel model, AstronomicalArguments arguments) => model switch
    {
        NodalModel.Schureman => new SchuremanFactors(arguments),
        NodalModel.Iho => new IhoFactors(arguments),
        _ => throw new ArgumentOutOfRangeException(nameof(model), model, "The nodal models are Schureman's and the IHO's."),
    };

    internal NodeFactor Of(Constituent constituent)
    {
        double logF = 0, u = 0;
        foreach (var (rule, times, turns) in constituent.Nodes)
        {
            logF += times * this[rule].LogF;
            u += turns * this[rule].U;
        }

        return new NodeFactor(logF, u);
    }

    /// <summary>Waves that only the IHO's list has formulas for; they serve both models.</summary>
    private protected void FillRare(double node, double perigee, double solarPerigee)
    {
        this[NodeRule.M1B] = NodeFactor.Of(1 + Turn(2.783, 2 * perigee) + Turn(0.558, 2 * perigee - node) + Turn(0.184, node));
        this[NodeRule.Gamma2] = NodeFactor.Of(1 + Turn(0.147, 2 * (node - perigee)));
        this[NodeRule.Alpha2] = NodeFactor.Of(1 + Turn(-0.0446, perigee - solarPerigee));
        this[NodeRule.Delta2] = NodeFactor.Of(1 + Turn(-0.477, -node));
    }

    /// <summary>A small arrow of a length, turned by degrees.</summary>
    private protected static System.Numerics.Complex Turn(double length, double degrees) => System.Numerics.Complex.FromPolarCoordinates(length, degrees * Math.PI / 180);
}
