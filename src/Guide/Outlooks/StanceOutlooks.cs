using Foreshore.Almanac.Light;
using Foreshore.Almanac.Stays;
using Foreshore.Almanac.Tides;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Tides;
using NodaTime;

namespace Foreshore.Guide.Outlooks;

/// <summary>The way a judgement goes by, with what its strip shows.</summary>
/// <param name="Stays">Of the way, about the session.</param>
/// <param name="Tide">Null where it is not known over all of the session.</param>
public sealed record JudgedWay(Way Way, IReadOnlyList<Stay> Stays, TideCurve? Tide, PlaceWater Water, TideWishes Wishes);

/// <summary>Sessions, stays and facts of one stance over the weekend, computed once for all its compositions.</summary>
internal sealed class StanceOutlooks
{
    private static readonly Duration OneDay = Duration.FromDays(1);

    private readonly VantagePoint stance;
    private readonly Location place;
    private readonly DateTimeZone zone;
    private readonly SkyEphemeris ephemeris;
    private readonly PlaceWater water;
    private readonly Dictionary<LocalDate, SessionDay> sessions = [];
    private readonly Dictionary<string, IReadOnlyList<WayStays>> ways = [];
    private readonly Dictionary<(LocalDate, LocalDate, bool), IReadOnlyList<WayStays>> waysOn = [];
    private readonly Instant first, last;
    private readonly Dictionary<Session, StanceFacts> facts = [];

    public StanceOutlooks(VantagePoint stance, Location place, LocalDate from, SkyEphemeris ephemeris, PlaceWater water)
    {
        (this.stance, this.place, this.ephemeris, this.water) = (stance, place, ephemeris, water);
        zone = place.Zone;
        for (var i = 0; i <= 2; i++)
            sessions[from.PlusDays(i)] = Almanac.Light.Sessions.On(from.PlusDays(i), stance.Position, zone, ephemeris.Sun);
        var spans = sessions.Values.SelectMany(day => day.All).ToList();
        (first, last) = (spans.Min(span => span.Start), spans.Max(span => span.End));
    }

    /// <summary>One cell for each session asked for.</summary>
    public IReadOnlyList<BoardCell> Judge(Composition composition, IReadOnlyList<WeekendSession> asked, Instant now)
    {
        // The wanted light over all the sessions at once: what they share is computed once.
        var light = LightRuns.Between(composition.ToScene(stance, place), first, last, ephemeris);
        var wishes = TideWishes.Of(composition, water);
        return [.. asked.Select(session => Judge(composition, light, wishes, session, now))];
    }

    private BoardCell Judge(Composition composition, LightAnswer answer, TideWishes wishes, WeekendSession session, Instant now)
    {
        var sessionsOfDay = sessions[session.Date];
        if (sessionsOfDay.Of(session.Kind) is not { } span)
            return new(session, null, null, [], sessionsOfDay.WhyNo(session.Kind), false);
        if (span.End <= now)
            return new(session, span, null, [], null, true);

        // Of a session under way only what is left counts.
        var light = answer.During(new Interval(Instant.Max(span.Start, now), span.End));
        var tide = water.Over(span);
        var known = Facts(composition, wishes, span, tide is not null);
        var choices = WaysIn(span, tide);
        // Where no light comes the way there changes nothing.
        var asked = light.Runs.Count + light.Possible.Count == 0 ? choices.Take(1) : choices;
        var judged = asked.Select(one => (Judgement: Of(one), one.Way, one.Stays)).ToList();
        var best = Judgement.BestOf(judged.Select(one => one.Judgement));
        var by = judged.First(one => ReferenceEquals(one.Judgement, best));
        return new(session, span, best, light.Runs, null, false) { By = new JudgedWay(by.Way, by.Stays, tide, water, wishes) };

        Judgement Of(WayStays one) => Judgement.Of(
            known with { NotKnown = Said([.. known.NotKnown, .. one.Way.NotKnown], tide is not null && (one.Way.Plan.NeedsTide || wishes.NeedTide)) },
            SessionLight.Of(light, span, one.Way, one.Usable(wishes), tide, zone), window => Words(window, one.Way, wishes, tide));
    }

    /// <summary>Where tide was part of what is known, the gap is told beside it.</summary>
    private static List<string> Said(List<string> unknown, bool tideAgrees)
    {
        if (tideAgrees && unknown.Count > 0)
            unknown[0] = $"light and tide agree; {unknown[0]}";
        return unknown;
    }

    private List<string> Words(UsableWindow window, Way way, TideWishes wishes, TideCurve? tide)
    {
        List<string> words = [];
        if (way.TellsTurnBack && window.Stay is { } stay && StayWords.TurnBack(stay, window.Run.End, zone, way.IsAtTheLatest) is { } turnBack)
            words.Add(turnBack);
        if ((way.Plan.NeedsTide || wishes.NeedTide) && StayWords.Tide(tide, window.Run) is { } water)
            words.Add(water);
        return words;
    }

    /// <summary>What is known of a session whatever is photographed, floods and all, with what is not known of the picture.</summary>
    private StanceFacts Facts(Composition composition, TideWishes wishes, Session span, bool tideIsKnown)
    {
        if (!facts.TryGetValue(span, out var known))
        {
            var dates = span.Dates(zone);
            facts[span] = known = Flood.In(span, place, dates, water).AddedTo(stance.FactsOn(place, dates));
        }

        IReadOnlyList<string> noTide = !tideIsKnown && (composition.Tide is not null || composition.Ground is { State: not GroundState.Any }) ? [water.WhyNone] : [];
        return known with { NotKnown = [.. composition.NotKnownAt(stance), .. wishes.NotKnown, .. noTide] };
    }

    /// <summary>
    /// Each way with its stays over all the sessions, and a day about them, which says why light between two stays is lost:
    /// the same for all compositions of the stance, and on all dates on which the same ways and car parks are open.
    /// </summary>
    private IReadOnlyList<WayStays> WaysIn(Session span, TideCurve? tide)
    {
        var dates = span.Dates(zone);
        var on = (dates[0], dates[^1], tide is not null);
        if (!waysOn.TryGetValue(on, out var known))
            waysOn[on] = known = WaysOn(dates, tide);
        return known;
    }

    private IReadOnlyList<WayStays> WaysOn(IReadOnlyList<LocalDate> dates, TideCurve? tide)
    {
        var lots = place.OpenParking(dates);
        var open = place.OpenRoutes(dates).Select(route => route.Order).Append(-1)
            .Concat(place.Parking.Select((lot, i) => (lot, i)).Where(one => lots.Contains(one.lot)).Select(one => one.i));
        var key = $"{tide is not null} {string.Join(',', open)}";
        if (ways.TryGetValue(key, out var known))
            return known;

        var (from, to) = (first - OneDay, last + OneDay);
        return ways[key] = [.. Way.Choices(stance, place, water, dates, tide is not null)
            .Select(way => new WayStays(way, StayTimes.Between(way.Plan, tide, from, to, ephemeris.Sun), tide, from, to))];
    }

    /// <summary>One way, its stays, and what they leave of each picture's wishes.</summary>
    private sealed record WayStays(Way Way, IReadOnlyList<Stay> Stays, TideCurve? Tide, Instant From, Instant To)
    {
        private readonly Dictionary<TideWishes, UsableTime> usable = new(ReferenceEqualityComparer.Instance);

        public UsableTime Usable(TideWishes wishes)
        {
            if (!usable.TryGetValue(wishes, out var known))
            {
                var (tide, ground) = Tide is null ? (null, null) : (wishes.Tide, wishes.Ground);
                usable[wishes] = known = UsableTime.Of(Stays, tide, ground, Tide, wishes.Years, From, To);
            }

            return known;
        }
    }
}
