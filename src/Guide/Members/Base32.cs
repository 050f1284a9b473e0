namespace Foreshore.Guide.Members;

/// <summary>RFC 4648 section 6, without padding: how authenticator apps take their secret.</summary>
public static class Base32
{
    private const string Alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";

    public static string Of(ReadOnlySpan<byte> bytes)
    {
        var text = new char[(bytes.Length * 8 + 4) / 5];
        for (var i = 0; i < text.Length; i++)
        {
            var bit = i * 5;
            var pair = (bytes[bit / 8] << 8) | (bit / 8 + 1 < bytes.Length ? bytes[bit / 8 + 1] : 0);
            text[i] = Alphabet[(pair >> (11 - bit % 8)) & 31];
        }

        return new string(text);
    }

    /// <summary>Null where a letter is not of the alphabet; spaces and dashes are skipped.</summary>
    public static byte[]? Bytes(string? text)
    {
        var letters = (text ?? "").Where(letter => letter is not (' ' or '-' or '=')).Select(letter => Alphabet.IndexOf(char.ToUpperInvariant(letter), StringComparison.Ordinal)).ToList();
        if (letters.Contains(-1))
            return null;

        var bytes = new byte[letters.Count * 5 / 8];
        for (var bit = 0; bit < bytes.Length * 8; bit++)
        {
            if (((letters[bit / 5] >> (4 - bit % 5)) & 1) == 1)
                bytes[bit / 8] |= (byte)(128 >> (bit % 8));
        }

        return bytes;
    }
}
