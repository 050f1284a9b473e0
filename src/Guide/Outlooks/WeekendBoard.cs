using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Tides;
using NodaTime;

namespace Foreshore.Guide.Outlooks;

/// <param name="Judgement">Null where there is no such session, or it is past.</param>
/// <param name="Missing">Why there is no such session there that day, or null.</param>
/// <param name="Light">Runs of the wanted light in the session, whether or not one can be there.</param>
public sealed record BoardCell(
    WeekendSession Session, Session? Span, Judgement? Judgement, IReadOnlyList<LightRun> Light, string? Missing, bool IsPast)
{
    /// <summary>The way the judgement goes by, with its stays and the tide, for the strip; null where nothing is judged.</summary>
    public JudgedWay? By { get; init; }

    /// <summary>How the window is reached and left by that way; null where there is no window.</summary>
    public WindowPlan? Plan { get; init; }

    /// <summary>The club's first way and why it leaves no window, where another is shown in its place; else null.</summary>
    public Alternate? First { get; init; }

    /// <summary>What the other open ways would give, in the club's order.</summary>
    public IReadOnlyList<Alternate> Others { get; init; } = [];

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

/// <summary>Which spots suit this weekend, as far as light, tide and the way there can tell.</summary>
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
    /// <param name="waterOf">The tide of a place; null: of none is anything known.</param>
    public static WeekendBoard Of(IReadOnlyList<Location> places, LocalDate from, Instant now, BoardFilter filter, Position? home, SkyEphemeris ephemeris, string? session = null,
        Func<Location, PlaceWater>? waterOf = null)
    {
        var sessions = Weekend.From(from);
        var rows = new List<BoardRow>();
        var filtered = 0;
        foreach (var place in places.Where(place => !place.IsBlurred))
        {
            PlaceWater? water = null;
            foreach (var stance in place.VantagePoints)
            {
                var kilometres = home is { } point ? Geodesic.Between(point, stance.Position).Metres / 1000 : (double?)null;
                if (!filter.Keeps(stance, kilometres))
                {
                    filtered += stance.Compositions.Count;
                    continue;
                }

                var sky = new StanceOutlooks(stance, place, from, ephemeris, water ??= waterOf?.Invoke(place) ?? PlaceWater.None);
                foreach (var composition in stance.Compositions)
                {
                    rows.Add(new BoardRow(place, stance, composition, kilometres, sky.Judge(composition, sessions, now)));
                }
            }
        }

        return new(from, sessions, filter.Order(rows, Index(sessions, session)), places.Count(place => place.IsBlurred), filtered);
    }

    private static int? Index(IReadOnlyList<WeekendSession> sessions, string? key) =>
        sessions.Where(session => session.Key == key).Select(session => (int?)session.Index).FirstOrDefault();
}
