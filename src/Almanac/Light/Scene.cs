using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Earth;

namespace Foreshore.Almanac.Light;

/// <summary>What is photographed, from where, in which light: all that the light's windows are computed from.</summary>
/// <param name="Observer">Place, eye height and skyline.</param>
/// <param name="Frame">Facing, tilt and lens.</param>
/// <param name="Wanted">One or more; any of them suits.</param>
/// <param name="IsCoreLowOverSea">
/// Whether the galaxy's core counts from 5 degrees up, not 10, where it stands over a sea horizon: somebody knows it as clear.
/// </param>
public sealed record Scene(Observer Observer, Frame Frame, IReadOnlyList<WantedLight> Wanted, bool IsCoreLowOverSea = false);
