using Foreshore.Guide.Photos;
using Microsoft.EntityFrameworkCore;

namespace Foreshore.Guide.Contributions;

/// <summary>What becomes of a proposal's photos when it goes on. Nothing is saved here.</summary>
internal static class ProposalPhotos
{
    /// <summary>Who will see photos that come with a change of this kind.</summary>
    public static string PhotoWords(this Matter matter) => matter is Matter.Stance or Matter.Picture or Matter.NewPicture
        ? "Once accepted, whoever sees the spot sees them; members see your name beside them."
        : "For the wardens, as a proof; they do not come into the guide.";

    public static async Task SendPhotosAsync(this GuideDb db, Proposal proposal, CancellationToken cancel)
    {
        foreach (var photo in await OfAsync(db, proposal, cancel))
            photo.Send();
    }

    /// <param name="stance">Where they are shown; null: what was changed has no photos of its own, so they stay with the wardens.</param>
    public static async Task ShowPhotosAsync(this GuideDb db, Proposal proposal, int? stance, CancellationToken cancel)
    {
        if (stance is not { } id)
            return;
        foreach (var photo in await OfAsync(db, proposal, cancel))
            photo.ShowAt(id);
    }

    /// <summary>What is not taken into the guide is not kept.</summary>
    public static async Task DropPhotosAsync(this GuideDb db, Proposal proposal, CancellationToken cancel) =>
        db.RemoveRange(await OfAsync(db, proposal, cancel));

    private static Task<List<Photo>> OfAsync(GuideDb db, Proposal proposal, CancellationToken cancel) =>
        db.Photos.Where(p => p.ProposalId == proposal.Id).ToListAsync(cancel);
}
