using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Almanac.Tides;
using NodaTime;
using NodaTime.TimeZones;

namespace Foreshore.Almanac.Stays;

/// <summary>The shore that the tests of stays share: a tide of half cosines, low 0.8 m and high 5.4 m, 6.2 h from water to water.</summary>
internal static class Shore
{
    internal static readonly Position Place = new(44.9, -66.99);
    internal static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["America/New_York"];
    private static readonly ZoneLocalMappingResolver Later = Resolvers.CreateMappingResolver(Resolvers.ReturnLater, Resolvers.ReturnStartOfIntervalAfter);
    private static readonly ZoneLocalMappingResolver Earlier = Resolvers.CreateMappingResolver(Resolvers.ReturnEarlier, Resolvers.ReturnStartOfIntervalAfter);
    internal static readonly Duration Half = Duration.FromHours(6.2);

    internal static StayPlan Plan { get; } = new(Place, Zone) { WalkIn = 0, WalkOut = 0 };

    /// <summary>A gate with the same hours every day of 2026; one that shuts at or before it opens shuts on the next day.</summary>
    internal static ClockGate Gate(LocalTime opens, LocalTime closes, double rideMinutes, Walk walkIn, Walk walkOut, string name) => new(
        [
            .. Enumerable.Range(-3, 372).Select(day => new LocalDate(2026, 1, 1).PlusDays(day)).Select(date => new Interval(
                date.At(opens).InZone(Zone, Later).ToInstant(), date.PlusDays(closes <= opens ? 1 : 0).At(closes).InZone(Zone, Earlier).ToInstant())),
        ], rideMinutes, walkIn, walkOut, name);

    /// <summary>Low water falls on the time given; six days either side are known.</summary>
    internal static TideCurve Tide(Instant low)
    {
        var waters = Enumerable.Range(-24, 49).Select(i => new TideExtreme(low + Half * i, i % 2 == 0 ? 0.8 : 5.4, i % 2 != 0)).ToList();
        var table = new TableTide(waters);
        return table.Between(table.Valid.Start, table.Valid.End);
    }

    /// <summary>The stays of the plan whose turn back or end lies nearest after a time.</summary>
    internal static Stay After(StayPlan plan, TideCurve? tide, Instant time) =>
        StayTimes.Between(plan, tide, time, time + Duration.FromHours(30), Coast.Year2026.Sun).First(stay => stay.TurnBack is null || stay.TurnBack > time);

    internal static double Hours(Instant? time, Instant since) => (time!.Value - since).TotalHours;
}
