namespace Foreshore.Almanac.Tides;

/// <summary>The waves whose node corrections are given by formulas; all others are made of these.</summary>
internal enum NodeRule
{
    M2,
    O1,
    K1,
    J1,
    K2,
    OO1,
    Mm,
    Mf,
    L2,
    M1,
    M1B,
    M1C,
    Gamma2,
    Alpha2,
    Delta2,
    Eta2,

    /// <summary>Of the sun alone, or without a formula: f = 1, u = 0.</summary>
    None,

    /// <summary>As M2, the turn backwards.</summary>
    MSf,

    /// <summary>The turn of M1C, without its factor.</summary>
    M1Turn,

    /// <summary>As M2 and K2 together.</summary>
    MKS,

    /// <summary>Half of M2, three times.</summary>
    M3,

    /// <summary>Half of M2, five times.</summary>
    M5,

    /// <summary>Half of M2, seven times.</summary>
    M7,
}

/// <summary>A wave that a constituent is made of: how often its factor f is taken, and how often its turn u.</summary>
internal readonly record struct NodePower(NodeRule Rule, double Times, double Turns);
