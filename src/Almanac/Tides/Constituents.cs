using System.Diagnostics.CodeAnalysis;

namespace Foreshore.Almanac.Tides;

/// <summary>
/// All constituents that are known, by name. Sources: Schureman (SP 98), Table 2; IHO Standard Constituent List (TWCWG, 2017).
/// Names are read without regard to case, Greek letters may be written out, and the usual aliases are known
/// (LAM2 = LAMBDA2, RHO = RHO1…).
/// </summary>
public static class Constituents
{
    private static readonly Dictionary<string, Constituent> Named = ConstituentTable.Build();

    /// <summary>Each once, the slow ones first.</summary>
    public static IReadOnlyList<Constituent> All { get; } = [.. Named.Values.Distinct().OrderBy(one => one.SpeedDegreesPerHour)];

    /// <summary>The constituent of that name.</summary>
    /// <param name="name">Such as "M2".</param>
    /// <exception cref="UnknownConstituentException">No constituent has that name.</exception>
    public static Constituent Of(string name) => TryFind(name, out var found) ? found : throw UnknownConstituentException.Named(name ?? "");

    /// <summary>Looks whether a constituent has that name.</summary>
    /// <param name="name">Such as "M2".</param>
    /// <param name="constituent">The constituent, where there is one.</param>
    public static bool TryFind(string? name, [NotNullWhen(true)] out Constituent? constituent)
    {
        constituent = null;
        return name is not null && Named.TryGetValue(name.Trim(), out constituent);
    }
}
