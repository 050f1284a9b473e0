using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Photos;

/// <summary>Who may look at it: its owner; its owner and wardens; everybody who sees its vantage point exactly.</summary>
public enum PhotoState { Kept, Sent, Shown }

/// <summary>
/// A photo as the site made it anew from what a member sent; the bytes stand apart in <see cref="PhotoFile"/>, so that lists never load
/// them. It came with a proposal, or with a hazard note and then shows for as long as the note does.
/// </summary>
public sealed class Photo
{
    private Photo() { }

    private Photo(DevelopedPhoto developed, Guid member, Instant at)
    {
        (Width, Height, Sha256, File) = (developed.Width, developed.Height, developed.Sha256, new PhotoFile(developed));
        (MemberId, KeptAt) = (member, at);
    }

    /// <summary>Random, so that nobody can count or guess.</summary>
    public Guid Id { get; private set; } = Guid.NewGuid();

    /// <summary>Null once the account is erased.</summary>
    public Guid? MemberId { get; private set; }

    /// <summary>Of the file as it was sent: the same file twice is one photo.</summary>
    public byte[] Sha256 { get; private set; } = [];

    public int Width { get; private set; }

    public int Height { get; private set; }

    public Instant KeptAt { get; private set; }

    public Guid? ProposalId { get; private set; }

    public int? HazardNoteId { get; private set; }

    /// <summary>Where it is shown, once a proposal is accepted.</summary>
    public int? VantagePointId { get; private set; }

    public PhotoState State { get; private set; }

    /// <summary>Loaded only to be sent out.</summary>
    public PhotoFile? File { get; private set; }

    public string Address => $"/photos/{Id}";

    public string SmallAddress => $"/photos/{Id}/small";

    /// <summary>The thumbnail's size, for the page to leave room.</summary>
    public (int Width, int Height) Small => Developing.Fitted(Width, Height, Developing.LongestSmall);

    public static Photo OfProposal(DevelopedPhoto developed, Guid member, Guid proposal, Instant at) => new(developed, member, at) { ProposalId = proposal };

    /// <summary>A warden sees it at once, others with the note.</summary>
    public static Photo OfHazard(DevelopedPhoto developed, Guid member, Instant at) => new(developed, member, at) { State = PhotoState.Sent };

    public void Send()
    {
        if (State == PhotoState.Kept)
            State = PhotoState.Sent;
    }

    public void ShowAt(int vantagePoint)
    {
        Require.That(ProposalId is not null, "A photo of a hazard shows with its note.");
        (State, VantagePointId) = (PhotoState.Shown, vantagePoint);
    }
}

/// <summary>The two JPEG files of a photo.</summary>
public sealed class PhotoFile
{
    private PhotoFile() { }

    internal PhotoFile(DevelopedPhoto developed) => (Full, Small) = (developed.Full, developed.Small);

    public Guid PhotoId { get; private set; }

    public byte[] Full { get; private set; } = [];

    public byte[] Small { get; private set; } = [];
}
