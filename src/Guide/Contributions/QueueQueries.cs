using System.Globalization;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Contributions;

public enum QueueKind { Closure, Hazard, Proposal, Fact }

/// <summary>One thing that waits for a warden.</summary>
/// <param name="Severity">0 to 5: a closure under review, then the hazard's own, then changes of limits, then the rest.</param>
public sealed record QueueLine(QueueKind Kind, string Title, string Place, string Address, Instant Since, int Severity, string Words, (string Kind, int Id)? Fact = null);

/// <param name="Lines">Most severe first, oldest first among equals.</param>
/// <param name="Kind">Only these; null: all.</param>
public sealed record QueueView(IReadOnlyList<QueueLine> Lines, QueueKind? Kind)
{
    /// <summary>What a page lists: the rest comes up as wardens work from the top.</summary>
    public const int MostShown = 200;

    private IEnumerable<QueueLine> Asked => Lines.Where(line => Kind is null || line.Kind == Kind);

    public IEnumerable<QueueLine> Shown => Asked.Take(MostShown);

    public bool IsCut => Asked.Skip(MostShown).Any();

    /// <summary>"12", or "more than 200".</summary>
    public string Count(QueueKind? kind) => Lines.Count(line => kind is null || line.Kind == kind) is var count && count > MostShown
        ? $"more than {MostShown}" : count.ToString(CultureInfo.InvariantCulture);
}

/// <summary>What waits for a warden, each kind by a command of its own that reads no more than a page can list.</summary>
internal static class QueueQueries
{
    /// <summary>Guarded proposals come before the others, which only their texts tell: more of them are read than are shown.</summary>
    private const int MostRead = 1000;

    private const int MostFacts = QueueView.MostShown + 1;

    /// <summary>Places have their own dates, and months are not all as long: what lies a little before its period is read, and then left out.</summary>
    private const int EarlyDays = 4;

    /// <summary>Marks, among the facts, hours that stand in words alone.</summary>
    private const int ToEnter = 100;

    /// <summary>Marks what nobody has said of a way, and without which an outlook by it is not judged.</summary>
    private const int ToSay = 2 * ToEnter;

    /// <param name="ByelawsToEnter">Byelaws whose hours nobody has entered; null where there are none.</param>
    private sealed record Place(int Id, string Name, DateTimeZone Zone, string? ByelawsToEnter);

    public static async Task<QueueView> QueueAsync(this GuideDb db, Reader warden, QueueKind? kind, Instant now, CancellationToken cancel)
    {
        var places = (await db.Locations.VisibleTo(warden).Select(l => new { l.Id, l.Name, l.ZoneId, ToEnter = l.Hours == null ? l.Byelaws : null }).ToListAsync(cancel))
            .ToDictionary(l => l.Id, l => new Place(l.Id, l.Name, DateTimeZoneProviders.Tzdb[l.ZoneId], l.ToEnter));
        List<QueueLine> lines =
        [
            .. await db.ClosuresAsync(places, now, cancel), .. await db.NotesAsync(places, now, cancel),
            .. await db.ProposalsAsync(places, cancel), .. await db.FactsAsync(places, now, cancel),
            .. places.Values.Where(place => place.ByelawsToEnter is not null).Select(place => HoursToEnter(Matter.Place, place.Id, place.Name, place, now, place.ByelawsToEnter!)),
        ];
        return new([.. lines.OrderByDescending(line => line.Severity).ThenBy(line => line.Since)], kind);
    }

    private static async Task<IEnumerable<QueueLine>> ClosuresAsync(this GuideDb db, Dictionary<int, Place> places, Instant now, CancellationToken cancel)
    {
        var found = await db.Closures.AsNoTracking().Where(c => c.State == ClosureState.UnderReview || c.State == ClosureState.LiftAsked)
            .Include(c => c.VantagePoint).Include(c => c.Leg).Include(c => c.ParkingArea).OrderBy(c => c.Id).Take(MostRead).ToListAsync(cancel);
        return
            from closure in found
            let place = places.GetValueOrDefault(closure.LocationId)
            where place is not null
            select new QueueLine(QueueKind.Closure, closure.IsNearMiss ? "Near miss" : "Closure", place.Name, $"/queue/closure/{closure.Id}",
                closure.MadeAt ?? Noon(place, closure.From ?? now.InZone(place.Zone).Date), 5, $"{closure.What()}: {closure.Reason} ({closure.State.Words()})");
    }

    /// <summary>Reported ones, and confirmed ones that nobody has looked at for too long.</summary>
    private static async Task<IEnumerable<QueueLine>> NotesAsync(this GuideDb db, Dictionary<int, Place> places, Instant now, CancellationToken cancel)
    {
        var old = Before(now, FactCheck.HazardPeriod);
        var found = await db.HazardNotes.AsNoTracking()
            .Where(n => n.State == HazardState.Reported || (n.State == HazardState.Confirmed && (n.ConfirmedOn ?? n.From) < old))
            .OrderByDescending(n => n.Severity).ThenBy(n => n.Id).Take(MostRead).ToListAsync(cancel);
        return
            from note in found
            let place = places.GetValueOrDefault(note.LocationId)
            where place is not null && (note.IsUnchecked || note.NeedsChecking(now.InZone(place.Zone).Date))
            select note.IsUnchecked
                ? new QueueLine(QueueKind.Hazard, $"Hazard: {note.Kind.Words()}", place.Name, $"/queue/hazard/{note.Id}",
                    note.ReportedAt ?? Noon(place, note.From), note.Severity, $"{HazardWords.SeverityWords(note.Severity)}: {note.Text}")
                : new QueueLine(QueueKind.Hazard, $"Hazard to look at again: {note.Kind.Words()}", place.Name, $"/queue/hazard/{note.Id}",
                    Noon(place, note.ConfirmedOn ?? note.From), note.Severity, note.Text);
    }

    private static async Task<IEnumerable<QueueLine>> ProposalsAsync(this GuideDb db, Dictionary<int, Place> places, CancellationToken cancel)
    {
        var found = await db.Proposals.AsNoTracking().Where(p => p.State == ProposalState.Sent || p.State == ProposalState.Asked).OrderBy(p => p.SentAt).Take(MostRead)
            .Select(p => new { Proposal = p, By = db.Members.Where(m => m.Id == p.ProposerId).Select(m => m.Name).FirstOrDefault() }).ToListAsync(cancel);
        return found.Select(each => new QueueLine(QueueKind.Proposal, each.Proposal.Title,
            each.Proposal.LocationId is { } id ? places.GetValueOrDefault(id)?.Name ?? "" : "a new place", $"/queue/{each.Proposal.Id}", each.Proposal.SentAt!.Value, each.Proposal.IsGuarded ? 2 : 1,
            $"{each.By ?? "somebody who has left"}{(each.Proposal.State == ProposalState.Asked ? ", asked back" : each.Proposal.IsGuarded ? ", changes a limit" : "")}"));
    }

    /// <summary>Facts past their period, those checked longest ago first: five tables in one command, each row as narrow as the line it makes.</summary>
    private static async Task<IEnumerable<QueueLine>> FactsAsync(this GuideDb db, Dictionary<int, Place> places, Instant now, CancellationToken cancel)
    {
        var (old, oldHazard) = (Before(now, FactCheck.UsualPeriod), Before(now, FactCheck.HazardPeriod));
        var ways = db.Set<AccessRoute>().Where(route => route.Legs.Any()
            && route.Legs.All(leg => leg.LegalStatus != LegalStatus.Private && leg.LegalStatus != LegalStatus.Closed && leg.LegalStatus != LegalStatus.Unknown));
        var facts = db.Set<Leg>().Where(leg => leg.Check.LastChecked < old).Join(db.Set<AccessRoute>(), leg => leg.AccessRouteId, route => route.Id,
                (leg, route) => new { Matter = (int)Matter.Leg, leg.Id, leg.Name, PlaceId = route.LocationId, leg.Check.LastChecked, leg.Check.SaysWho })
            .Concat(db.Set<ParkingArea>().Where(area => area.Check.LastChecked < old)
                .Select(area => new { Matter = (int)Matter.Parking, area.Id, area.Name, PlaceId = area.LocationId, area.Check.LastChecked, area.Check.SaysWho }))
            .Concat(db.Set<OvernightRule>().Where(rule => rule.Check.LastChecked < old)
                .Select(rule => new { Matter = (int)Matter.Overnight, rule.Id, Name = rule.Sleeper.ToString(), PlaceId = rule.LocationId, rule.Check.LastChecked, rule.Check.SaysWho }))
            .Concat(db.Set<HazardRating>().Where(rating => rating.Check.LastChecked < oldHazard)
                .Select(rating => new { Matter = (int)Matter.Rating, rating.Id, Name = rating.Kind.ToString(), PlaceId = rating.LocationId, rating.Check.LastChecked, rating.Check.SaysWho }))
            .Concat(db.Set<VantagePoint>().Where(stance => stance.Check.LastChecked < old)
                .Select(stance => new { Matter = (int)Matter.Stance, stance.Id, stance.Name, PlaceId = stance.LocationId, stance.Check.LastChecked, stance.Check.SaysWho }))
            .Concat(db.Set<Leg>().Where(leg => leg.Hours == null && leg.HoursText != null).Join(db.Set<AccessRoute>(), leg => leg.AccessRouteId, route => route.Id,
                (leg, route) => new { Matter = ToEnter + (int)Matter.Leg, leg.Id, leg.Name, PlaceId = route.LocationId, leg.Check.LastChecked, SaysWho = leg.HoursText! }))
            .Concat(db.Set<Leg>().Where(leg => leg.Kind == LegKind.Walk && leg.Ground == LegGround.Unknown).Join(ways, leg => leg.AccessRouteId, route => route.Id,
                (leg, route) => new { Matter = ToSay + (int)Matter.Leg, leg.Id, leg.Name, PlaceId = route.LocationId, leg.Check.LastChecked, SaysWho = "what one walks on, at its worst" }))
            .Concat(ways.Where(route => !route.Parking.Any()).Select(route => new { Matter = ToSay + (int)Matter.Way, route.Id, route.Name, PlaceId = route.LocationId, LastChecked = old, SaysWho = "which car parks serve this way" }))
            .Concat(db.Set<Leg>().Where(leg => leg.TidalCut == TidalCut.Unknown).Join(ways, leg => leg.AccessRouteId, route => route.Id,
                (leg, route) => new { Matter = ToSay + (int)Matter.Leg, leg.Id, leg.Name, PlaceId = route.LocationId, leg.Check.LastChecked, SaysWho = "whether the tide ever covers this leg or cuts it off" }))
            .Concat(db.Set<RouteParking>().Where(served => served.WalkMinutes == null).Join(ways, served => served.AccessRouteId, route => route.Id,
                (served, route) => new { Matter = ToSay + (int)Matter.Way, route.Id, route.Name, PlaceId = route.LocationId, served.ParkingArea.Check.LastChecked, SaysWho = "the walk to where the way begins, from " + served.ParkingArea.Name }));
        var found = await facts.OrderBy(fact => fact.LastChecked).ThenBy(fact => fact.Matter).ThenBy(fact => fact.Id).Take(MostFacts).ToListAsync(cancel);
        return
            from each in found
            let isToEnter = each.Matter >= ToEnter
            let matter = (Matter)(each.Matter % ToEnter)
            let place = places.GetValueOrDefault(each.PlaceId)
            where place is not null && (isToEnter || each.LastChecked + (matter == Matter.Rating ? FactCheck.HazardPeriod : FactCheck.UsualPeriod) < now.InZone(place.Zone).Date)
            select each.Matter >= ToSay ? new QueueLine(QueueKind.Fact, $"To be entered: {each.Name}", place.Name, ProposalWords.Change(matter, each.Id), Noon(place, each.LastChecked), 1, each.SaysWho)
                : isToEnter ? HoursToEnter(matter, each.Id, each.Name, place, now, each.SaysWho) : new QueueLine(QueueKind.Fact, $"{Capital(matter.Words())}: {Name(matter, each.Name)}", place.Name, ProposalWords.Change(matter, each.Id), Noon(place, each.LastChecked), 0,
                $"last checked {AccessWords.Day(each.LastChecked)}: {each.SaysWho}", (matter.Address(), each.Id));
    }

    /// <summary>Hours that stand in words: what hangs on them is not judged until somebody enters them.</summary>
    private static QueueLine HoursToEnter(Matter matter, int id, string name, Place place, Instant now, string words) =>
        new(QueueKind.Fact, $"Hours to be entered: {name}", place.Name, ProposalWords.Change(matter, id), Noon(place, now.InZone(place.Zone).Date), 1, $"not judged until then; the words: {words}");

    private static LocalDate Before(Instant now, Period period) => now.InUtc().Date.PlusDays(EarlyDays) - period;

    private static string Name(Matter matter, string stored) => matter switch
    {
        Matter.Overnight => Enum.Parse<Sleeper>(stored).Words(),
        Matter.Rating => Enum.Parse<HazardKind>(stored).Words(),
        _ => stored,
    };

    private static Instant Noon(Place place, LocalDate day) => day.At(LocalTime.Noon).InZoneLeniently(place.Zone).ToInstant();

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
