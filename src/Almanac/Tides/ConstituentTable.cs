namespace Foreshore.Almanac.Tides;

/// <summary>Arguments and node corrections of all waves, and which names they go by.</summary>
internal static class ConstituentTable
{
    // Arguments: Schureman, Table 2 (of the sun and moon), IHO Standard Constituent List (the rest), as multiples of
    // τ, s, h, p, p₁ and quarter turns, with T = 180 degrees at midnight. Node corrections: the same sources.
    private static readonly (string Names, DoodsonNumbers Doodson, NodeRule Node)[] Waves =
    [
        ("SA", new(0, 0, 1, 0, 0, 0), NodeRule.None),
        // The Norwegian Sa counts from the sun's perigee, the first Sa of the IHO's list: only so the northern sea is highest in November.
        ("SA_KV", new(0, 0, 1, 0, -1, 0), NodeRule.None),
        ("SSA", new(0, 0, 2, 0, 0, 0), NodeRule.None),
        ("MM", new(0, 1, 0, -1, 0, 0), NodeRule.Mm),
        ("MF", new(0, 2, 0, 0, 0, 0), NodeRule.Mf),
        ("MFM MTM", new(0, 3, 0, -1, 0, 0), NodeRule.Mm),
        ("MSQM", new(0, 4, -2, 0, 0, 0), NodeRule.MSf),

        ("ALP1 ALPHA1", new(1, -4, 2, 1, 0, 1), NodeRule.O1),
        ("2Q1", new(1, -3, 0, 2, 0, 1), NodeRule.O1),
        ("SIGMA1 SGM SIG1", new(1, -3, 2, 0, 0, 1), NodeRule.O1),
        ("Q1", new(1, -2, 0, 1, 0, 1), NodeRule.O1),
        ("RHO1 RHO", new(1, -2, 2, -1, 0, 1), NodeRule.O1),
        ("O1", new(1, -1, 0, 0, 0, 1), NodeRule.O1),
        ("TAU1", new(1, -1, 2, 0, 0, -1), NodeRule.K1),
        ("BET1 BETA1", new(1, 0, -2, 1, 0, -1), NodeRule.O1),
        ("M1B", new(1, 0, 0, -1, 0, 1), NodeRule.M1B),
        // Half of M2, as the Rijkswaterstaat uses it: another wave than M1.
        ("M1C", new(1, 0, 0, 0, 0, -1), NodeRule.M1C),
        ("M1 M1A", new(1, 0, 0, 1, 0, -1), NodeRule.M1),
        // TICON's M1 is another one: number 155.555 without a quarter turn, T nought at midnight (the IHO's list has three M1 of that
        // number, which differ in their last letter). Fits to less than a round of the perigee carry its turn, but not its factor.
        // The data says so: docs/tides.md, "M1".
        ("M1_TICON", new(1, 0, 0, 0, 0, 2), NodeRule.M1C),
        ("M1_TICON_SHORT", new(1, 0, 0, 0, 0, 2), NodeRule.M1Turn),
        ("CHI1", new(1, 0, 2, -1, 0, -1), NodeRule.J1),
        ("PI1", new(1, 1, -3, 0, 1, 1), NodeRule.None),
        ("P1", new(1, 1, -2, 0, 0, 1), NodeRule.None),
        ("S1", new(1, 1, -1, 0, 0, 0), NodeRule.None),
        // The third S1 of the IHO's list, with the sun's perigee.
        ("S1_KV", new(1, 1, -1, 0, 1, -1), NodeRule.None),
        ("K1", new(1, 1, 0, 0, 0, -1), NodeRule.K1),
        ("PSI1", new(1, 1, 1, 0, -1, -1), NodeRule.None),
        ("PHI1", new(1, 1, 2, 0, 0, -1), NodeRule.J1),
        ("THETA1 THE1", new(1, 2, -2, 1, 0, -1), NodeRule.J1),
        ("J1", new(1, 2, 0, -1, 0, -1), NodeRule.J1),
        ("OO1", new(1, 3, 0, 0, 0, -1), NodeRule.OO1),
        ("UPS1", new(1, 4, 0, -1, 0, -1), NodeRule.OO1),

        ("EPS2 EP2", new(2, -3, 2, 1, 0, 0), NodeRule.M2),
        ("OQ2_KV", new(2, -3, 0, 1, 0, 0), NodeRule.M2),
        ("2N2", new(2, -2, 0, 2, 0, 0), NodeRule.M2),
        ("MU2", new(2, -2, 2, 0, 0, 0), NodeRule.M2),
        // Of the third degree of the moon's attraction (R. D. Ray 2020), between M2 and N2: no formula of its own is used.
        ("3N2", new(2, -1, 0, 0, 0, 0), NodeRule.None),
        ("N2", new(2, -1, 0, 1, 0, 0), NodeRule.M2),
        ("NU2", new(2, -1, 2, -1, 0, 0), NodeRule.M2),
        ("GAMMA2 GAM2", new(2, 0, -2, 2, 0, 2), NodeRule.Gamma2),
        ("ALPHA2 H1", new(2, 0, -1, 0, 1, 2), NodeRule.Alpha2),
        ("MA2", new(2, 0, -1, 0, 0, 0), NodeRule.None),
        ("M2", new(2, 0, 0, 0, 0, 0), NodeRule.M2),
        ("MB2 MA2*", new(2, 0, 1, 0, 0, 0), NodeRule.None),
        ("M(KS)2", new(2, 0, 1, 0, -1, 0), NodeRule.MKS),
        ("DELTA2 DEL2", new(2, 0, 2, 0, 0, 0), NodeRule.Delta2),
        ("LAMBDA2 LAM2 LABDA2 LDA2", new(2, 1, -2, 1, 0, 2), NodeRule.M2),
        ("L2", new(2, 1, 0, -1, 0, 2), NodeRule.L2),
        ("3L2", new(2, 1, 0, 0, 0, 0), NodeRule.None),
        ("T2", new(2, 2, -3, 0, 1, 0), NodeRule.None),
        ("S2", new(2, 2, -2, 0, 0, 0), NodeRule.None),
        ("R2", new(2, 2, -1, 0, -1, 2), NodeRule.None),
        ("K2", new(2, 2, 0, 0, 0, 0), NodeRule.K2),
        ("XI2", new(2, 3, -2, 1, 0, 0), NodeRule.Eta2),
        ("ETA2", new(2, 3, 0, -1, 0, 0), NodeRule.Eta2),

        // 3T − 3s + 3h without a half turn (Schureman, Table 2, A82): highest where the moon stands highest. The last letter B of the
        // IHO's M3 and S3 says the same, for its T is nought at midnight; read with T = 180 degrees it would turn them over.
        ("M3", new(3, 0, 0, 0, 0, 0), NodeRule.M3),
        ("T3", new(3, 3, -4, 0, 0, 0), NodeRule.None),
        ("S3", new(3, 3, -3, 0, 0, 0), NodeRule.None),
        ("M5", new(5, 0, 0, 1, 0, -1), NodeRule.M5),
        ("M7", new(7, 0, 0, 1, 0, -1), NodeRule.M7),
    ];

    // Waves of shallow water, made of those above: argument and u add up, f is multiplied whatever the sign (IHO list, Annex B).
    // 2MN2 so carries no half turn, though L2 of the same speed does. A digit before a name is a factor: 2N2 is N2 twice.
    private static readonly (string Names, string Sum)[] Compounds =
    [
        ("MSF MSO SM", "S2 - M2"), ("MNUM MSM", "M2 - NU2"),
        ("NO1", "N2 - O1"), ("MP1", "M2 - P1"), ("TK1", "T2 - K1"), ("RP1", "R2 - P1"), ("KP1", "K2 - P1"), ("2PO1", "2P1 - O1"), ("SO1", "S2 - O1"),
        ("KQ1", "K2 - Q1"), ("MQ1", "M2 - Q1"), ("MK1", "M2 - K1"), ("SK1", "S2 - K1"),

        ("2NS2", "2N2 - S2"), ("3M2S2 3MS2", "3M2 - 2S2"), ("MLN2S2", "M2 + L2 + N2 - 2S2"), ("3MKS2 3M(SK)2", "3M2 - K2 - S2"),
        ("2MN2S2", "2M2 + N2 - 2S2"), ("OQ2 OO2", "O1 + Q1"), ("MNK2", "M2 + N2 - K2"), ("MNS2", "M2 + N2 - S2"), ("2ML2S2", "2M2 + L2 - 2S2"), ("MNUS2", "M2 + NU2 - S2"),
        ("2MS2K2", "2M2 + S2 - 2K2"), ("2MK2", "2M2 - K2"), ("NLK2", "N2 + L2 - K2"), ("O2", "2O1"), ("2MS2", "2M2 - S2"), ("SNK2", "S2 + N2 - K2"), ("2KN2S2", "2K2 + N2 - 2S2"),
        ("MKL2S2", "M2 + K2 + L2 - 2S2"), ("OP2", "O1 + P1"), ("MSK2", "M2 + S2 - K2"), ("MPS2", "M2 + P1 - S1"), ("KO2", "K1 + O1"), ("MSP2", "M2 + S1 - P1"),
        ("MKS2", "M2 + K2 - S2"), ("M2KS2 M2(KS)2 2KM2S2", "M2 + 2K2 - 2S2"), ("2SNMK2 2SN(MK)2", "2S2 + N2 - M2 - K2"), ("2MN2", "2M2 - N2"), ("NKM2", "N2 + K2 - M2"),
        ("2SK2", "2S2 - K2"), ("KP2", "K1 + P1"), ("MSN2", "M2 + S2 - N2"), ("MSNU2", "M2 + S2 - NU2"), ("KJ2", "K1 + J1"), ("2KMSN2 2KM(SN)2", "2K2 + M2 - S2 - N2"), ("2SM2", "2S2 - M2"),
        ("2MS2N2", "2M2 + S2 - 2N2"), ("SKM2", "S2 + K2 - M2"), ("2SN2", "2S2 - N2"), ("SKN2", "S2 + K2 - N2"), ("3S2M2", "3S2 - 2M2"),

        ("NO3", "N2 + O1"), ("MQ3", "M2 + Q1"), ("MO3", "M2 + O1"), ("2MK3", "2M2 - K1"), ("2MP3", "2M2 - P1"), ("NK3", "N2 + K1"), ("SO3", "S2 + O1"), ("MP3", "M2 + P1"), ("MK3", "M2 + K1"),
        ("SP3", "S2 + P1"), ("SK3 R3", "S2 + K1"), ("K3", "K2 + K1"), ("2SO3", "2S2 - O1"), ("2MQ3", "2M2 - Q1"), ("NSO3", "N2 + S2 - O1"),

        ("4MS4 4M2S4", "4M2 - 2S2"), ("2MNK4", "2M2 + N2 - K2"), ("2MNS4", "2M2 + N2 - S2"), ("3MK4", "3M2 - K2"), ("N4 2N4", "2N2"), ("3MS4", "3M2 - S2"), ("MSNK4", "M2 + S2 + N2 - K2"),
        ("MN4", "M2 + N2"), ("MNU4", "M2 + NU2"), ("2MLS4", "2M2 + L2 - S2"), ("MNKS4", "M2 + N2 + K2 - S2"), ("2MSK4", "2M2 + S2 - K2"), ("M4", "2M2"), ("2MKS4", "2M2 + K2 - S2"), ("SN4", "S2 + N2"),
        ("3MN4", "3M2 - N2"), ("ML4", "M2 + L2"), ("NK4 KN4", "N2 + K2"), ("M2SK4 2SMK4", "M2 + 2S2 - K2"), ("MT4", "M2 + T2"), ("MS4", "M2 + S2"), ("MR4", "M2 + R2"), ("MK4", "M2 + K2"), ("2SNM4", "2S2 + N2 - M2"),
        ("2MSN4", "2M2 + S2 - N2"), ("SL4", "S2 + L2"), ("2MKN4", "2M2 + K2 - N2"), ("ST4", "S2 + T2"), ("S4", "2S2"), ("SK4", "S2 + K2"), ("K4", "2K2"), ("3SM4", "3S2 - M2"), ("2SKM4", "2S2 + K2 - M2"),

        ("MNO5", "M2 + N2 + O1"), ("2MQ5", "2M2 + Q1"), ("3MK5", "3M2 - K1"), ("2MO5", "2M2 + O1"), ("2NK5", "2N2 + K1"), ("3MP5", "3M2 - P1"), ("NSO5", "N2 + S2 + O1"), ("MNK5", "M2 + N2 + K1"), ("MSO5", "M2 + S2 + O1"),
        ("2MP5", "2M2 + P1"), ("3MO5", "3M2 - O1"), ("2MK5", "2M2 + K1"), ("NSK5", "N2 + S2 + K1"), ("MSP5", "M2 + S2 + P1"), ("MSK5", "M2 + S2 + K1"), ("3KM5", "3K1 + M2"), ("2SP5", "2S2 + P1"), ("2SK5", "2S2 + K1"), ("SKK5 (SK)K5", "S2 + K2 + K1"),

        ("3MNS6", "3M2 + N2 - S2"), ("2NMLS6", "2N2 + M2 + L2 - S2"), ("3MNK6", "3M2 + N2 - K2"), ("4MK6", "4M2 - K2"), ("2NM6 M2N6", "2N2 + M2"), ("4MS6", "4M2 - S2"), ("2MLNS6", "2M2 + L2 + N2 - S2"), ("2MSNK6", "2M2 + S2 + N2 - K2"), ("2MN6", "2M2 + N2"), ("2MNU6", "2M2 + NU2"), ("3MLS6", "3M2 + L2 - S2"),
        ("3MSK6", "3M2 + S2 - K2"), ("M6", "3M2"), ("3MKS6", "3M2 + K2 - S2"), ("MSN6", "M2 + S2 + N2"), ("4MN6", "4M2 - N2"), ("2ML6", "2M2 + L2"), ("MNK6 MKN6", "M2 + N2 + K2"), ("MKNU6", "M2 + K2 + NU2"), ("2MSK6 2(MS)K6", "2M2 + 2S2 - K2"),
        ("2MT6", "2M2 + T2"), ("2MS6", "2M2 + S2"), ("2MK6", "2M2 + K2"), ("2SN6", "2S2 + N2"), ("3MSN6", "3M2 + S2 - N2"), ("MSL6", "M2 + S2 + L2"), ("NSK6 SNK6", "N2 + S2 + K2"), ("MKL6", "M2 + K2 + L2"), ("3MKN6", "3M2 + K2 - N2"), ("MST6", "M2 + S2 + T2"), ("2SM6", "2S2 + M2"), ("MSK6 SKM6", "M2 + S2 + K2"), ("2KM6", "2K2 + M2"), ("S6", "3S2"),

        ("2MNO7", "2M2 + N2 + O1"), ("3MQ7", "3M2 + Q1"), ("4MK7", "4M2 - K1"), ("2NMK7", "2N2 + M2 + K1"), ("MNSO7", "M2 + N2 + S2 + O1"), ("2MNK7", "2M2 + N2 + K1"), ("2MSO7", "2M2 + S2 + O1"), ("3MK7", "3M2 + K1"), ("MSKO7", "M2 + S2 + K2 + O1"),

        ("2MN8 2(MN)8", "2M2 + 2N2"), ("5MK8", "5M2 - K2"), ("5MS8", "5M2 - S2"), ("3MN8", "3M2 + N2"), ("3MNU8", "3M2 + NU2"), ("4MLS8", "4M2 + L2 - S2"), ("4MSK8", "4M2 + S2 - K2"), ("M8", "4M2"), ("4MKS8", "4M2 + K2 - S2"), ("2MSN8", "2M2 + S2 + N2"), ("3ML8", "3M2 + L2"), ("2MNK8", "2M2 + N2 + K2"), ("3MT8", "3M2 + T2"), ("3MS8", "3M2 + S2"),
        ("3MK8", "3M2 + K2"), ("2SMN8 2SNM8", "2S2 + M2 + N2"), ("2MSL8", "2M2 + S2 + L2"), ("MSNK8", "M2 + S2 + N2 + K2"), ("4MSN8", "4M2 + S2 - N2"), ("2MS8 2(MS)8", "2M2 + 2S2"), ("2MSK8", "2M2 + S2 + K2"), ("2MK8 2(MK)8", "2M2 + 2K2"), ("3SN8", "3S2 + N2"), ("2SML8", "2S2 + M2 + L2"), ("MSKL8", "M2 + S2 + K2 + L2"), ("3SM8", "3S2 + M2"), ("2SMK8", "2S2 + M2 + K2"), ("S8", "4S2"),

        ("3MNO9", "3M2 + N2 + O1"), ("2M2NK9 2(MN)K9", "2M2 + 2N2 + K1"), ("3MNK9", "3M2 + N2 + K1"), ("4MK9", "4M2 + K1"), ("3MSK9", "3M2 + S2 + K1"),
        ("4MN10", "4M2 + N2"), ("M10", "5M2"), ("3MSN10 3MNS10", "3M2 + S2 + N2"), ("4MS10", "4M2 + S2"), ("4MK10", "4M2 + K2"), ("2MSN10 2(MS)N10", "2M2 + 2S2 + N2"), ("3MSL10", "3M2 + S2 + L2"), ("3M2S10", "3M2 + 2S2"), ("3MSK10", "3M2 + S2 + K2"),
        ("4MSK11", "4M2 + S2 + K1"), ("5MN12", "5M2 + N2"), ("M12", "6M2"), ("4MSN12 4MNS12", "4M2 + S2 + N2"), ("5MS12", "5M2 + S2"), ("4MSL12", "4M2 + S2 + L2"), ("5MK12", "5M2 + K2"), ("4M2S12", "4M2 + 2S2"), ("4MSK12", "4M2 + S2 + K2"), ("3MS12 3(MS)12", "3M2 + 3S2"), ("6MS14", "6M2 + S2"),
    ];

    internal static Dictionary<string, Constituent> Build()
    {
        var named = new Dictionary<string, Constituent>(StringComparer.OrdinalIgnoreCase);
        foreach (var (names, doodson, node) in Waves) Add(named, names, doodson, Powers(node));
        foreach (var (names, sum) in Compounds)
        {
            var doodson = default(DoodsonNumbers);
            var nodes = new List<NodePower>();
            foreach (var (factor, part) in Parts(named, sum))
            {
                doodson += factor * part.Doodson;
                nodes.AddRange(part.Nodes.Select(node => new NodePower(node.Rule, node.Times * Math.Abs(factor), node.Turns * factor)));
            }

            Add(named, names, doodson, nodes);
        }

        return named;
    }

    private static void Add(Dictionary<string, Constituent> named, string names, DoodsonNumbers doodson, IReadOnlyList<NodePower> nodes)
    {
        var all = names.Split(' ');
        var constituent = new Constituent(all[0], doodson with { QuarterTurns = ((doodson.QuarterTurns + 1) % 4 + 4) % 4 - 1 }, nodes);
        foreach (var name in all) named.Add(name, constituent);
    }

    private static NodePower[] Powers(NodeRule node) => node switch
    {
        NodeRule.None => [],
        // IHO list, notes b and g: of MSf the turn of M2 backwards; of the odd ones of M, half of M2 as often as they have cycles.
        NodeRule.MSf => [new(NodeRule.M2, 1, -1)],
        NodeRule.MKS => [new(NodeRule.M2, 1, 1), new(NodeRule.K2, 1, 1)],
        NodeRule.M3 => [new(NodeRule.M2, 1.5, 1.5)],
        NodeRule.M5 => [new(NodeRule.M2, 2.5, 2.5)],
        NodeRule.M7 => [new(NodeRule.M2, 3.5, 3.5)],
        NodeRule.M1Turn => [new(NodeRule.M1C, 0, 1)],
        _ => [new(node, 1, 1)],
    };

    private static IEnumerable<(int Factor, Constituent Part)> Parts(Dictionary<string, Constituent> named, string sum)
    {
        var sign = 1;
        foreach (var word in sum.Split(' '))
        {
            if (word is "+" or "-")
            {
                sign = word == "+" ? 1 : -1;
                continue;
            }

            yield return char.IsAsciiDigit(word[0]) ? (sign * (word[0] - '0'), named[word[1..]]) : (sign, named[word]);
        }
    }
}
