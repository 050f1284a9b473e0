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
/// <param name="Because">What bounds it, in words.</param>
public readonly record struct WayHours(Instant? From, Instant? Until, string? Because)
{
    public static readonly Duration SetUp = Duration.FromMinutes(15);
    public static readonly Duration Packing = Duration.FromMinutes(5);
    private static readonly WayHours Always = new(null, null, null);

    /// <summary>Bounds for one session on its own date, along one route.</summary>
    public static WayHours Of(Session session, SunDay day, SunDay dayAfter, VantagePoint stance, Location place, AccessRoute? route)
    {
        var zone = DateTimeZoneProviders.Tzdb[place.ZoneId];
        var walkIn = Duration.FromMinutes(stance.WalkInMinutes ?? 0);
        var walkOut = Duration.FromMinutes(stance.WalkOutMinutes ?? 0);
        var hours = InDaylight(session, day, dayAfter, stance, walkIn, walkOut);
        foreach (var (opens, closes, words) in Gates(place, route, session.Date))
        {
            // A night belongs to the evening's date; what opens, opens on the morning it runs into.
            var morning = session.Kind == SessionKind.Night ? session.Date.PlusDays(1) : session.Date;
            if (opens is { } opening && session.Kind != SessionKind.Night)
                hours = hours.NotBefore(morning.At(opening).InZoneLeniently(zone).ToInstant() + walkIn + SetUp, words);
            if (closes is { } closing)
                hours = hours.NotAfter(EveningOf(session.Date, closing).At(closing).InZoneLeniently(zone).ToInstant() - walkOut - Packing, words);
        }

        return hours;
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

    private static WayHours InDaylight(Session session, SunDay day, SunDay dayAfter, VantagePoint stance, Duration walkIn, Duration walkOut)
    {
        const string Dark = "the way is not known in the dark";
        if (stance.WalkedInTheDark)
            return Always;

        // Civil twilight that does not end leaves the way light; where the sun never rises to it, the way is dark all day.
        if (session.Kind == SessionKind.Night)
        {
            return day.CivilDusk is null && dayAfter.CivilDawn is null && day.MidnightAltitudeDegrees > -6
                ? Always
                : new(null, session.Start, Dark);
        }

        if (day.NoonAltitudeDegrees < -6)
            return new(null, session.Start, Dark);

        var hours = Always;
        if (day.CivilDawn is { } dawn)
            hours = hours.NotBefore(dawn + walkIn + SetUp, Dark);
        if (day.CivilDusk is { } dusk)
            hours = hours.NotAfter(dusk - walkOut - Packing, Dark);
        return hours;
    }

    /// <summary>Opening and closing times that bind: of the route's legs, its ferries, and the car parks where all are locked.</summary>
    private static IEnumerable<(LocalTime? Opens, LocalTime? Closes, string Words)> Gates(Location place, AccessRoute? route, LocalDate date)
    {
        foreach (var leg in route?.Legs ?? [])
        {
            if (leg.OpensAt is not null || leg.ClosesAt is not null)
                yield return (leg.OpensAt, leg.ClosesAt, $"{leg.Name}: {leg.HoursText}");
            if (leg.Ferry is { } ferry)
            {
                yield return (ferry.FirstSailing.PlusMinutes((long)ferry.CrossingMinutes), ferry.LastSailing.PlusMinutes(-ferry.LastCheckInMinutes),
                    $"first sailing {ferry.FirstSailing:HH':'mm}, last {ferry.LastSailing:HH':'mm}");
            }
        }

        var open = place.Parking.Where(area => !place.IsClosed(area, date)).ToList();
        if (open.Count > 0 && open.All(area => area.LockedFrom is not null && area.LockedUntil is not null))
        {
            var latest = open.MaxBy(area => area.LockedFrom)!;
            yield return (open.Min(area => area.LockedUntil), latest.LockedFrom, $"{latest.Name} is locked {latest.LockedFrom:HH':'mm}–{latest.LockedUntil:HH':'mm}");
        }
    }

    /// <summary>A gate that shuts at half past midnight shuts the evening before.</summary>
    private static LocalDate EveningOf(LocalDate date, LocalTime closing) => closing.Hour < 4 ? date.PlusDays(1) : date;

    private WayHours NotBefore(Instant earliest, string because) =>
        From is { } from && from >= earliest ? this : this with { From = earliest, Because = because };

    private WayHours NotAfter(Instant latest, string because)
    {
        var rounded = Instant.FromUnixTimeSeconds(latest.ToUnixTimeSeconds() / 300 * 300);
        return Until is { } until && until <= rounded ? this : this with { Until = rounded, Because = because };
    }
}
