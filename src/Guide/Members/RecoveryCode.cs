using System.Security.Cryptography;
using System.Text;

namespace Foreshore.Guide.Members;

/// <summary>A code on paper for the day the phone is gone. 120 random bits, so a plain hash of it tells nothing.</summary>
public sealed class RecoveryCode
{
    private const int Bytes = 15;
    private const int GroupLength = 6;

    private RecoveryCode() { }

    public int Id { get; private set; }

    public Guid MemberId { get; private set; }

    public byte[] Hash { get; private set; } = [];

    /// <summary>For example <c>k3x7qa-…</c>: four groups of six letters and figures.</summary>
    public static string NewText() =>
        string.Join('-', Base32.Of(RandomNumberGenerator.GetBytes(Bytes)).ToLowerInvariant().Chunk(GroupLength).Select(group => new string(group)));

    public static RecoveryCode Of(string text) => new() { Hash = HashOf(text) };

    /// <summary>Spaces, dashes and capitals are how people write, not part of the code.</summary>
    public static byte[] HashOf(string? typed) =>
        SHA256.HashData(Encoding.UTF8.GetBytes(new string([.. (typed ?? "").Where(char.IsAsciiLetterOrDigit)]).ToUpperInvariant()));
}
