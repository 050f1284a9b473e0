using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>Somebody signed in on one device. The cookie names this row; without the row the cookie opens nothing.</summary>
public sealed class MemberSession
{
    /// <summary>Two weeks between visits is how often a club goes out; a season is how long one may stay signed in at all.</summary>
    public static readonly Duration Idle = Duration.FromDays(14);
    public static readonly Duration Longest = Duration.FromDays(90);

    /// <summary>How long after signing in one may change what guards the account, or other people's roles.</summary>
    public static readonly Duration Fresh = Duration.FromMinutes(30);

    /// <summary>Written down at most this often: a row a request would be a write for each picture.</summary>
    public static readonly Duration NotedEvery = Duration.FromMinutes(5);

    private MemberSession() { }

    public MemberSession(Guid memberId, int factors, string way, string device, Instant at) =>
        (MemberId, Factors, Way, Device, BeganAt, SeenAt) = (memberId, factors, way, device, at, at);

    public Guid Id { get; private set; } = Guid.NewGuid();

    public Guid MemberId { get; private set; }

    /// <summary>1: a password alone; 2: with a code, or a passkey that verified its owner.</summary>
    public int Factors { get; private set; }

    /// <summary>How they signed in, in words.</summary>
    public string Way { get; private set; } = "";

    /// <summary>Browser and system in words, so that one knows one's own devices.</summary>
    public string Device { get; private set; } = "";

    public Instant BeganAt { get; private set; }

    public Instant SeenAt { get; private set; }

    public bool HoldsAt(Instant now) => now < SeenAt + Idle && now < BeganAt + Longest && now >= BeganAt - Duration.FromDays(1);

    public bool IsFreshAt(Instant now) => now < BeganAt + Fresh;

    public bool SeeAt(Instant now)
    {
        if (now < SeenAt + NotedEvery)
            return false;

        SeenAt = now;
        return true;
    }

    /// <summary>A second factor was set up in this session, with a code to show for it.</summary>
    public MemberSession AddFactor(string way)
    {
        (Factors, Way) = (2, $"{Way}, {way}");
        return this;
    }
}
