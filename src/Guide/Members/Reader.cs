namespace Foreshore.Guide.Members;

/// <summary>Roles nest: an admin can do all that a warden can, a warden all that a member can.</summary>
public enum Role { Visitor, Member, Warden, Admin }

/// <summary>Who reads. Every query that shows places takes one; a request's own is <see cref="ReaderOfRequest.Reader"/>.</summary>
/// <param name="Role">What the reader may do at most.</param>
/// <param name="MemberId">The member, where signed in; <c>null</c> for a visitor.</param>
public sealed record Reader(Role Role, Guid? MemberId = null)
{
    public static readonly Reader Visitor = new(Role.Visitor);

    /// <summary>As they chose to be called; <c>null</c> for a visitor.</summary>
    public string? Name { get; init; }

    public bool IsMember => Role >= Role.Member;

    public bool IsWarden => Role >= Role.Warden;

    public bool IsAdmin => Role >= Role.Admin;
}
