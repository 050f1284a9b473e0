using Foreshore.Guide.Access;
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
    public IEnumerable<QueueLine> Shown => Lines.Where(line => Kind is null || line.Kind == Kind);

    public int Count(QueueKind kind) => Lines.Count(line => line.Kind == kind);
}

internal static class QueueQueries
{
    public static async Task<QueueView> QueueAsync(this GuideDb db, Reader warden, QueueKind? kind, Instant now, CancellationToken cancel)
    {
        var places = await db.CoastAsync(warden, Parts.All, cancel: cancel);
        var proposals = await db.Proposals.AsNoTracking().Where(p => p.State == ProposalState.Sent || p.State == ProposalState.Asked)
            .Select(p => new { Proposal = p, By = db.Members.Where(m => m.Id == p.ProposerId).Select(m => m.Name).FirstOrDefault() }).ToListAsync(cancel);
        var names = places.ToDictionary(place => place.Id, place => place.Name);
        var lines = places.SelectMany(place => Of(place, now.InZone(place.Zone).Date)).Concat(proposals.Select(each => new QueueLine(QueueKind.Proposal, each.Proposal.Title,
            each.Proposal.LocationId is { } id ? names.GetValueOrDefault(id, "") : "a new place", $"/queue/{each.Proposal.Id}", each.Proposal.SentAt!.Value, each.Proposal.IsGuarded ? 2 : 1,
            $"{each.By ?? "somebody who has left"}{(each.Proposal.State == ProposalState.Asked ? ", asked back" : each.Proposal.IsGuarded ? ", changes a limit" : "")}")));
        return new([.. lines.OrderByDescending(line => line.Severity).ThenBy(line => line.Since)], kind);
    }

    private static IEnumerable<QueueLine> Of(Location place, LocalDate today)
    {
        foreach (var closure in place.Closures.Where(closure => closure.State is ClosureState.UnderReview or ClosureState.LiftAsked))
            yield return new(QueueKind.Closure, closure.IsNearMiss ? "Near miss" : "Closure", place.Name, $"/queue/closure/{closure.Id}",
                closure.MadeAt ?? Noon(place, closure.From ?? today), 5, $"{closure.What()}: {closure.Reason} ({closure.State.Words()})");
        foreach (var note in place.HazardNotes.Where(note => note.State == HazardState.Reported))
            yield return new(QueueKind.Hazard, $"Hazard: {note.Kind.Words()}", place.Name, $"/queue/hazard/{note.Id}",
                note.ReportedAt ?? Noon(place, note.From), note.Severity, $"{HazardWords.SeverityWords(note.Severity)}: {note.Text}");
        foreach (var note in place.HazardNotes.Where(note => note.State == HazardState.Confirmed && note.NeedsChecking(today)))
            yield return new(QueueKind.Hazard, $"Hazard to look at again: {note.Kind.Words()}", place.Name, $"/queue/hazard/{note.Id}",
                Noon(place, note.ConfirmedOn ?? note.From), note.Severity, note.Text);
        foreach (var (matter, id, name, check, period) in Facts(place))
            if (check.NeedsChecking(today, period))
                yield return new(QueueKind.Fact, $"{Capital(matter.Words())}: {name}", place.Name, ProposalWords.Change(matter, id), Noon(place, check.LastChecked), 0,
                    $"last checked {AccessWords.Day(check.LastChecked)}: {check.SaysWho}", (matter.Address(), id));
    }

    private static IEnumerable<(Matter Matter, int Id, string Name, FactCheck Check, Period Period)> Facts(Location place) =>
    [
        .. place.Routes.SelectMany(route => route.Legs).Select(leg => (Matter.Leg, leg.Id, leg.Name, leg.Check, FactCheck.UsualPeriod)),
        .. place.Parking.Select(area => (Matter.Parking, area.Id, area.Name, area.Check, FactCheck.UsualPeriod)),
        .. place.OvernightRules.Select(rule => (Matter.Overnight, rule.Id, rule.Sleeper.Words(), rule.Check, FactCheck.UsualPeriod)),
        .. place.HazardRatings.Select(rating => (Matter.Rating, rating.Id, rating.Kind.Words(), rating.Check, FactCheck.HazardPeriod)),
        .. place.VantagePoints.Where(stance => stance.Check is not null).Select(stance => (Matter.Stance, stance.Id, stance.Name, stance.Check, FactCheck.UsualPeriod)),
    ];

    private static Instant Noon(Location place, LocalDate day) => day.At(LocalTime.Noon).InZoneLeniently(place.Zone).ToInstant();

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
