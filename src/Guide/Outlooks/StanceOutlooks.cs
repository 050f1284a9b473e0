using Foreshore.Almanac.Light;
using Foreshore.Almanac.Stays;
using Foreshore.Almanac.Tides;
using Foreshore.Guide.Shell;
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

/// <summary>What another way would give: never in place of the first without being named.</summary>
public sealed record Alternate(Way Way, Judgement Judgement, WindowPlan? Plan)
{
    /// <summary>"suits 16:10–17:20, turn back 21:05" or its verdict with the weightiest reason.</summary>
    public string Words(DateTimeZone zone) => Plan is { Window: var window, TurnBack: var back }
        ? $"{Judgement.Verdict.Word()} {window.Start.Clock(zone)}–{window.End.Clock(zone)}{(back is { } time ? $", turn back {time.Clock(zone)}{(Way.IsAtTheLatest ? StayWords.AtTheLatest : "")}" : "")}"
        : $"{Judgement.Verdict.Word()}, {(Judgement.Reasons.Count > 0 ? Judgement.Reasons[0] : "")}";
}

/// <summary>Sessions, ways and facts of one stance over some days, computed once for all its compositions.</summary>
internal sealed class StanceOutlooks
{
    private readonly VantagePoint stance;
    private readonly Location place;
    private readonly DateTimeZone zone;
    private readonly SkyEphemeris ephemeris;
    private readonly PlaceWater water;
    private readonly StanceWays ways;
    private readonly Dictionary<LocalDate, SessionDay> sessions = [];
    private readonly Instant first, last;
    private readonly Dictionary<Session, StanceFacts> facts = [];

    public StanceOutlooks(VantagePoint stance, Location place, LocalDate from, SkyEphemeris ephemeris, PlaceWater water, int days = 3)
    {
        (this.stance, this.place, this.ephemeris, this.water) = (stance, place, ephemeris, water);
        zone = place.Zone;
        for (var i = 0; i < days; i++)
            sessions[from.PlusDays(i)] = Almanac.Light.Sessions.On(from.PlusDays(i), stance.Position, zone, ephemeris.Sun);
        var spans = sessions.Values.SelectMany(day => day.All).ToList();
        (first, last) = (spans.Min(span => span.Start), spans.Max(span => span.End));
        ways = new(stance, place, water, first, last, ephemeris.Sun);
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
        var open = ways.In(span).Open;
        var known = Facts(composition, wishes, span, tide is not null);
        if (open.Count == 0)
            return new(session, span, Judgement.Of(known, new SessionLight([], light.Runs, [], null)), light.Runs, null, false);

        // Where no light comes the way there changes nothing.
        var judged = open.Take(light.Runs.Count + light.Possible.Count == 0 ? 1 : open.Count).Select(Judged).ToList();
        var shown = judged[0].Judgement.HoldsItsPlace || known.Stops.Count > 0 ? judged[0] : judged.FirstOrDefault(other => other.Judgement.Chosen is not null) ?? judged[0];
        return new(session, span, shown.Judgement, light.Runs, null, false)
        {
            By = new JudgedWay(shown.Way, ways.Stays(shown.Way), tide, water, wishes),
            Plan = shown.Plan,
            First = ReferenceEquals(shown, judged[0]) ? null : judged[0],
            Others = [.. judged.Where(other => !ReferenceEquals(other, shown))],
        };

        Alternate Judged(Way way)
        {
            var judgement = Of(way);
            return new(way, judgement, judgement.Chosen is { } window ? WindowPlan.Of(way, window.Run, light.Runs, window.Stay, span, ephemeris.Sun) : null);
        }

        Judgement Of(Way way)
        {
            var apart = ways.AtDarkStance(way, light.Runs);
            var cut = SessionLight.Of(light, span, way, ways.Time(way, wishes), tide, zone);
            return Judgement.Of(known with { NotKnown = Said([.. known.NotKnown, .. way.NotKnownIn(span.Span)], tide is not null && cut.Windows.Count > 0 && (way.Plan.NeedsTide || wishes.NeedTide)) },
                cut with { Apart = [.. cut.Apart, .. apart.Select(one => $"{one.Start.Clock(zone)}–{one.End.Clock(zone)} {StayWords.AtDarkStance}")] }, window => Words(window, way, span, wishes, tide));
        }
    }

    /// <summary>Where tide was part of what is known, the gap is told beside it.</summary>
    private static List<string> Said(List<string> unknown, bool tideAgrees)
    {
        if (tideAgrees && unknown.Count > 0)
            unknown[0] = $"light and tide agree; {unknown[0]}";
        return unknown;
    }

    private List<string> Words(UsableWindow window, Way way, Session span, TideWishes wishes, TideCurve? tide)
    {
        List<string> words = [];
        if (way.TellsTurnBackIn(span.Span) && window.Stay is { } stay && StayWords.TurnBack(stay, window.Run.End, zone, way.IsAtTheLatest) is { } turnBack)
            words.Add(turnBack);
        if ((way.Plan.NeedsTide || wishes.NeedTide) && StayWords.Tide(tide, window.Run) is { } water)
            words.Add(water);
        if (way.GroundRules is { } ground)
            words.Add(ground);
        return words;
    }

    /// <summary>What is known of a session whatever is photographed, floods and all, with what is not known of the picture.</summary>
    private StanceFacts Facts(Composition composition, TideWishes wishes, Session span, bool tideIsKnown)
    {
        if (!facts.TryGetValue(span, out var known))
            facts[span] = known = stance.FactsOn(place, span.Dates(zone), ways.In(span));
        IReadOnlyList<string> noTide = !tideIsKnown && (composition.Tide is not null || composition.Ground is { State: not GroundState.Any }) ? [water.WhyNone] : [];
        return known with { NotKnown = [.. composition.NotKnownAt(stance), .. wishes.NotKnown, .. noTide] };
    }
}
