using NodaTime;

namespace Foreshore.Almanac.Light;

/// <summary>Why a session is missing on a date.</summary>
public enum SessionAbsence
{
    /// <summary>It is not missing.</summary>
    None,

    /// <summary>Dawn, dusk, night: the sun stays above +10 degrees round that midnight.</summary>
    StaysHigh,

    /// <summary>Dawn, dusk: the white night reaches to the sun's passing +10 degrees and leaves nothing between.</summary>
    WhiteNightToDay,

    /// <summary>Day: the sun does not reach +10 degrees.</summary>
    StaysLow,

    /// <summary>Dawn, day, dusk: the sun stays below −12 degrees.</summary>
    StaysDark,
}

/// <summary>
/// The sessions of one solar day: the one whose noon falls on the date. The night is the one that follows its dusk.
/// </summary>
/// <param name="Date">Local date.</param>
/// <param name="Dawn">Null when missing.</param>
/// <param name="Day">Null when missing.</param>
/// <param name="Dusk">Null when missing.</param>
/// <param name="Night">Null when missing.</param>
public sealed record SessionDay(LocalDate Date, Session? Dawn, Session? Day, Session? Dusk, Session? Night)
{
    /// <summary>Why there is no dawn.</summary>
    public SessionAbsence DawnAbsence { get; init; }

    /// <summary>Why there is no day.</summary>
    public SessionAbsence DayAbsence { get; init; }

    /// <summary>Why there is no dusk.</summary>
    public SessionAbsence DuskAbsence { get; init; }

    /// <summary>Why there is no night.</summary>
    public SessionAbsence NightAbsence { get; init; }

    /// <summary>The session of a kind; null when missing.</summary>
    public Session? Of(SessionKind kind) => kind switch
    {
        SessionKind.Dawn => Dawn,
        SessionKind.Day => Day,
        SessionKind.Dusk => Dusk,
        SessionKind.Night => Night,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "There is no such session."),
    };

    /// <summary>Why the session of a kind is missing.</summary>
    public SessionAbsence AbsenceOf(SessionKind kind) => kind switch
    {
        SessionKind.Dawn => DawnAbsence,
        SessionKind.Day => DayAbsence,
        SessionKind.Dusk => DuskAbsence,
        SessionKind.Night => NightAbsence,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "There is no such session."),
    };

    /// <summary>The same in words, for a reader; null when the session is there.</summary>
    public string? WhyNo(SessionKind kind) => AbsenceOf(kind) switch
    {
        SessionAbsence.None => null,
        SessionAbsence.StaysHigh => "the sun stays above 10°: only day",
        SessionAbsence.WhiteNightToDay => "the white night runs into the day",
        SessionAbsence.StaysLow => "the sun stays below 10°",
        SessionAbsence.StaysDark => "the sun stays below −12°: only night",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "There is no such reason."),
    };

    /// <summary>Those that are there, in order of time.</summary>
    public IEnumerable<Session> All
    {
        get
        {
            if (Dawn is not null) yield return Dawn;
            if (Day is not null) yield return Day;
            if (Dusk is not null) yield return Dusk;
            if (Night is not null) yield return Night;
        }
    }
}
