using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Shell;
using Foreshore.Guide.Tides;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Contributions;

/// <summary>What choosing a station came to.</summary>
/// <param name="Levels">Before and after, to be looked at; nothing has changed.</param>
/// <param name="IsQueued">It waits for another warden.</param>
public sealed record StationChosen(IReadOnlyList<FieldFault> Faults, LevelsChange? Levels = null, bool IsDone = false, bool IsQueued = false);

/// <summary>
/// Every height and time at a place hangs on its station, so choosing one is a proposal like any other change of a limit: its levels are
/// looked at first, another warden accepts it, it stands in the history and can be restored.
/// </summary>
public sealed class StationChoice(IDbContextFactory<GuideDb> database, IClock clock, TideCurves curves, Contributing contributing, Reviewing reviewing)
{
    public async Task<StationChosen> TakeAsync(SignedIn admin, AssignForm form, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        var place = await db.LocationAsync(form.Place ?? "", admin.Reader, cancel: cancel);
        var (tide, level, faults) = await form.ReadAsync(db, place, cancel);
        if (place is null || tide is null)
            return new(faults);

        var levels = LevelsChange.Of(place, (await db.TidesOfAsync([place], cancel)).Of(place), tide, level, curves, clock.GetCurrentInstant());
        if (!form.WasLookedAt)
            return new([], levels);

        var isAlone = await Reviewing.WardensAsync(db, cancel) < 2;
        if (isAlone && await Reviewing.RefusalAsync(db, form.Reason, cancel) is { } refusal)
            return new(refusal.Faults, levels);
        var before = PlaceSheet.Tide.Read(place);
        var given = PlaceSheet.Tide.Read(place.JudgeTideBy(tide.Station.Id, level, tide.Corrections));
        // The same choice over the same state, sent twice, is one.
        var id = SentContent.KeyOf(admin.MemberId, "station", place.Slug, form.Stamp, string.Join('\u001f', before.Values));
        var sent = await contributing.SendAsync(admin.Reader, id, Matter.Tide, place.Id, given, form.Reason, null, cancel);
        if (sent.Faults.Count > 0 || sent.Proposal is null)
            return new([.. sent.Faults.Select(fault => fault with { FieldId = "decision" })], levels);
        if (!isAlone)
            return new([], levels, IsQueued: true);
        var accepted = await reviewing.AcceptAsync(admin, sent.Proposal.Id, new Dictionary<string, string>(), new HashSet<string>(), form.Reason, cancel);
        return new(accepted.Faults, levels, accepted.IsDone);
    }

    /// <summary>What a proposal would do to the levels, for the warden who decides; null where it says nothing that can be read.</summary>
    public async Task<LevelsChange?> OfProposalAsync(Proposal proposal, Reader reader, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        var slug = await db.Locations.Where(l => l.Id == proposal.TargetId).Select(l => l.Slug).SingleOrDefaultAsync(cancel);
        if (slug is null || await db.LocationAsync(slug, reader, cancel: cancel) is not { } place || await db.LocationAsync(slug, reader, Parts.None, cancel: cancel) is not { } then)
            return null;
        if (PlaceSheet.Tide.Write(then, proposal.Given).Count > 0)
            return null;
        var tides = await db.TidesOfAsync([place, then], cancel);
        return tides.Of(then) is { } tide ? LevelsChange.Of(place, tides.Of(place), tide, then.MeanSeaLevelAboveChartDatumMetres, curves, clock.GetCurrentInstant()) : null;
    }
}
