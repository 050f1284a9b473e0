using System.Globalization;
using System.Security.Cryptography;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>What a browser is asked for, and the seal that comes back beside its answer: what was asked, of whom and when.</summary>
public sealed record PasskeyQuestion(string OptionsJson, string Seal);

/// <summary>
/// Passkeys by the framework's own handler, always with the owner verified by the device, so that one counts as two factors. What was
/// asked travels in the form under seal, and each passkey takes only answers to questions younger than its last use.
/// </summary>
public sealed class Passkeys(IDbContextFactory<GuideDb> database, IClock clock, IDataProtectionProvider protection, IPasskeyHandler<Member> handler)
{
    private static readonly Duration Patience = Duration.FromMinutes(10);
    private readonly IDataProtector seals = protection.CreateProtector("Foreshore.Passkeys");

    public async Task<PasskeyQuestion> AskAsync(HttpContext http)
    {
        var question = await handler.MakeRequestOptionsAsync(null, http);
        return new(question.RequestOptionsJson, Sealed("sign in", question.AssertionState));
    }

    public async Task<PasskeyQuestion> AskNewAsync(HttpContext http, Member member)
    {
        var question = await handler.MakeCreationOptionsAsync(new() { Id = member.Id.ToString(), Name = member.Email, DisplayName = member.Name }, http);
        return new(question.CreationOptionsJson, Sealed($"add to {member.Id}", question.AttestationState));
    }

    /// <summary>The member whose passkey answered; null where the answer does not hold, whatever is wrong with it.</summary>
    public async Task<Member?> AnswerAsync(HttpContext http, string? credential, string? seal)
    {
        if (Opened("sign in", seal) is not var (state, askedAt) || string.IsNullOrEmpty(credential))
            return null;

        var result = await handler.PerformAssertionAsync(new() { HttpContext = http, CredentialJson = credential, AssertionState = state });
        if (!result.Succeeded || !result.Passkey.IsUserVerified)
            return null;

        await using var db = await database.CreateDbContextAsync(http.RequestAborted);
        var member = await db.Members.Include(m => m.Passkeys).SingleOrDefaultAsync(m => m.Id == result.User.Id && m.RemovedAt == null, http.RequestAborted);
        var passkey = member?.Passkeys.FirstOrDefault(p => p.CredentialId.AsSpan().SequenceEqual(result.Passkey.CredentialId));
        if (member is null || passkey is null || passkey.HasAnswered(askedAt, clock.GetCurrentInstant()))
            return null;

        passkey.Use(result.Passkey, clock.GetCurrentInstant());
        await db.SaveChangesAsync(http.RequestAborted);
        return member;
    }

    /// <summary>The public half of a new passkey of this member; null where the answer does not hold.</summary>
    public async Task<UserPasskeyInfo?> NewAsync(HttpContext http, Guid memberId, string? credential, string? seal)
    {
        if (Opened($"add to {memberId}", seal) is not var (state, _) || string.IsNullOrEmpty(credential))
            return null;

        var result = await handler.PerformAttestationAsync(new() { HttpContext = http, CredentialJson = credential, AttestationState = state });
        return result.Succeeded && result.Passkey.IsUserVerified ? result.Passkey : null;
    }

    private string Sealed(string purpose, string? state) =>
        seals.Protect(string.Create(CultureInfo.InvariantCulture, $"{clock.GetCurrentInstant().ToUnixTimeTicks()}|{purpose}|{state}"));

    private (string State, Instant AskedAt)? Opened(string purpose, string? seal)
    {
        try
        {
            if (string.IsNullOrEmpty(seal) || seals.Unprotect(seal).Split('|', 3) is not [var at, var asked, var state] || asked != purpose)
                return null;

            var askedAt = Instant.FromUnixTimeTicks(long.Parse(at, CultureInfo.InvariantCulture));
            var age = clock.GetCurrentInstant() - askedAt;
            return age < Patience && age > -Patience ? (state, askedAt) : null;
        }
        catch (CryptographicException)
        {
            return null;
        }
    }
}
