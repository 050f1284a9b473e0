namespace Foreshore.Almanac.Tides;

/// <summary>The waves whose node corrections are given by formulas of their own; all others are made of these.</summary>
internal enum NodeRule
{
    /// <summary>Of the sun alone: f = 1, u = 0.</summary>
    None,
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
}

/// <summary>A wave of a compound and how often it is in it; f takes the number without sign, u with it.</summary>
internal readonly record struct NodePower(NodeRule Rule, double Power);
