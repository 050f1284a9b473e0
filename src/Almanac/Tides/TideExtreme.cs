using NodaTime;

namespace Foreshore.Almanac.Tides;

/// <summary>A high or a low water.</summary>
/// <param name="Time">When.</param>
/// <param name="Metres">Height above the datum of its source, chart datum as a rule.</param>
/// <param name="IsHigh">High water; else low water.</param>
public readonly record struct TideExtreme(Instant Time, double Metres, bool IsHigh);

/// <summary>The tide passes a level.</summary>
/// <param name="Time">When.</param>
/// <param name="Rising">From below to above; else from above to below.</param>
public readonly record struct LevelCrossing(Instant Time, bool Rising);
