using System.Security.Cryptography;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>Somebody of the club who can sign in. What others see of them is the name they chose, nothing else.</summary>
public sealed class Member
{
    public const int LongestName = 60;
    public const int LongestEmail = 254;

    /// <summary>Enough to lose a phone now and then; fewer are easier to keep in a wallet.</summary>
    public const int RecoveryCodesGiven = 10;
    public const int MostPasskeys = 10;

    private readonly List<RecoveryCode> recoveryCodes = [];
    private readonly List<MemberPasskey> passkeys = [];

    private Member() { }

    public Member(string email, string name, Role role, Instant joinedAt)
    {
        Email = Folded(email);
        CallThemselves(name);
        GiveRole(role);
        JoinedAt = joinedAt;
    }

    public Guid Id { get; private set; } = Guid.NewGuid();

    /// <summary>What one signs in with, in lower case; shown to its owner and to admins alone.</summary>
    public string Email { get; private set; } = "";

    public string Name { get; private set; } = "";

    public Role Role { get; private set; }

    public string PasswordHash { get; private set; } = "";

    /// <summary>The secret that the authenticator app holds too, under a seal whose key is not in the database.</summary>
    public byte[]? AuthenticatorKey { get; private set; }

    /// <summary>The last half minute whose code was used: a code counts once.</summary>
    public long LastCodeStep { get; private set; }

    public Instant JoinedAt { get; private set; }

    public Instant? RemovedAt { get; private set; }

    public uint Version { get; private set; }

    public IReadOnlyList<RecoveryCode> RecoveryCodes => recoveryCodes;

    public IReadOnlyList<MemberPasskey> Passkeys => passkeys;

    public bool IsRemoved => RemovedAt is not null;

    public bool HasSecondStep => AuthenticatorKey is not null;

    /// <summary>Wardens and admins do nothing on one factor.</summary>
    public bool NeedsTwoFactors => Role >= Role.Warden;

    public static string Folded(string? email) => (email ?? "").Trim().ToLowerInvariant();

    /// <summary>As far as one can tell without writing to it: something, an at sign, something, no spaces.</summary>
    public static bool LooksLikeEmail(string? email) =>
        Folded(email) is { Length: >= 3 and <= LongestEmail } folded
        && folded.IndexOf('@', StringComparison.Ordinal) is > 0 and var at
        && at == folded.LastIndexOf('@') && at < folded.Length - 1
        // A capital that has no small letter here has one in the database, and there the two would not be the same address.
        && !folded.Any(letter => char.IsWhiteSpace(letter) || char.IsControl(letter) || char.IsUpper(letter));

    public Member CallThemselves(string name)
    {
        var plain = Require.Text(name, LongestName, "The name");
        Require.That(!plain.Any(char.IsControl), "A name is one line. Leave line breaks out.");
        Name = plain;
        return this;
    }

    public Member KeepPassword(string hash)
    {
        PasswordHash = hash;
        return this;
    }

    /// <summary>A new password, and nothing else that opened the account before: who lost it cannot tell who found it.</summary>
    public Member StartAnew(string hash)
    {
        passkeys.Clear();
        recoveryCodes.Clear();
        return DropAuthenticator().KeepPassword(hash);
    }

    public Member GiveRole(Role role)
    {
        Require.That(role is >= Role.Member and <= Role.Admin, "Somebody of the club is a member, a warden or an admin.");
        Role = role;
        return this;
    }

    public Member Remove(Instant at)
    {
        Require.That(!IsRemoved, "They are removed already.");
        RemovedAt = at;
        return this;
    }

    public Member TakeBack()
    {
        Require.That(IsRemoved, "They are a member already.");
        RemovedAt = null;
        return this;
    }

    /// <summary>Keeps the secret once a code made from it has shown that the app holds it too.</summary>
    public bool SetUpAuthenticator(AuthenticatorSeal seal, byte[] key, string? code, Instant now)
    {
        if (OneTimeCode.StepOf(key, code, now, after: 0) is not { } step)
            return false;

        (AuthenticatorKey, LastCodeStep) = (seal.Seal(key, Id), step);
        return true;
    }

    /// <summary>Seals a secret kept before there was a seal. False where it is sealed with another key, so that no code will open anything.</summary>
    internal bool SealAuthenticator(AuthenticatorSeal seal)
    {
        if (OneTimeCode.IsKey(AuthenticatorKey))
            AuthenticatorKey = seal.Seal(AuthenticatorKey!, Id);
        return AuthenticatorKey is null || seal.Open(AuthenticatorKey, Id) is not null;
    }

    public Member DropAuthenticator()
    {
        (AuthenticatorKey, LastCodeStep) = (null, 0);
        return this;
    }

    /// <summary>True once for each code: it is spent by being asked about.</summary>
    public bool SpendCode(AuthenticatorSeal seal, string? code, Instant now)
    {
        if (AuthenticatorKey is null || seal.Open(AuthenticatorKey, Id) is not { } key || OneTimeCode.StepOf(key, code, now, LastCodeStep) is not { } step)
            return false;

        LastCodeStep = step;
        return true;
    }

    /// <summary>New codes in place of the old; they are shown once and kept only as hashes.</summary>
    public IReadOnlyList<string> MakeRecoveryCodes()
    {
        recoveryCodes.Clear();
        var shown = Enumerable.Range(0, RecoveryCodesGiven).Select(_ => RecoveryCode.NewText()).ToList();
        recoveryCodes.AddRange(shown.Select(RecoveryCode.Of));
        return shown;
    }

    public bool SpendRecoveryCode(string? typed)
    {
        var hash = RecoveryCode.HashOf(typed);
        return recoveryCodes.Find(kept => CryptographicOperations.FixedTimeEquals(kept.Hash, hash)) is { } found && recoveryCodes.Remove(found);
    }

    public Member AddPasskey(MemberPasskey passkey)
    {
        Require.That(passkeys.Count < MostPasskeys, $"Ten passkeys are kept at most. Remove one that is no longer used, then add this one.");
        passkeys.Add(passkey);
        return this;
    }

    public bool RemovePasskey(Guid id) => passkeys.RemoveAll(kept => kept.Id == id) > 0;
}
