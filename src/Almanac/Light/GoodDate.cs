using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Moon;
using Foreshore.Almanac.Stays;
using Foreshore.Almanac.Tides;
using NodaTime;

namespace Foreshore.Almanac.Light;

/// <summary>One session worth going out for.</summary>
/// <param name="Session">Which.</param>
/// <param name="Windows">When the wanted light holds in it and, where they were asked for, tide and access allow it; by start.</param>
/// <param name="Usable">How long together.</param>
public sealed record GoodDate(Session Session, IReadOnlyList<Interval> Windows, Duration Usable)
{
    /// <summary>When the light of the longest window ends, whether or not one can stay so long: another, softer time than turn back.</summary>
    public Instant LightEnds { get; init; }

    /// <summary>How the longest window is reached and left; null where tide and access were not asked.</summary>
    public StayItinerary? Itinerary { get; init; }

    /// <summary>The stay of the longest window, with its turn back; null where tide and access were not asked for.</summary>
    public Stay? Stay { get; init; }

    /// <summary>The stay of each window, in the order of the windows: two periods have two turn backs. Empty where tide and access were not asked for.</summary>
    public IReadOnlyList<Stay?> Stays { get; init; } = [];

    /// <summary>The moon of the session.</summary>
    public required GoodDateMoon Moon { get; init; }

    /// <summary>The tide of the session; null where it was not asked for.</summary>
    public GoodDateTide? Tide { get; init; }
}

/// <summary>The moon of a good date's session.</summary>
/// <param name="Phase">How it is lit in the middle of the session.</param>
/// <param name="Span">Whether it is up as the session begins, and its rise and set within it.</param>
public sealed record GoodDateMoon(MoonPhase Phase, MoonSpan Span)
{
    /// <summary>Whether it stands over the skyline at any time of the session.</summary>
    public bool IsUp => Span.IsUpAtStart || Span.Rise is not null;

    /// <summary>The moon of a session as seen from a place.</summary>
    /// <param name="session">Which session.</param>
    /// <param name="observer">Where, how high, and over which skyline.</param>
    /// <param name="ephemeris">Covers the session.</param>
    public static GoodDateMoon Of(Session session, Observer observer, SkyEphemeris ephemeris)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(ephemeris);
        return new(MoonPhases.At(session.Start + session.Span.Duration / 2), MoonDays.Between(session.Start, session.End, observer, ephemeris.Moon));
    }
}

/// <summary>The tide about a good date's longest window.</summary>
/// <param name="Turns">High and low waters of the session, with the one before and the one after it; those that are known.</param>
/// <param name="MetresAtStart">Height as the window begins, metres above the datum of the curve.</param>
/// <param name="MetresAtEnd">Height as it ends.</param>
public sealed record GoodDateTide(IReadOnlyList<TideExtreme> Turns, double MetresAtStart, double MetresAtEnd)
{
    internal static GoodDateTide? Of(TideCurve? tide, Session session, Interval window)
    {
        if (tide is null || window.Start < tide.From || window.End > tide.To) return null;
        List<TideExtreme> turns = [.. tide.Extremes.Where(turn => turn.Time >= session.Start && turn.Time <= session.End)];
        if (tide.Before(Instant.Max(session.Start, tide.From)) is { } before && !turns.Contains(before)) turns.Insert(0, before);
        if (tide.After(Instant.Min(session.End, tide.To)) is { } after && !turns.Contains(after)) turns.Add(after);
        return new GoodDateTide(turns, tide.MetresAt(window.Start), tide.MetresAt(window.End));
    }
}
