using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>The member and session behind a request, as the database had them when it began.</summary>
public sealed record SignedIn(Guid SessionId, Guid MemberId, string Name, string Email, Role Role, int Factors, bool IsFresh, Instant BeganAt)
{
    /// <summary>A warden or admin on one factor: the way leads to setting up the second and nowhere else.</summary>
    public bool MustSetUpSecondStep => Role >= Role.Warden && Factors < 2;

    public Reader Reader => MustSetUpSecondStep ? Reader.Visitor : new(Role, MemberId) { Name = Name };
}

public static class ReaderOfRequest
{
    /// <summary>Who reads this request: the one way in which pages, endpoints and drawings learn it.</summary>
    public static Reader Reader(this HttpContext http) => http.SignedIn()?.Reader ?? Members.Reader.Visitor;

    public static SignedIn? SignedIn(this HttpContext http) => http.Features.Get<SignedIn>();
}
