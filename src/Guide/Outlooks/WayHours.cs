using Foreshore.Almanac.Light;
using Foreshore.Almanac.Sun;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Outlooks;

/// <summary>
/// When one can stand at a stance as far as daylight, gates and sailings allow; tide, crossings and the sea come on top later.
/// Set-up 15 min and packing 5 min are common practice, no source.
/// </summary>
/// <param name="From">First minute on the stance, or null: no earlier bound.</param>
/// <param name="Until">Turn back, rounded down to five minutes, or null: no later bound.</param>
/// <param name="Because">What takes time off the session, in words.</param>
public readonly record struct WayHours(Instant? From, Instant? Until, string? Because)
{
    public static readonly Duration SetUp = Duration.FromMinutes(15);
    public static readonly Duration Packing = Duration.FromMinutes(5);
    private const string Dark = "the way is not known in the dark";
    private static readonly WayHours Always = new(null, null, null);

    /// <summary>
    /// What one can choose from: each open way in, with the car in each open car park, once for every stretch in which all gates
    /// on it stand open. A car that stays inside over night is not among the choices.
    /// </summary>
    public static IReadOnlyList<WayHours> Choices(Session session, SunDay day, SunDay dayAfter, VantagePoint stance, Location place)
    {
        var light = new WayLight(day, dayAfter);
        var dates = session.Dates(place.Zone);
        var choices = new List<WayHours>();
        foreach (var route in place.WaysJudged(dates).Cast<AccessRoute?>().DefaultIfEmpty())
        {
            foreach (var lot in place.OpenParking(dates).Cast<ParkingArea?>().DefaultIfEmpty())
            {
                foreach (var daylight in InDaylight(session, light, stance))
                    choices.AddRange(daylight.Through(Gate.Of(route, lot, stance), session, place.Zone, light));
            }
        }

        return choices;
    }

    /// <summary>The runs that lie within, cut to it; a piece shorter than its light's least length is no run.</summary>
    public IReadOnlyList<LightRun> Cut(IReadOnlyList<LightRun> runs)
    {
        if (From is null && Until is null)
            return runs;

        List<LightRun> cut = [];
        foreach (var run in runs)
        {
            var start = From is { } from ? Instant.Max(run.Start, from) : run.Start;
            var end = Until is { } until ? Instant.Min(run.End, until) : run.End;
            if (end - start >= Duration.FromMinutes(LightTable.Of(run.Light).LeastMinutes))
                cut.Add(run with { Start = start, End = end });
        }

        return cut;
    }

    /// <summary>A way not known in the dark is neither walked in before civil dawn nor out after civil dusk.</summary>
    private static List<WayHours> InDaylight(Session session, WayLight light, VantagePoint stance)
    {
        if (stance.WalkedInTheDark)
            return [Always];

        var (walkIn, walkOut) = (Duration.FromMinutes(stance.WalkInMinutes ?? 0), Duration.FromMinutes(stance.WalkOutMinutes ?? 0));
        var hours = light.Lit
            .Select(lit => Always.NotBefore(lit.Start + walkIn + SetUp, Dark, session).NotAfter(lit.End - walkOut - Packing, Dark, session))
            .Where(lit => lit.Leaves(session)).ToList();
        return hours.Count > 0 ? hours : [Nothing(session, Dark)];
    }

    private List<WayHours> Through(IReadOnlyList<Gate> gates, Session session, DateTimeZone zone, WayLight light)
    {
        List<WayHours> open = [this];
        foreach (var gate in gates)
        {
            var stretches = gate.OnStance(session, zone, light).ToList();
            open = [.. open
                .SelectMany(hours => stretches.Select(stretch => hours.NotBefore(stretch.Start, gate.Words, session).NotAfter(stretch.End, gate.Words, session)))
                .Where(hours => hours.Leaves(session))];
            if (open.Count == 0)
                return [Nothing(session, Because ?? gate.Words)];
        }

        return open;
    }

    private static WayHours Nothing(Session session, string because) => new(null, session.Start, because);

    private bool Leaves(Session session) =>
        (From ?? session.Start) < (Until ?? session.End) && (From is null || From < session.End) && (Until is null || Until > session.Start);

    private WayHours NotBefore(Instant earliest, string because, Session session) =>
        earliest <= session.Start || (From is { } from && from >= earliest) ? this : this with { From = earliest, Because = because };

    private WayHours NotAfter(Instant latest, string because, Session session)
    {
        var rounded = Instant.FromUnixTimeSeconds(latest.ToUnixTimeSeconds() / 300 * 300);
        if (Until is { } until && until <= rounded)
            return this;
        return this with { Until = rounded, Because = rounded < session.End ? because : Because };
    }
}
