using NodaTime;

namespace Foreshore.Almanac.Light;

/// <summary>The stretches of light that people go out for.</summary>
public enum SessionKind
{
    /// <summary>From the sun at −12 degrees to its passing +10, or noon.</summary>
    Dawn,

    /// <summary>While the sun is above +10 degrees.</summary>
    Day,

    /// <summary>From the sun's passing +10 degrees, or noon, down to −12.</summary>
    Dusk,

    /// <summary>From −12 to −12 degrees; the hour each side of solar midnight where the sun stays above that.</summary>
    Night,
}

/// <summary>One session at one place.</summary>
/// <param name="Kind">Which.</param>
/// <param name="Date">Local date; a night bears the evening's.</param>
/// <param name="Start">When it begins.</param>
/// <param name="End">When it ends.</param>
public sealed record Session(SessionKind Kind, LocalDate Date, Instant Start, Instant End)
{
    /// <summary>Whether it is a night in which the sun stays above −12 degrees.</summary>
    public bool IsWhiteNight { get; init; }

    /// <summary>Of a night: while the sun is at −15 degrees or below; null when it never is.</summary>
    public Interval? NearlyDark { get; init; }

    /// <summary>Of a night: while the sun is at −18 degrees or below; null when it never is.</summary>
    public Interval? Dark { get; init; }

    /// <summary>From start to end.</summary>
    public Interval Span => new(Start, End);

    /// <summary>How long it lasts.</summary>
    public Duration Length => End - Start;
}
