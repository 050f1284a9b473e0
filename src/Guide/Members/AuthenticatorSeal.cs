using System.Security.Cryptography;
using Foreshore.Guide.Database;
using Microsoft.EntityFrameworkCore;

namespace Foreshore.Guide.Members;

/// <summary>
/// Seals what authenticator apps hold too, with a key outside the database (<see cref="SiteKey"/>): whoever reads the database computes no
/// codes. AES-256 in GCM, bound to the member, so that a row put into another account opens nothing there.
/// </summary>
public sealed class AuthenticatorSeal(SiteKey key)
{
    private const byte Form = 1;
    private const int NonceBytes = 12;
    private const int TagBytes = 16;
    private readonly byte[] key = key.For("Foreshore authenticators 1");

    public byte[] Seal(byte[] secret, Guid member)
    {
        var sealedSecret = new byte[1 + NonceBytes + secret.Length + TagBytes];
        sealedSecret[0] = Form;
        var nonce = sealedSecret.AsSpan(1, NonceBytes);
        RandomNumberGenerator.Fill(nonce);
        using var cipher = new AesGcm(key, TagBytes);
        cipher.Encrypt(nonce, secret, sealedSecret.AsSpan(1 + NonceBytes, secret.Length), sealedSecret.AsSpan(^TagBytes..), member.ToByteArray());
        return sealedSecret;
    }

    /// <summary>Null where it was sealed with another key or for another member.</summary>
    public byte[]? Open(byte[] sealedSecret, Guid member)
    {
        if (sealedSecret.Length <= 1 + NonceBytes + TagBytes || sealedSecret[0] != Form)
            return null;
        var secret = new byte[sealedSecret.Length - 1 - NonceBytes - TagBytes];
        try
        {
            using var cipher = new AesGcm(key, TagBytes);
            cipher.Decrypt(sealedSecret.AsSpan(1, NonceBytes), sealedSecret.AsSpan(1 + NonceBytes, secret.Length), sealedSecret.AsSpan(^TagBytes..), secret, member.ToByteArray());
            return secret;
        }
        catch (AuthenticationTagMismatchException)
        {
            return null;
        }
    }

    /// <summary>
    /// At start: secrets kept before there was a seal are sealed. In words what is wrong where none of those sealed opens; null where all is well.
    /// </summary>
    public async Task<string?> SealAllAsync(IDbContextFactory<GuideDb> database, CancellationToken cancel = default)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        var held = await db.Members.Where(m => m.AuthenticatorKey != null).ToListAsync(cancel);
        var foreign = held.Count(member => !member.SealAuthenticator(this));
        await db.SaveChangesAsync(cancel);
        return foreign == 0 ? null
            : $"{foreign} of {held.Count} authenticators were set up under another key than the file in Site:KeyFile. Their codes are refused; put the old file back, or let those members sign in with a recovery code or a new start and set up anew.";
    }
}
