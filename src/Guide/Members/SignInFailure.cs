using System.Security.Cryptography;
using System.Text;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>
/// A try that failed, by a hash of what was tried: of an account, known or not, with the network it came from, or of a machine. Kept in the
/// database, so that several nodes count together, and for an hour alone.
/// </summary>
public sealed class SignInFailure
{
    private SignInFailure() { }

    internal SignInFailure(byte[] subject, Instant at) => (Subject, At) = (subject, at);

    public long Id { get; private set; }

    public byte[] Subject { get; private set; } = [];

    public Instant At { get; private set; }

    public static byte[] HashOf(string subject) => SHA256.HashData(Encoding.UTF8.GetBytes(subject));
}
