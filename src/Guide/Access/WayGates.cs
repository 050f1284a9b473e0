using Foreshore.Almanac.Stays;
using Foreshore.Almanac.Sun;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Tides;
using NodaTime;

namespace Foreshore.Guide.Access;

/// <summary>A span of time in which nobody knows whether a way is open.</summary>
/// <param name="Words">What is not known, and whom to ask; ready to print.</param>
public sealed record WayGap(Interval Span, string Words);

/// <summary>What on one way opens and shuts by the clock, the calendar or a closure over a span of time, and when nobody knows.</summary>
internal sealed class WayGates
{
    private const int ServiceDayBeginsHour = 4;

    private readonly Location place;
    private readonly Interval span;
    private readonly SunEphemeris sun;
    private readonly IReadOnlyList<Leg> legs;
    private readonly ParkingArea? lot;
    private readonly Walk walkIn, walkOut;
    private readonly List<ClockGate> gates = [];
    private readonly List<WayGap> gaps = [];

    private WayGates(Location place, IReadOnlyList<Leg> legs, ParkingArea? lot, WayWalks walks, Interval span, SunEphemeris sun)
    {
        (this.place, this.legs, this.lot, this.span, this.sun) = (place, legs, lot, span, sun);
        (walkIn, walkOut) = (walks.In ?? 0, walks.Out ?? 0);
    }

    /// <summary>Everything on a way that binds, with the car left in one car park.</summary>
    /// <param name="span">Both ends set; gates are shut outside it.</param>
    /// <param name="sun">Covers the span.</param>
    public static (IReadOnlyList<ClockGate> Gates, IReadOnlyList<WayGap> Gaps) Of(
        VantagePoint stance, Location place, IReadOnlyList<Leg> legs, ParkingArea? lot, WayWalks walks, PlaceWater water, Interval span, SunEphemeris sun)
    {
        var way = new WayGates(place, legs, lot, walks, span, sun);
        // Nobody is still there, or on the way back, when a closure or a warning begins to count.
        way.Closed(date => place.StopsOn(stance, date).Count > 0, place.Closures.Count + place.HazardNotes.Count > 0, 0, "closed or warned against");
        way.Find(water);
        return (way.gates, way.gaps);
    }

    /// <summary>The car stands after the last drive: what rides come after it are the boat's and the bus's.</summary>
    private int Parked => legs.Select((leg, i) => (leg, i)).Where(one => one.leg.Kind == LegKind.Drive).Select(one => one.i).DefaultIfEmpty(-1).Last();

    private void Find(PlaceWater water)
    {
        Hours(place.Hours, place.HoursAreToBeEntered, place.Permits(), 0, $"{place.Name} is closed", $"the hours of {place.Name}", place.AskWhom);
        for (var i = 0; i < legs.Count; i++)
        {
            var leg = legs[i];
            Hours(leg.Hours, leg.HoursAreToBeEntered, place.PermitsFor(leg), RideFrom(i), $"{leg.Name} is shut", $"the hours of \"{leg.Name}\"", leg.AskWhom);
            Closed(date => place.IsClosed(leg, date), place.Closures.Any(closure => closure.Leg == leg), RideFrom(i), $"{leg.Name} is closed");
            if (leg.Ferry is { } ferry) Boat(leg, ferry, i);
        }

        if (lot is null) return;
        Hours(lot.Hours, false, place.Permits(), RideFrom(Parked + 1), $"{lot.Name} is locked", $"the hours of {lot.Name}", lot.AskWhom);
        Closed(date => place.IsClosed(lot, date), place.Closures.Any(closure => closure.ParkingArea == lot), RideFrom(Parked + 1), $"{lot.Name} is closed");
        if (LotFlood.Dry(lot, span, water) is { } dry)
            Gate(dry, RideFrom(Parked + 1), $"{lot.Name} is under water");
    }

    private void Hours(OpeningHours? hours, bool isToBeEntered, IReadOnlyList<DateInterval> permits, double ride, string shut, string what, string? ask)
    {
        if (isToBeEntered) gaps.Add(new(span, $"{what} are not entered yet"));
        if (hours is null || hours.IsAlways) return;
        var open = hours.Over(span, place.Zone, place.Position, sun, permits);
        Gate(Both(open.Open, open.Unknown), ride, shut);
        gaps.AddRange(open.Unknown.Select(unknown => new WayGap(unknown, $"{what} are on request{Ask(ask)}")));
    }

    /// <summary>What is still open where the days reckoned with end calls nobody back: that end is no lock.</summary>
    private void Gate(IReadOnlyList<Interval> open, double ride, string shut) =>
        gates.Add(new([.. open.Select(one => new Interval(one.Start <= span.Start ? null : one.Start, one.End >= span.End ? null : one.End))], ride, walkIn, walkOut, shut));

    private void Closed(Func<LocalDate, bool> on, bool ever, double ride, string closed)
    {
        if (!ever) return;
        Gate(OpenDates(date => !on(date)), ride, closed);
    }

    /// <summary>From the first landing of a day to the last check-in back: nobody is counted on who would have to stay over night.</summary>
    private void Boat(Leg leg, FerryFacts ferry, int index)
    {
        var (crossing, checkIn) = (Duration.FromMinutes(ferry.CrossingMinutes), Duration.FromMinutes(ferry.LastCheckInMinutes));
        var (there, back) = (ferry.Out.Over(span, place.Zone), ferry.Back.Over(span, place.Zone));
        var homeSide = HomeSide(index);
        var landings = there.Departures.Where(time => homeSide.All(gate => Holds(gate.Open, time - checkIn - Duration.FromMinutes(gate.Ride)))).Select(time => time + crossing);
        var checkIns = back.Departures.Where(time => homeSide.All(gate => Holds(gate.Open, time + crossing + Duration.FromMinutes(gate.Ride)))).Select(time => time - checkIn);
        var days = landings.GroupBy(ServiceDay).ToDictionary(day => day.Key, day => day.Min());
        List<Interval> sails =
        [
            .. checkIns.GroupBy(ServiceDay).OrderBy(day => day.Key).Where(day => days.TryGetValue(day.Key, out var first) && first < day.Max())
                .Select(day => new Interval(days[day.Key], day.Max())),
        ];
        List<Interval> unknown = [.. there.Unknown.Concat(back.Unknown)];
        // While nobody knows the sailings the light is told as if it sailed; the gap says that it is not judged.
        gates.Add(new(Both(sails, unknown), RideFrom(index + 1), walkIn, walkOut, $"no boat ({leg.Name})"));
        gaps.AddRange(unknown.Select(one => new WayGap(one, $"whether \"{leg.Name}\" sails is not known{Ask(leg.AskWhom)}")));
    }

    /// <summary>Roads and the car park between home and a ferry: whoever lands must still get through them.</summary>
    private List<(IReadOnlyList<Interval> Open, double Ride)> HomeSide(int ferry)
    {
        List<(IReadOnlyList<Interval>, double)> gatesBefore = [];
        for (var i = 0; i < ferry; i++)
            if (legs[i].Hours is { IsAlways: false } hours)
                gatesBefore.Add((hours.Over(span, place.Zone, place.Position, sun, place.PermitsFor(legs[i])).Open, legs.Take(ferry).Skip(i).Sum(leg => leg.Minutes ?? 0)));
        if (lot?.Hours is { IsAlways: false } locked && Parked < ferry)
            gatesBefore.Add((locked.Over(span, place.Zone, place.Position, sun, place.Permits()).Open, legs.Take(ferry).Skip(Parked + 1).Sum(leg => leg.Minutes ?? 0)));
        return gatesBefore;
    }

    private LocalDate ServiceDay(Instant time) => (time - Duration.FromHours(ServiceDayBeginsHour)).InZone(place.Zone).Date;

    private List<Interval> OpenDates(Func<LocalDate, bool> isOpen)
    {
        var open = new List<Interval>();
        var last = span.End.InZone(place.Zone).Date;
        for (var date = span.Start.InZone(place.Zone).Date; date <= last; date = date.PlusDays(1))
        {
            if (!isOpen(date)) continue;
            var (start, end) = (place.Zone.AtStartOfDay(date).ToInstant(), place.Zone.AtStartOfDay(date.PlusDays(1)).ToInstant());
            if (open.Count > 0 && open[^1].End == start) open[^1] = new(open[^1].Start, end);
            else open.Add(new(start, end));
        }

        return open;
    }

    /// <summary>Rides from a leg on, in minutes; what nobody has timed is said elsewhere.</summary>
    private double RideFrom(int leg) => legs.Skip(leg).Where(one => one.Kind != LegKind.Walk).Sum(one => (one.Minutes ?? 0) + (one.Ferry?.LastCheckInMinutes ?? 0));

    private static string Ask(string? whom) => whom is null ? "" : $": ask {whom}";

    private static bool Holds(IReadOnlyList<Interval> open, Instant time) => open.Any(one => one.Contains(time));

    private static List<Interval> Both(IReadOnlyList<Interval> one, IReadOnlyList<Interval> other)
    {
        if (other.Count == 0) return [.. one];
        var both = new List<Interval>();
        foreach (var next in one.Concat(other).OrderBy(interval => interval.Start))
        {
            if (both.Count > 0 && next.Start <= both[^1].End) both[^1] = new(both[^1].Start, Instant.Max(both[^1].End, next.End));
            else both.Add(next);
        }

        return both;
    }
}
