using Foreshore.Almanac.Light;
using NodaTime;

namespace Foreshore.Guide.Access;

/// <summary>Which dates a session touches: closures and notes are by date.</summary>
public static class SessionDates
{
    /// <summary>The dates by the place's clock on which some of the session falls: a night runs into the next one.</summary>
    public static IReadOnlyList<LocalDate> Dates(this Session session, DateTimeZone zone)
    {
        var (first, last) = (session.Start.InZone(zone).Date, session.End.InZone(zone).Date);
        return [.. Enumerable.Range(0, Period.DaysBetween(first, last) + 1).Select(first.PlusDays)];
    }
}
