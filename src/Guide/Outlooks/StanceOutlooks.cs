using Foreshore.Almanac.Light;
using Foreshore.Almanac.Stays;
using Foreshore.Almanac.Tides;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
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
    private readonly Dictionary<(LocalDate, LocalDate, bool), IReadOnlyList<Way>> ways = [];
    private readonly Dictionary<Session, IReadOnlyList<(Way Way, IReadOnlyList<Stay> Stays)>> stays = [];
    private readonly Dictionary<(Composition, LocalDate, LocalDate), StanceFacts> facts = [];

    public StanceOutlooks(VantagePoint stance, Location place, LocalDate from, SkyEphemeris ephemeris, PlaceWater water)
    {
        (this.stance, this.place, this.ephemeris, this.water) = (stance, place, ephemeris, water);
        zone = place.Zone;
        for (var i = 0; i <= 2; i++)
            sessions[from.PlusDays(i)] = Almanac.Light.Sessions.On(from.PlusDays(i), stance.Position, zone, ephemeris.Sun);
    }

    /// <summary>One cell for each session asked for.</summary>
    public IReadOnlyList<BoardCell> Judge(Composition composition, IReadOnlyList<WeekendSession> asked, Instant now)
    {
        var spans = sessions.Values.SelectMany(day => day.All).ToList();
        // The wanted light over all the sessions at once: what they share is computed once.
        var light = LightRuns.Between(composition.ToScene(stance, place), spans.Min(span => span.Start), spans.Max(span => span.End), ephemeris);
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
        var judged = StaysIn(span, tide).Select(one => (Judgement: Of(one.Way, one.Stays), one.Way, one.Stays)).ToList();
        var best = Judgement.BestOf(judged.Select(one => one.Judgement));
        var by = judged.First(one => ReferenceEquals(one.Judgement, best));
        return new(session, span, best, light.Runs, null, false) { By = new JudgedWay(by.Way, by.Stays, tide, water, wishes) };

        Judgement Of(Way way, IReadOnlyList<Stay> its) => Judgement.Of(
            known with { NotKnown = Said([.. known.NotKnown, .. way.NotKnown], tide is not null && (way.Plan.NeedsTide || wishes.NeedTide)) },
            SessionLight.Of(light, span, way, its, wishes, tide, zone), window => Words(window, way, wishes, tide));
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

    /// <summary>The same for all sessions on the same dates, but for what the tide does in each.</summary>
    private StanceFacts Facts(Composition composition, TideWishes wishes, Session span, bool tideIsKnown)
    {
        var dates = span.Dates(zone);
        var key = (composition, dates[0], dates[^1]);
        if (!facts.TryGetValue(key, out var known))
            facts[key] = known = composition.FactsOn(stance, place, dates);
        IReadOnlyList<string> unknown = [.. known.NotKnown, .. wishes.NotKnown,
            .. !tideIsKnown && (composition.Tide is not null || composition.Ground is { State: not GroundState.Any }) ? [water.WhyNone] : Array.Empty<string>()];
        return (known with { NotKnown = unknown }).WithFloods(place, dates, span, water);
    }

    /// <summary>Each way's stays about a session: the same for all compositions of the stance.</summary>
    private IReadOnlyList<(Way Way, IReadOnlyList<Stay> Stays)> StaysIn(Session span, TideCurve? tide)
    {
        if (stays.TryGetValue(span, out var known))
            return known;

        var dates = span.Dates(zone);
        var key = (dates[0], dates[^1], tide is not null);
        if (!ways.TryGetValue(key, out var choices))
            ways[key] = choices = Way.Choices(stance, place, water, dates, tide is not null);
        // With those of the day before and after, which say why light between them is lost.
        return stays[span] = [.. choices.Select(way => (way, StayTimes.Between(way.Plan, tide, span.Start - OneDay, span.End + OneDay, ephemeris.Sun)))];
    }
}
