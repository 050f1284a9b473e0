using NodaTime;

namespace Foreshore.Almanac.Light;

/// <summary>One session worth going out for.</summary>
/// <param name="Session">Which.</param>
/// <param name="Windows">When the wanted light holds in it, by start.</param>
/// <param name="Usable">How long together.</param>
public sealed record GoodDate(Session Session, IReadOnlyList<Interval> Windows, Duration Usable);
