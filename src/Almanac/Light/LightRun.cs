using NodaTime;

namespace Foreshore.Almanac.Light;

/// <summary>An unbroken stretch of one wanted light.</summary>
/// <param name="Light">Which light.</param>
/// <param name="Start">From when it holds.</param>
/// <param name="End">Until when; never before the start.</param>
public readonly record struct LightRun(WantedLight Light, Instant Start, Instant End)
{
    /// <summary>How long it lasts.</summary>
    public Duration Length => End - Start;
}
