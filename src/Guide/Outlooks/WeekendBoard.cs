using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Almanac.Sun;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Outlooks;

/// <param name="Judgement">Null where there is no such session, or it is past.</param>
/// <param name="Missing">Why there is no such session there that day, or null.</param>
/// <param name="Light">Runs of the wanted light in the session, whether or not one can be there.</param>
public sealed record BoardCell(
    WeekendSession Session, Session? Span, Judgement? Judgement, IReadOnlyList<LightRun> Light, string? Missing, bool IsPast)
{
    /// <summary>What the strip brackets: the window alone, as the way there cuts it, and nothing where there is none.</summary>
    public IReadOnlyList<Interval> Brackets => Judgement?.Window is { } window ? [new(window.Start, window.End)] : [];
}

public sealed record BoardRow(Location Place, VantagePoint Stance, Composition Composition, double? HomeKilometres, IReadOnlyList<BoardCell> Cells)
{
    public string Address => $"/coast/{Place.Slug}/{Stance.Slug}/{Composition.Slug}";

    /// <summary>The best verdict of one session, or of all.</summary>
    public Verdict BestOf(int? session) => CellsOf(session).Select(cell => cell.Judgement?.Verdict).Min() ?? Verdict.DoesNotSuit;

    /// <summary>Start of the first window that suits or is borderline; else of the first with light at all; else null.</summary>
    public Instant? FirstWindow(int? session) =>
        CellsOf(session).Where(cell => cell.Judgement is { Window: not null, Verdict: Verdict.Suits or Verdict.Borderline }).Min(cell => cell.Judgement?.Window?.Start)
        ?? CellsOf(session).Min(cell => cell.Judgement?.Window?.Start);

    private IEnumerable<BoardCell> CellsOf(int? session) => session is { } index ? [Cells[index]] : Cells;
}

/// <summary>Which spots suit this weekend, as far as light and the way there can tell.</summary>
/// <param name="Blurred">Sensitive places that are not judged for this reader.</param>
/// <param name="Filtered">Rows that the filters leave out.</param>
public sealed record WeekendBoard(LocalDate From, IReadOnlyList<WeekendSession> Sessions, IReadOnlyList<BoardRow> Rows, int Blurred, int Filtered)
{
    /// <summary>Whether it is this weekend's, however it was asked for.</summary>
    public bool IsCurrent { get; init; }

    /// <summary>The session a phone shows: the one asked for, else the first that is still to come somewhere.</summary>
    public WeekendSession SessionShown(string? key)
    {
        foreach (var session in Sessions)
        {
            if (session.Key == key || (key is null && Rows.Any(row => !row.Cells[session.Index].IsPast)))
                return session;
        }

        return Sessions[0];
    }

    /// <param name="session">Key of the one session whose verdicts order the rows; null: all nine.</param>
    public static WeekendBoard Of(IReadOnlyList<Location> places, LocalDate from, Instant now, BoardFilter filter, Position? home, SkyEphemeris ephemeris, string? session = null)
    {
        var sessions = Weekend.From(from);
        var rows = new List<BoardRow>();
        var filtered = 0;
        foreach (var place in places.Where(place => !place.IsBlurred))
        {
            var zone = place.Zone;
            foreach (var stance in place.VantagePoints)
            {
                var kilometres = home is { } point ? Geodesic.Between(point, stance.Position).Metres / 1000 : (double?)null;
                if (!filter.Keeps(stance, kilometres))
                {
                    filtered += stance.Compositions.Count;
                    continue;
                }

                var sky = StanceSky.Of(stance, place, from, ephemeris);
                foreach (var composition in stance.Compositions)
                {
                    var light = sky.LightOf(composition);
                    rows.Add(new BoardRow(place, stance, composition, kilometres,
                        [.. sessions.Select(session => sky.Judge(composition, light, session, now))]));
                }
            }
        }

        return new(from, sessions, filter.Order(rows, Index(sessions, session)), places.Count(place => place.IsBlurred), filtered);
    }

    private static int? Index(IReadOnlyList<WeekendSession> sessions, string? key) =>
        sessions.Where(session => session.Key == key).Select(session => (int?)session.Index).FirstOrDefault();
}

/// <summary>Sun days and sessions of one stance over the weekend, computed once for all its compositions.</summary>
internal sealed class StanceSky
{
    private readonly Dictionary<LocalDate, SunDay> days = [];
    private readonly Dictionary<LocalDate, SessionDay> sessions = [];
    private readonly Dictionary<Session, IReadOnlyList<WayHours>> hours = [];
    private readonly Dictionary<(Composition, LocalDate, LocalDate), StanceFacts> facts = [];

    private StanceSky(VantagePoint stance, Location place, SkyEphemeris ephemeris) => (Stance, Place, Ephemeris) = (stance, place, ephemeris);

    private VantagePoint Stance { get; }

    private Location Place { get; }

    private SkyEphemeris Ephemeris { get; }

    public static StanceSky Of(VantagePoint stance, Location place, LocalDate from, SkyEphemeris ephemeris)
    {
        var sky = new StanceSky(stance, place, ephemeris);
        var observer = new Observer(stance.Position, stance.EyeMetresAboveMeanSea(place.MeanSeaLevelAboveChartDatumMetres), stance.Skyline);
        for (var i = 0; i <= 3; i++)
        {
            var date = from.PlusDays(i);
            sky.days[date] = SunDays.On(date, observer, place.Zone, ephemeris.Sun);
            sky.sessions[date] = Almanac.Light.Sessions.On(date, stance.Position, place.Zone, ephemeris.Sun);
        }

        return sky;
    }

    /// <summary>The wanted light over all the sessions at once: what they share is computed once.</summary>
    public LightAnswer LightOf(Composition composition)
    {
        var spans = sessions.Values.SelectMany(day => day.All).ToList();
        return LightRuns.Between(composition.ToScene(Stance, Place), spans.Min(span => span.Start), spans.Max(span => span.End), Ephemeris);
    }

    public BoardCell Judge(Composition composition, LightAnswer answer, WeekendSession session, Instant now)
    {
        var sessionsOfDay = sessions[session.Date];
        if (sessionsOfDay.Of(session.Kind) is not { } span)
            return new(session, null, null, [], sessionsOfDay.WhyNo(session.Kind), false);
        if (span.End <= now)
            return new(session, span, null, [], null, true);

        // Of a session under way only what is left counts.
        var light = Within(answer.During(new Interval(Instant.Max(span.Start, now), span.End)), Hours(span));
        return new(session, span, Judgement.Of(Facts(composition, span.Dates(Place.Zone)), light), light.Light, null, false);
    }

    private static SessionLight Within(LightAnswer answer, IReadOnlyList<WayHours> hours)
    {
        var best = hours.MaxBy(choice => (Total(choice.Cut(answer.Runs)), Total(choice.Cut(answer.Possible))));
        var windows = best.Cut(answer.Runs);
        var possible = best.Cut(answer.Possible).Select(run => run.Light).Distinct();
        return new(windows, answer.Runs, [.. possible], windows.Count == 0 ? best.Because : null, best.Until);
    }

    /// <summary>The same for all sessions on the same dates.</summary>
    private StanceFacts Facts(Composition composition, IReadOnlyList<LocalDate> dates)
    {
        var key = (composition, dates[0], dates[^1]);
        if (!facts.TryGetValue(key, out var known))
            facts[key] = known = composition.FactsOn(Stance, Place, dates);
        return known;
    }

    /// <summary>The same for all compositions of the stance.</summary>
    private IReadOnlyList<WayHours> Hours(Session span)
    {
        if (!hours.TryGetValue(span, out var choices))
            hours[span] = choices = WayHours.Choices(span, days[span.Date], days[span.Date.PlusDays(1)], Stance, Place);
        return choices;
    }

    private static Duration Total(IReadOnlyList<LightRun> runs) => runs.Aggregate(Duration.Zero, (sum, run) => sum + run.Length);
}
