using System.Numerics;

namespace Foreshore.Almanac.Tides;

/// <summary>f and u of one constituent at one instant, as ln f and radians, so that compounds add them up.</summary>
internal readonly record struct NodeFactor(double LogF, double U)
{
    internal double F => Math.Exp(LogF);

    internal double UDegrees => U * 180 / Math.PI;

    internal static NodeFactor Of(double f, double uDegrees) => new(Math.Log(f), uDegrees * Math.PI / 180);

    /// <summary>From f·exp(iu).</summary>
    internal static NodeFactor Of(Complex both) => new(Math.Log(both.Magnitude), both.Phase);
}
