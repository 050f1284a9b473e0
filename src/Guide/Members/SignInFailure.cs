using System.Security.Cryptography;
using System.Text;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>
/// A try that failed, by a hash of what was tried: of an account, known or not, or of the address of a machine. Kept in the database, so
/// that several nodes count together, and for a quarter of an hour alone.
/// </summary>
public sealed class SignInFailure
{
    private SignInFailure() { }

    private SignInFailure(string subject, Instant at) => (Subject, At) = (HashOf(subject), at);

    public long Id { get; private set; }

    public byte[] Subject { get; private set; } = [];

    public Instant At { get; private set; }

    public static SignInFailure OfAccount(string email, Instant at) => new(Account(email), at);

    public static SignInFailure OfMachine(string? address, Instant at) => new(Machine(address), at);

    public static byte[] AccountHash(string email) => HashOf(Account(email));

    public static byte[] MachineHash(string? address) => HashOf(Machine(address));

    private static string Account(string email) => $"account {Member.Folded(email)}";

    private static string Machine(string? address) => $"machine {address}";

    private static byte[] HashOf(string subject) => SHA256.HashData(Encoding.UTF8.GetBytes(subject));
}
