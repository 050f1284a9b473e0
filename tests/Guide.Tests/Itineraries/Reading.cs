using Foreshore.Almanac.Stays;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Itineraries;

/// <summary>What is stored of a stance and its ways, copied into flat records. Nothing is computed here.</summary>
internal static class Reading
{
    /// <summary>Common practice, no source: rock that is wet or weedy, and boulders, take 1.75 times as long, soft ground 1.45.</summary>
    private const double Rock = 1.75, Soft = 1.45;

    public static FlatStance Of(VantagePoint stance, Location place) => new(stance.Name, stance.Reach is Reach.Waves or Reach.Unknown, stance.Reach == Reach.None)
    {
        WalkIn = stance.WalkInMinutes,
        WalkOut = stance.WalkOutMinutes,
        Beyond = stance.MinutesToBeyondReach,
        WalkedInTheDark = stance.WalkedInTheDark,
        CutMetres = Metres(stance.PathCutOff, place),
        NeverCut = stance.IsNeverCutOff,
        LimitMetres = Metres(stance.HighestUsableTide, place),
        GroundLowerMetres = stance.Ground is { } ground ? (ground.StationId == place.TideStationId ? ground.Metres - ground.PlusMinusMetres : double.NaN) : null,
        WatchMinutes = stance.WatchPlace?.MinutesToStance,
        SeesFromMinusNine = stance.WatchPlace?.SeenFromMinusNineBecause is not null,
        Shut = [.. Closures(place, closure => closure.Target == ClosureTarget.Location || (closure.Target == ClosureTarget.VantagePoint && closure.VantagePoint == stance)), .. Warnings(stance, place)],
        PlaceHours = Rules(place.Hours),
        PlaceHoursMissing = place.Hours is null && place.Byelaws is not null,
        Permits = Letters(place, leg: null),
        Ways = [.. Ways(stance, place)],
    };

    private static IEnumerable<FlatWay> Ways(VantagePoint stance, Location place)
    {
        var routes = stance.Ways.Count > 0
            ? stance.Ways.OrderBy(way => way.Order).Select(way => (way.Route, Own: (StanceWay?)way))
            : place.Routes.OrderBy(route => route.Order).Select(route => (Route: route, Own: (StanceWay?)null));
        var isFirst = true;
        foreach (var (route, own) in routes)
        {
            var legs = route.Legs.OrderBy(leg => leg.Order).Select(leg => Of(leg, place)).ToList();
            var lots = route.Parking.OrderBy(lot => lot.Order).ToList();
            var way = new FlatWay(route.Name, legs, null)
            {
                IsOwn = own is not null,
                IsFirst = isFirst,
                End = own?.EndMinutes,
                WholeIn = own?.WalkInMinutes,
                WholeOut = own?.WalkOutMinutes,
                FirstLotWalk = lots.Count > 0 ? lots[0].WalkMinutes : null,
            };
            isFirst = false;
            if (lots.Count == 0) yield return way;
            foreach (var lot in lots)
                yield return way with { Lot = Of(lot.ParkingArea, place), LotWalk = lot.WalkMinutes };
        }
    }

    private static FlatLot Of(ParkingArea lot, Location place) =>
        new(lot.Name, Rules(lot.Hours), Metres(lot.FloodsAbove, place), Closures(place, closure => closure.ParkingArea == lot));

    private static FlatLeg Of(Leg leg, Location place) => new(leg.Name,
        leg.Kind switch { LegKind.Drive => Means.Drive, LegKind.Ferry => Means.Ferry, LegKind.Walk => Means.Walk, _ => Means.Other },
        leg.Ferry?.CrossingMinutes ?? leg.Minutes,
        leg.Ground switch { LegGround.WetRock or LegGround.Weed or LegGround.Boulders => Rock, LegGround.SoftGround => Soft, _ => 1 },
        leg.LegalStatus is not (LegalStatus.Private or LegalStatus.Closed or LegalStatus.Unknown))
    {
        KnownInTheDark = leg.LightAtNight is LightAtNight.Lit or LightAtNight.KnownInTheDark,
        CutUnknown = leg.TidalCut == TidalCut.Unknown && leg.Kind is LegKind.Walk or LegKind.Other,
        CutMetres = Metres(leg.Crossing?.PassableBelow, place),
        CutMinutes = leg.Crossing?.MinutesFromStance,
        Hours = Rules(leg.Hours),
        HoursMissing = leg.Hours is null && leg.HoursText is not null,
        Out = leg.Ferry is { } ferry ? Board(ferry.Out) : null,
        Back = leg.Ferry is { } boat ? Board(boat.Back) : null,
        CheckIn = leg.Ferry?.LastCheckInMinutes ?? 0,
        Shut = Closures(place, closure => closure.Leg == leg),
        Permits = Letters(place, leg),
    };

    private static double? Metres(TideHeight? height, Location place) => height is null ? null
        : height.Datum == TideDatum.ChartDatum && height.StationId == place.TideStationId ? height.Metres : double.NaN;

    private static List<Shut> Closures(Location place, Func<Closure, bool> isOf) =>
    [
        .. place.Closures.Where(closure => closure.State != ClosureState.Lifted && isOf(closure)).Select(closure => new Shut(closure.From, closure.Until,
            closure.YearlyFrom is { } from ? from.Month * 100 + from.Day : null, closure.YearlyUntil is { } until ? until.Month * 100 + until.Day : null)),
    ];

    /// <summary>Severe notes about water, rockfall or the way back, ended or rejected alone, and a cliff's foot nearer than the cliff is high: nobody stands there.</summary>
    private static IEnumerable<Shut> Warnings(VantagePoint stance, Location place)
    {
        if (stance.Cliff is { AcceptedBecause: null } cliff && cliff.DistanceMetres < cliff.HeightMetres) yield return new(null, null, null, null);
        foreach (var note in place.HazardNotes.Where(note => note.Severity == 4 && note.State is HazardState.Reported or HazardState.Confirmed && (note.VantagePoint is null || note.VantagePoint == stance)))
            if (note.Kind is HazardKind.Waves or HazardKind.BoatWash or HazardKind.CutOff or HazardKind.ColdWater or HazardKind.Rockfall or HazardKind.Path) yield return new(note.From, null, null, null);
    }

    private static List<Permit> Letters(Location place, Leg? leg) =>
        [.. place.PermissionLetters.Where(letter => letter.Leg == leg).Select(letter => new Permit(letter.Dated, letter.Until))];

    private static List<Rule>? Rules(OpeningHours? hours) => hours is null ? null : [.. hours.Rules.Select(Of)];

    private static Rule Of(HoursRule rule)
    {
        var (begins, ends, days) = Dates(rule.Dates);
        var empty = new Rule(begins, ends, days, Opens.Closed, 0, 0, false, false, rule.OtherwiseByPermit);
        return rule.Hours switch
        {
            DayHours.Always => empty with { Kind = Opens.Always },
            DayHours.ByPermit => empty with { Kind = Opens.Permit },
            DayHours.OnRequest => empty with { Kind = Opens.Request },
            DayHours.Clock clock => empty with { Kind = Opens.Clock, From = Minutes(clock.From), Until = Minutes(clock.Until) },
            DayHours.Sun sun => empty with
            {
                Kind = Opens.Sun,
                From = sun.From.OffsetMinutes,
                Until = sun.Until.OffsetMinutes,
                FromRise = sun.From.Event == SunEvent.Sunrise,
                UntilRise = sun.Until.Event == SunEvent.Sunrise,
            },
            _ => empty,
        };
    }

    private static Sails Board(Timetable table) => new([.. table.Rules.Select(Of)], table.Agreed);

    private static SailRule Of(SailingRule rule)
    {
        var (begins, ends, days) = Dates(rule.Dates);
        return new(begins, ends, days, rule.Sailings switch
        {
            DaySailings.FirstLast day => Between(Minutes(day.First), Minutes(day.Last), day.IntervalMinutes),
            DaySailings.Times day => [.. day.At.Select(Minutes)],
            DaySailings.None => [],
            _ => null,
        });
    }

    private static double[] Between(double first, double last, int? every)
    {
        if (last < first) last += 1440;
        var found = new List<double> { first };
        while (every is { } interval && found[^1] + interval < last) found.Add(found[^1] + interval);
        found.Add(last);
        return [.. found];
    }

    private static (int Begins, int Ends, int Days) Dates(RuleDates dates) => dates.Season is { } season
        ? (season.From.Month * 100 + season.From.Day, season.Until.Month * 100 + season.Until.Day, (int)dates.Days)
        : (101, 1231, (int)dates.Days);

    private static double Minutes(LocalTime time) => time.Hour * 60 + time.Minute;
}
