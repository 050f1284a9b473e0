using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>What of the day hours by the sun begin or end with.</summary>
public enum SunEvent
{
    /// <summary>The sun's centre climbs through −50′, as in the printed tables.</summary>
    Sunrise,

    /// <summary>The sun's centre sinks through −50′.</summary>
    Sunset,
}

/// <summary>A time by the sun.</summary>
public sealed record SunEdge
{
    private const int MostMinutes = 360;

    /// <summary>Some minutes before or after sunrise or sunset.</summary>
    /// <param name="event">Which.</param>
    /// <param name="offsetMinutes">Minutes after it; negative: before it. −360…360.</param>
    /// <exception cref="ArgumentOutOfRangeException">The offset is more than six hours.</exception>
    public SunEdge(SunEvent @event, int offsetMinutes = 0)
    {
        if (offsetMinutes is < -MostMinutes or > MostMinutes)
            throw new ArgumentOutOfRangeException(nameof(offsetMinutes), offsetMinutes, "Hours by the sun lie within six hours of sunrise or sunset.");
        (Event, OffsetMinutes) = (@event, offsetMinutes);
    }

    /// <summary>Sunrise or sunset.</summary>
    public SunEvent Event { get; }

    /// <summary>Minutes after it; negative: before it.</summary>
    public int OffsetMinutes { get; }
}

/// <summary>The hours of one local date.</summary>
public abstract record DayHours
{
    private DayHours() { }

    /// <summary>Open from midnight to midnight.</summary>
    public sealed record Always : DayHours;

    /// <summary>Open between two clock times of the date.</summary>
    /// <param name="From">Opens.</param>
    /// <param name="Until">Shuts; at or before <paramref name="From"/> that is on the next day, whatever rule that day has.</param>
    public sealed record Clock(LocalTime From, LocalTime Until) : DayHours;

    /// <summary>
    /// Open between two times by the sun of the date. From sunset to sunrise ends on the next morning. From sunrise to sunset is
    /// the whole date where the sun does not set, and nothing where it does not rise; from sunset to sunrise the other way round.
    /// Offsets count from a sunrise or sunset that happens.
    /// </summary>
    /// <param name="From">Opens.</param>
    /// <param name="Until">Shuts.</param>
    public sealed record Sun(SunEdge From, SunEdge Until) : DayHours;

    /// <summary>Open on the dates of a letter in force, else shut.</summary>
    public sealed record ByPermit : DayHours;

    /// <summary>Shut.</summary>
    public sealed record Closed : DayHours;

    /// <summary>Not known until somebody has asked and agreed.</summary>
    public sealed record OnRequest : DayHours;
}

/// <summary>The hours of some dates.</summary>
/// <param name="Dates">For which dates it speaks.</param>
/// <param name="Hours">The hours of each.</param>
public sealed record HoursRule(RuleDates Dates, DayHours Hours)
{
    /// <summary>Outside the hours it is open by permit: on the dates of a letter in force the whole date is.</summary>
    public bool OtherwiseByPermit { get; init; }
}
