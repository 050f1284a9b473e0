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
    private readonly double lotWalk;
    private readonly List<ClockGate> gates = [];
    private readonly List<WayGap> gaps = [];

    private WayGates(Location place, IReadOnlyList<Leg> legs, RouteParking? lot, WayWalks walks, Interval span, SunEphemeris sun)
    {
        (this.place, this.legs, this.lot, this.span, this.sun) = (place, legs, lot?.ParkingArea, span, sun);
        lotWalk = lot?.WalkMinutes ?? 0;
        (walkIn, walkOut) = (walks.In ?? 0, walks.Out ?? 0);
    }

    /// <summary>Everything on a way that binds, with the car left in one car park.</summary>
    /// <param name="span">Both ends set; gates are shut outside it.</param>
    /// <param name="sun">Covers the span.</param>
    public static (IReadOnlyList<ClockGate> Gates, IReadOnlyList<WayGap> Gaps) Of(
        VantagePoint stance, Location place, IReadOnlyList<Leg> legs, RouteParking? lot, WayWalks walks, PlaceWater water, Interval span, SunEphemeris sun)
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
            if (leg.Ferry is { } ferry) Boat(leg, ferry, i, water);
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

    /// <summary>
    /// From the first landing of a day to the last check-in back from which one still gets home: nobody is counted on who would have
    /// to stay over night.
    /// </summary>
    private void Boat(Leg leg, FerryFacts ferry, int index, PlaceWater water)
    {
        var (crossing, checkIn) = (Duration.FromMinutes(ferry.CrossingMinutes), Duration.FromMinutes(ferry.LastCheckInMinutes));
        var (there, back) = (ferry.Out.Over(span, place.Zone), ferry.Back.Over(span, place.Zone));
        var homeSide = HomeSide(index, water);
        var backs = back.Departures.ToLookup(ServiceDay);
        var sails = new List<Interval>();
        foreach (var day in there.Departures.Where(time => homeSide.All(gate => gate.At(time - checkIn - gate.Ride) is not null)).GroupBy(ServiceDay))
        {
            var first = day.Min();
            var last = backs[day.Key].Where(time => homeSide.All(gate => gate.At(time + crossing + gate.Ride) is { } open
                && open.End >= time + crossing + gate.Ride + gate.InHand && (!gate.HoldsTheCar || open == gate.At(first - checkIn - gate.Ride)))).DefaultIfEmpty(first).Max();
            if (last - checkIn > first + crossing) sails.Add(new(first + crossing, last - checkIn));
        }

        List<Interval> unknown = [.. there.Unknown.Concat(back.Unknown)];
        // While nobody knows the sailings the light is told as if it sailed; the gap says that it is not judged.
        gates.Add(new(Both([.. sails.OrderBy(one => one.Start)], unknown), RideFrom(index + 1), walkIn, walkOut, $"no boat ({leg.Name})"));
        gaps.AddRange(unknown.Select(one => new WayGap(one, $"whether \"{leg.Name}\" sails is not known{Ask(leg.AskWhom)}")));
    }

    /// <summary>Something between home and a boat through which whoever has landed must still get.</summary>
    /// <param name="Ride">From the landing to it, at the slowest.</param>
    /// <param name="InHand">Time in hand before it closes.</param>
    /// <param name="HoldsTheCar">The car stands there: it must come out in the opening in which it went in.</param>
    private sealed record HomeGate(IReadOnlyList<Interval> Open, Duration Ride, Duration InHand, bool HoldsTheCar)
    {
        public Interval? At(Instant time) => Open.Where(one => one.Contains(time)).Cast<Interval?>().FirstOrDefault();
    }

    /// <summary>Roads, crossings and the car park between home and a boat.</summary>
    private List<HomeGate> HomeSide(int ferry, PlaceWater water)
    {
        var found = new List<HomeGate>();
        for (var i = 0; i < ferry; i++)
        {
            if (legs[i].Hours is { IsAlways: false } hours)
                found.Add(new(hours.Over(span, place.Zone, place.Position, sun, place.PermitsFor(legs[i])).Open, Slowest(i, ferry), Duration.Zero, false));
            if (legs[i].Crossing is { } crossing && water.Metres(crossing.PassableBelow) is { } height && water.Curve is { } tide)
                found.Add(new([.. tide.Below(height - Allowance.Usual.TideMetres)], Slowest(i, ferry), Duration.FromMinutes(StayPlan.ReserveMinutes), false));
        }

        if (lot is null || Parked >= ferry) return found;
        var toCar = Slowest(Parked + 1, ferry) + Duration.FromMinutes(lotWalk * Slow(1));
        if (lot.Hours is { IsAlways: false } locked)
            found.Add(new(locked.Over(span, place.Zone, place.Position, sun, place.Permits()).Open, toCar, Duration.Zero, true));
        if (LotFlood.Dry(lot, span, water) is { } dry)
            found.Add(new(dry, toCar, Duration.Zero, true));
        return found;
    }

    /// <summary>From a boat's landing back to where a leg begins, in the dark and over its ground.</summary>
    private Duration Slowest(int leg, int ferry) => Duration.FromMinutes(legs.Take(ferry).Skip(leg).Sum(one =>
        (one.Minutes ?? 0) * (one.Kind == LegKind.Walk ? Slow(WayWalks.GroundOf(one)) : 1) + (one.Ferry?.LastCheckInMinutes ?? 0)));

    private static double Slow(double ground) => Math.Max(StayPlan.LeastCutOffFactor, Party.One.Factor(isDark: true, ground));

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
