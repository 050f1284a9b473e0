using CsCheck;
using Foreshore.Almanac.Stays;
using Foreshore.Guide.Locations;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Access;

public class HoursNotationTests
{
    [Theory]
    [InlineData("open", "open")]
    [InlineData("At any hour", "open")]
    [InlineData("8:00–18:00", "08:00-18:00")]
    [InlineData("daily 08:00 to 24:00", "08:00-24:00")]
    [InlineData("Open 18:00 until 02:00.", "18:00-02:00")]
    [InlineData("May to October 08:00 - 20:00; closed", "1 May-31 Oct 08:00-20:00; closed")]
    [InlineData("15 May – 14 September, Mon–Fri: 08:00-20:00\nSaturday and Sundays 09:00-17:00", "15 May-14 Sep Mon-Fri 08:00-20:00; Sat,Sun 09:00-17:00")]
    [InlineData("Nov-Feb on request", "1 Nov-29 Feb on request")]
    [InlineData("Sat-Mon by permit", "Mon,Sat,Sun by permit")]
    [InlineData("sunrise to sunset, except by permit", "sunrise-sunset or by permit")]
    [InlineData("30 min before sunrise to 1 min after sunset", "30 min before sunrise-1 min after sunset")]
    [InlineData("sunset-sunrise", "sunset-sunrise")]
    [InlineData("Sundays closed; Mon-Sat 06:30-17:00", "Sun closed; Mon-Sat 06:30-17:00")]
    [InlineData("sun sunrise-sunset", "Sun sunrise-sunset")]
    public void Hours_are_read_and_written_in_one_way(string typed, string kept)
    {
        var hours = HoursNotation.Read(typed);

        Assert.Equal(kept, HoursNotation.Write(hours));
        Assert.Equal(hours, HoursNotation.Read(kept));
    }

    [Theory]
    [InlineData("", "no hours")]
    [InlineData("from dawn", "cannot be read as hours")]
    [InlineData("8 am-6 pm", "cannot be read as hours")]
    [InlineData("08:00", "cannot be read as hours")]
    [InlineData("08:00-25:00", "not a time of day")]
    [InlineData("24:00-08:00", "not a time of day")]
    [InlineData("08:00-08:00", "opens and shuts at the same time")]
    [InlineData("31 Jun-31 Aug open", "no 31 jun")]
    [InlineData("May-Oct", "nothing for them")]
    [InlineData("Monday", "nothing for them")]
    [InlineData("400 min before sunrise-sunset", "within 360 minutes")]
    [InlineData("open or by permit", "stands after hours")]
    [InlineData("May-Oct 08:00-18:00, closed in winter", "cannot be read as hours")]
    public void What_cannot_be_read_is_refused_with_what_to_write(string typed, string words) =>
        Assert.Contains(words, Assert.Throws<NotAcceptedException>(() => HoursNotation.Read(typed)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("", "")]
    [InlineData("first 5:30, last 20:15, every 45 min", "first 05:30 last 20:15 every 45")]
    [InlineData("07:00, 18:30, 9:30", "07:00 09:30 18:30")]
    [InlineData("May–October Mon–Fri first 07:00 last 18:30; May–October Sat, Sun 08:00 12:00; Nov on request; none",
        "1 May-31 Oct Mon-Fri first 07:00 last 18:30; 1 May-31 Oct Sat,Sun 08:00 12:00; 1 Nov-30 Nov on request; no sailings")]
    [InlineData("1 Nov-30 Nov on request; does not sail; agreed 2026-11-28 14:15", "1 Nov-30 Nov on request; no sailings; agreed 2026-11-28 14:15")]
    public void Sailings_are_read_and_written_in_one_way(string typed, string kept)
    {
        var sailings = SailingsNotation.Read(typed);
        Assert.Equal(kept, SailingsNotation.Write(sailings));
        Assert.Equal(sailings, SailingsNotation.Read(kept));
    }

    [Theory]
    [InlineData("hourly", "cannot be read as sailings")]
    [InlineData("first 07:00", "cannot be read as sailings")]
    [InlineData("first 07:00 last 18:00 every 0", "1 to 1440 minutes")]
    [InlineData("07:00 26:00", "not a time of day")]
    [InlineData("agreed tomorrow 14:00", "agreed 2026-11-28 14:15")]
    [InlineData("agreed 2026-02-30 14:00", "agreed 2026-11-28 14:15")]
    public void Sailings_that_cannot_be_read_are_refused_with_what_to_write(string typed, string words) =>
        Assert.Contains(words, Assert.Throws<NotAcceptedException>(() => SailingsNotation.Read(typed)).Message, StringComparison.Ordinal);

    [Fact]
    public void Too_long_and_too_many_are_refused()
    {
        Assert.Contains("1000 letters", Assert.Throws<NotAcceptedException>(() => HoursNotation.Read(new string(' ', 1001))).Message, StringComparison.Ordinal);
        Assert.Contains("20 rules", Assert.Throws<NotAcceptedException>(() => HoursNotation.Read(string.Join(';', Enumerable.Repeat("open", 21)))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Whatever_hours_there_are_come_back_from_their_text() =>
        AnyHours.Sample(hours => Assert.Equal(hours, HoursNotation.Read(HoursNotation.Write(hours))), iter: 2_000);

    [Fact]
    public void Whatever_sailings_there_are_come_back_from_their_text() =>
        AnySailings.Sample(sailings => Assert.Equal(sailings, SailingsNotation.Read(SailingsNotation.Write(sailings))), iter: 2_000);

    internal static readonly Gen<LocalTime> AnyTime = Gen.Int[0, 1439].Select(minutes => LocalTime.Midnight.PlusMinutes(minutes));

    internal static readonly Gen<RuleDates> AnyDates = Gen.Select(Gen.Int[1, 127], Gen.Bool, Gen.Int[0, 365], Gen.Int[0, 365],
        (days, isSeasonal, from, until) => new RuleDates(isSeasonal ? new(Day(from), Day(until)) : null, (Weekdays)days));

    internal static readonly Gen<OpeningHours> AnyHours = Gen.Select(AnyDates, Gen.Int[0, 5], Gen.Select(AnyTime, AnyTime), Gen.Select(Edge, Edge), Gen.Bool, (dates, kind, clock, sun, permit) => kind switch
    {
        0 => new HoursRule(dates, new DayHours.Always()),
        1 => new(dates, new DayHours.Closed()),
        2 => new(dates, new DayHours.OnRequest()),
        3 => new(dates, new DayHours.ByPermit()),
        4 => new(dates, new DayHours.Sun(sun.Item1, sun.Item2)) { OtherwiseByPermit = permit },
        _ => new(dates, new DayHours.Clock(clock.Item1, clock.Item1 == clock.Item2 ? clock.Item2.PlusMinutes(1) : clock.Item2)) { OtherwiseByPermit = permit },
    }).Array[1, 6].Select(rules => new OpeningHours(rules));

    internal static readonly Gen<Timetable> AnySailings = Gen.Select(
        Gen.Select(AnyDates, Gen.Int[0, 3], AnyTime.Array[1, 5], Gen.Int[0, 1440], (dates, kind, times, every) => new SailingRule(dates, kind switch
        {
            0 => new DaySailings.None(),
            1 => new DaySailings.OnRequest(),
            2 => new DaySailings.FirstLast(times[0], times[^1], every == 0 ? null : every),
            _ => (DaySailings)new DaySailings.Times(times),
        })).Array[0, 5],
        Gen.Select(Gen.Int[0, 2000], AnyTime, (day, time) => new LocalDate(2026, 1, 1).PlusDays(day) + time).Array[0, 4],
        (rules, agreed) => new Timetable(rules, agreed));

    private static Gen<SunEdge> Edge => Gen.Select(Gen.Bool, Gen.Int[-360, 360], (rises, minutes) => new SunEdge(rises ? SunEvent.Sunrise : SunEvent.Sunset, minutes));

    private static AnnualDate Day(int ofLeapYear) => new LocalDate(2028, 1, 1).PlusDays(ofLeapYear) is var date ? new(date.Month, date.Day) : default;
}
