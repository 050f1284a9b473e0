namespace Foreshore.Almanac.Tides;

/// <summary>One cosine of the tide: its argument, its speed and how node and perigee change it. See <see cref="Constituents"/>.</summary>
public sealed class Constituent
{
    internal Constituent(string name, DoodsonNumbers doodson, IEnumerable<NodePower> nodes)
    {
        (Name, Doodson, Nodes) = (name, doodson, [.. nodes]);
        SpeedDegreesPerHour = doodson.SpeedDegreesPerHour;
    }

    /// <summary>Its usual name, such as M2 or 2MK3.</summary>
    public string Name { get; }

    /// <summary>What its argument is made of.</summary>
    public DoodsonNumbers Doodson { get; }

    /// <summary>Degrees per mean solar hour, computed from <see cref="Doodson"/>.</summary>
    public double SpeedDegreesPerHour { get; }

    internal NodePower[] Nodes { get; }

    /// <inheritdoc/>
    public override string ToString() => Name;
}
