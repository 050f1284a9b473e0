using Foreshore.Almanac.Light;
using Foreshore.Almanac.Stays;
using Foreshore.Almanac.Sun;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Tides;
using NodaTime;

namespace Foreshore.Guide.Access;

/// <summary>The ways to a stance in one session: those that are open, in the club's order. The first of them is the one judged.</summary>
/// <param name="Stops">What keeps one off whatever the way.</param>
/// <param name="NoWayIn">Why none is open, or null.</param>
/// <param name="Open">Open on every date of the session. One whose car park floods is left out where another stays dry.</param>
/// <param name="Floods">What the tide does to the car of the first way, in words; null where it stays dry as far as known.</param>
/// <param name="FloodKeepsOff">A night in which the car would certainly stand in the water by every way.</param>
public sealed record SessionWays(IReadOnlyList<string> Stops, string? NoWayIn, IReadOnlyList<Way> Open, string? Floods, bool FloodKeepsOff);

/// <summary>
/// All ways to one stance over a span of days, worked out once: which are open in a session, when one can be there by each, and
/// which of them a picture goes by. Board, strip, dates, season table, tide page and API ask here and nowhere else.
/// </summary>
public sealed class StanceWays
{
    private static readonly Duration Margin = Duration.FromDays(1);

    private readonly VantagePoint stance;
    private readonly Location place;
    private readonly SunEphemeris sun;
    private readonly PlaceWater water;
    private readonly Interval span;
    private readonly Dictionary<Way, IReadOnlyList<Stay>> stays = [];
    private readonly Dictionary<(Way, TideWishes), UsableTime> times = [];
    private readonly Dictionary<Session, SessionWays> sessions = [];

    /// <param name="stance">As the reader may see it.</param>
    /// <param name="place">Its place.</param>
    /// <param name="water">The tide of the days, with a margin of some days.</param>
    /// <param name="from">Beginning of the days to be judged.</param>
    /// <param name="to">End of the days to be judged.</param>
    /// <param name="sun">Covers the days and two more at either end, where it can.</param>
    public StanceWays(VantagePoint stance, Location place, PlaceWater water, Instant from, Instant to, SunEphemeris sun)
    {
        (this.stance, this.place, this.water, this.sun) = (stance, place, water, sun);
        // A day about them says why light between two stays is lost; gates look another two beyond that.
        span = new(Instant.Max(sun.From, from - Margin), Instant.Min(sun.To, to + Margin));
        All = Way.All(stance, place, water, new(Instant.Max(sun.From, span.Start - 2 * Margin), Instant.Min(sun.To, span.End + 2 * Margin)), sun);
    }

    /// <summary>Every way the club may recommend, in its order, open or not.</summary>
    public IReadOnlyList<Way> All { get; }

    public PlaceWater Water => water;

    /// <summary>When one can be there by a way, over all the days.</summary>
    public IReadOnlyList<Stay> Stays(Way way)
    {
        if (!stays.TryGetValue(way, out var known))
        {
            // Nothing is known of the tide on some of the days: what it limits has no stay there.
            stays[way] = known = way.Plan.NeedsTide && water.Curve is null ? [] : StayTimes.Between(way.Plan, water.Curve, span.Start, span.End, sun);
        }

        return known;
    }

    /// <summary>What stays by a way and a picture's wishes leave.</summary>
    public UsableTime Time(Way way, TideWishes wishes)
    {
        if (!times.TryGetValue((way, wishes), out var known))
        {
            var (tide, ground) = water.Curve is null ? (null, null) : (wishes.Tide, wishes.Ground);
            times[(way, wishes)] = known = UsableTime.Of(Stays(way), tide, ground, water.Curve, wishes.Years, span.Start, span.End);
        }

        return known;
    }

    /// <summary>Wanted light that can be used at the dark stance by a way, in no verdict, season table or date.</summary>
    public IReadOnlyList<LightRun> AtDarkStance(Way way, IReadOnlyList<LightRun> light)
    {
        if (light.Count == 0 || way.Plan is not { IsWaveExposed: true, DarkStance: not null } || (way.Plan.NeedsTide && water.Curve is null))
            return [];
        var (begin, end) = (light.Min(run => run.Start), light.Max(run => run.End));
        return
        [
            .. from time in StayTimes.AtDarkStance(way.Plan, water.Curve, begin, end, sun)
               from run in light
               let piece = new LightRun(run.Light, Instant.Max(run.Start, time.Start), Instant.Min(run.End, time.End))
               where piece.End - piece.Start >= Duration.FromMinutes(LightTable.Of(run.Light).LeastMinutes)
               select piece,
        ];
    }

    /// <summary>The ways of one session.</summary>
    public SessionWays In(Session session)
    {
        if (!sessions.TryGetValue(session, out var known))
            sessions[session] = known = Find(session);
        return known;
    }

    /// <summary>
    /// The way that a picture goes by in a session: the first that is open. Where it leaves no window and another does, that one.
    /// A first way that can't be judged is never replaced.
    /// </summary>
    /// <param name="light">The wanted light of the session.</param>
    /// <returns>Null where no way is open.</returns>
    public Way? Shown(Session session, TideWishes wishes, IReadOnlyList<LightRun> light)
    {
        var open = In(session).Open;
        if (open.Count <= 1 || light.Count == 0 || !open[0].TellsTurnBackIn(session.Span) || HasWindow(open[0]))
            return open.Count == 0 ? null : open[0];
        return open.Skip(1).FirstOrDefault(way => way.TellsTurnBackIn(session.Span) && HasWindow(way)) ?? open[0];

        bool HasWindow(Way way) => Time(way, wishes).Cut(light).Count > 0;
    }

    private SessionWays Find(Session session)
    {
        var dates = session.Dates(place.Zone);
        IReadOnlyList<string> stops = [.. dates.SelectMany(date => place.StopsOn(stance, date)).Distinct()];
        var open = All.Where(way => IsOpen(way, dates)).ToList();
        if (open.Count == 0)
            return new(stops, StopWords.NoWayIn, [], null, false);

        // The car is there from before the session until it is walked back to.
        var floods = open.ToDictionary(way => way, way => way.Lot is { } lot ? LotFlood.In(lot, CarIsThere(way, session), water, place.Zone) : null);
        var dry = open.Where(way => floods[way] is not { IsCertain: true }).ToList();
        var first = dry.Count > 0 ? dry : open;
        return new(stops, null, first, floods[first[0]]?.Words, dry.Count == 0 && session.Kind == SessionKind.Night);
    }

    private static Interval CarIsThere(Way way, Session session) => new(
        session.Start - Minutes(way, way.Plan.WalkIn), session.End + Minutes(way, way.Plan.WalkOut) + Duration.FromMinutes(way.Plan.Party.PackingMinutes));

    private static Duration Minutes(Way way, Walk? walk) =>
        walk is { } known ? Duration.FromMinutes(known.Minutes * way.Plan.Party.Factor(isDark: true, known.Ground)) : Duration.Zero;

    /// <summary>Whether none of its legs, nor its car park, is closed on any of the dates.</summary>
    public bool IsOpen(Way way, IReadOnlyList<LocalDate> dates) =>
        !dates.Any(date => way.Route.Legs.Any(leg => place.IsClosed(leg, date)) || (way.Lot is { } lot && place.IsClosed(lot, date)));
}
