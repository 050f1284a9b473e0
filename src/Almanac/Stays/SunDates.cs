using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>Hours by the sun of a place, date by date: sunrise and sunset at −50′ over a level horizon, within seconds (see the checks of the sun).</summary>
internal sealed class SunDates(Position position, DateTimeZone zone, SunEphemeris ephemeris)
{
    private static readonly double Level = Math.Sin(SunDisc.StandardAltitudeDegrees * (Math.PI / 180));

    private readonly SunPath path = ephemeris.SeenFrom(position);

    /// <summary>When hours by the sun are open that begin on a date; null: not at all.</summary>
    internal Interval? Open(DayHours.Sun hours, LocalDate date)
    {
        var (rise, set, isUpAtNoon) = On(date);
        return (hours.From.Event, hours.Until.Event) switch
        {
            (SunEvent.Sunrise, SunEvent.Sunset) => isUpAtNoon ? Between(rise, set) : null,
            (SunEvent.Sunset, SunEvent.Sunrise) => set is null && isUpAtNoon ? null : Between(set, On(date.PlusDays(1)).Rise),
            (SunEvent.Sunrise, _) => rise is null ? null : Between(rise, rise),
            _ => set is null ? null : Between(set, set),
        };

        // Where the sun does not pass the horizon at an end, the date's own end counts.
        Interval? Between(Instant? from, Instant? until)
        {
            var whole = zone.Whole(date);
            var start = from?.Plus(Duration.FromMinutes(hours.From.OffsetMinutes)) ?? whole.Start;
            var end = until?.Plus(Duration.FromMinutes(hours.Until.OffsetMinutes)) ?? whole.End;
            return start < end ? new Interval(start, end) : null;
        }
    }

    /// <summary>The solar day whose noon lies nearest to twelve by the clock of the date.</summary>
    private (Instant? Rise, Instant? Set, bool IsUpAtNoon) On(LocalDate date)
    {
        var clockNoon = JulianDay.DaysFromJ2000(zone.AtLeniently(date + LocalTime.Noon).ToInstant());
        var number = Math.Round(clockNoon + path.LongitudeRadians / SunPath.TurnRadiansPerDay);
        var day = new SunDays.HalfDays(path, path.Transit(number - 0.5), path.Transit(number), path.Transit(number + 0.5));
        return (day.Rising(SunDisc.StandardAltitudeDegrees), day.Setting(SunDisc.StandardAltitudeDegrees), path.At(day.Highest).Up >= Level);
    }
}
