namespace Foreshore.Almanac.Tides;

public static partial class Constituents
{
    private static Dictionary<string, Constituent> Build()
    {
        var named = new Dictionary<string, Constituent>(StringComparer.OrdinalIgnoreCase);
        foreach (var one in new Constituent[] {
            new("M2", new(2, 0, 0, 0, 0, 0), [new(NodeRule.M2, 1)]),
            new("S2", new(2, 2, -2, 0, 0, 0), []),
            new("N2", new(2, -1, 0, 1, 0, 0), [new(NodeRule.M2, 1)]),
            new("K1", new(1, 1, 0, 0, 0, -1), [new(NodeRule.K1, 1)]),
            new("O1", new(1, -1, 0, 0, 0, 1), [new(NodeRule.O1, 1)]) })
            named.Add(one.Name, one);
        return named;
    }
}
