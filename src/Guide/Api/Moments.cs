using NodaTime;

namespace Foreshore.Guide.Api;

/// <summary>Times as the API gives them: ISO 8601 with the place's own offset, to the second.</summary>
internal static class Moments
{
    public static DateTimeOffset At(this Instant instant, DateTimeZone zone)
    {
        var second = Instant.FromUnixTimeSeconds((long)Math.Round(instant.ToUnixTimeTicks() / 1e7));
        // ISO 8601 offsets have no seconds; the few old zones that do are printed with the nearest minute, the moment itself kept.
        var offset = zone.GetUtcOffset(second);
        var minutes = (int)Math.Round(offset.Seconds / 60.0);
        return second.WithOffset(Offset.FromSeconds(minutes * 60)).ToDateTimeOffset();
    }

    public static DateTimeOffset? At(this Instant? instant, DateTimeZone zone) => instant?.At(zone);

    public static DateOnly Iso(this LocalDate date) => date.ToDateOnly();

    public static DateOnly? Iso(this LocalDate? date) => date?.ToDateOnly();

    public static TimeOnly? Iso(this LocalTime? time) => time?.ToTimeOnly();
}
