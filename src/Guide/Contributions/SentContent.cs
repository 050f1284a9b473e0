using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;
using Foreshore.Guide.Members;

namespace Foreshore.Guide.Contributions;

/// <summary>
/// What a form brought, as a digest. A browser's Back button brings a form's number again, perhaps with other words in it: the same
/// content under the same number is the same sending, other content is a sending of its own.
/// </summary>
internal static class SentContent
{
    private static readonly string[] NotContent = ["form-id", "then", "_handler", "__RequestVerificationToken"];

    public static byte[] DigestOf(params IEnumerable<(string Name, string Text)> texts)
    {
        using var digest = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var (name, text) in texts.OrderBy(each => each.Name, StringComparer.Ordinal))
        {
            Append(digest, name);
            Append(digest, text.ReplaceLineEndings("\n"));
        }
        return digest.GetHashAndReset();
    }

    /// <summary>Of all that was typed and chosen, files included; not of which button was pressed.</summary>
    public static async Task<byte[]> DigestOfAsync(IFormCollection form, CancellationToken cancel)
    {
        List<(string, string)> texts = [.. from pair in form
                                           where !NotContent.Contains(pair.Key)
                                           from text in pair.Value
                                           select (pair.Key, text ?? "")];
        foreach (var file in form.Files.Where(file => file.Length > 0))
        {
            await using var stream = file.OpenReadStream();
            texts.Add((file.Name, Convert.ToHexString(await SHA256.HashDataAsync(stream, cancel))));
        }
        return DigestOf(texts.OrderBy(each => each.Item2, StringComparer.Ordinal));
    }

    /// <summary>
    /// The number under which what was sent is kept: made of the member, the form, the number the page gave it and the content.
    /// <see cref="Guid.Empty"/> where the form brought no number; the verbs refuse that in words.
    /// </summary>
    /// <param name="keepsName">False: it must not lead to the member, so they are no part of it.</param>
    public static async Task<Guid> KeyAsync(this HttpContext http, string form, bool keepsName = true)
    {
        var posted = await http.Request.ReadFormAsync(http.RequestAborted);
        if (SheetPost.FormId(posted) is var number && number == Guid.Empty)
            return Guid.Empty;
        var content = Convert.ToHexString(await DigestOfAsync(posted, http.RequestAborted));
        return KeyOf(number, form, keepsName ? http.SignedIn()!.MemberId.ToString("N") : "", content);
    }

    /// <summary>A number made of another one and of what tells the two apart.</summary>
    public static Guid KeyOf(Guid number, params string[] parts) =>
        new(DigestOf([("", number.ToString("N")), .. parts.Select((part, i) => ($"{i}", part))]).AsSpan(0, 16));

    private static void Append(IncrementalHash digest, string text)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        Span<byte> length = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(length, bytes.Length);
        digest.AppendData(length);
        digest.AppendData(bytes);
    }
}
