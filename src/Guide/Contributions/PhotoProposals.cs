using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Photos;
using Foreshore.Guide.Shell;

namespace Foreshore.Guide.Contributions;

/// <summary>A proposal's form with photos: the text is kept first, then the photos, and only then is it sent, so that a photo that is refused loses no word.</summary>
public sealed class PhotoProposals(Contributing contributing, Album album)
{
    /// <summary>A proposal of one's own with its photos.</summary>
    public async Task<(Proposal? Proposal, IReadOnlyList<Photo> Photos)> FindAsync(Guid id, Guid member, CancellationToken cancel) =>
        (await contributing.FindAsync(id, member, cancel), await album.OfProposalAsync(id, member, cancel));

    /// <summary>Keeps or sends the form, or takes a photo out, as the button says; with the photos that the proposal holds then.</summary>
    public async Task<(ContributionOutcome Outcome, IReadOnlyList<Photo> Photos)> TakeAsync(
        Reader member, Guid id, Matter matter, int? targetId, IReadOnlyDictionary<string, string> given, IFormCollection form, CancellationToken cancel)
    {
        var outcome = await KeepOrSendAsync(member, id, matter, targetId, given, form, cancel);
        return (outcome, await album.OfProposalAsync(outcome.Proposal?.Id ?? id, member.MemberId!.Value, cancel));
    }

    private async Task<ContributionOutcome> KeepOrSendAsync(
        Reader member, Guid id, Matter matter, int? targetId, IReadOnlyDictionary<string, string> given, IFormCollection form, CancellationToken cancel)
    {
        var content = await SentContent.DigestOfAsync(form, cancel);
        var (isSent, removed) = (form["then"] == "send", PhotoForm.Removed(form));
        if (form.Files.Count > 0 || removed is not null || !isSent)
        {
            var kept = await contributing.KeepAsync(member, id, matter, targetId, given, cancel, content);
            if (kept.Faults.Count > 0 || kept.Proposal is not { MayBeEdited: true })
                return kept;
            var faults = await PhotosAsync(member, kept.Proposal.Id, removed, form, cancel);
            if (faults.Count > 0 || !isSent)
                return kept with { Faults = faults };
        }
        return await contributing.SendAsync(member, id, matter, targetId, given, form["reason"], form["reply"], cancel, content);
    }

    private async Task<IReadOnlyList<FieldFault>> PhotosAsync(Reader member, Guid proposal, Guid? removed, IFormCollection form, CancellationToken cancel)
    {
        if (removed is { } photo)
            await album.RemoveAsync(member.MemberId!.Value, proposal, photo, cancel);
        var (developed, faults) = await album.DevelopAsync(member, form, Album.MostOfProposal, cancel);
        if (developed.Count == 0)
            return faults;
        try
        {
            await album.AddAsync(member.MemberId!.Value, proposal, developed, cancel);
            return [];
        }
        catch (NotAcceptedException refused)
        {
            return [new(PhotoForm.Field, refused.Message)];
        }
    }
}
