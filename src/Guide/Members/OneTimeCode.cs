using System.Buffers.Binary;
using System.Globalization;
using System.Security.Cryptography;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>
/// The six figures of an authenticator app: RFC 6238 with HMAC-SHA-1, half minutes and one of them either side (its section 5.2).
/// The framework has the same, but reads the machine's clock and takes a code as often as it is sent.
/// </summary>
public static class OneTimeCode
{
    public const int Figures = 6;
    private const int KeyBytes = 20;
    private const int StepSeconds = 30;
    private const int StepsEitherSide = 1;

    public static byte[] NewKey() => RandomNumberGenerator.GetBytes(KeyBytes);

    public static bool IsKey(byte[]? key) => key?.Length == KeyBytes;

    /// <summary>Which half minute the code is of; null where it is none of those about now, or not later than <paramref name="after"/>.</summary>
    public static long? StepOf(byte[] key, string? typed, Instant now, long after)
    {
        var figures = new string([.. (typed ?? "").Where(char.IsAsciiDigit)]);
        if (figures.Length != Figures || (typed ?? "").Any(letter => !char.IsAsciiDigit(letter) && letter is not (' ' or '-')))
            return null;

        var current = now.ToUnixTimeSeconds() / StepSeconds;
        // Spent by a clock that was ahead: none of the codes about now can be that one, and waiting for it could take a year.
        if (after > current + StepsEitherSide)
            after = 0;
        for (var step = current - StepsEitherSide; step <= current + StepsEitherSide; step++)
        {
            if (step > after && At(key, step) == figures)
                return step;
        }

        return null;
    }

    public static string At(byte[] key, Instant now) => At(key, now.ToUnixTimeSeconds() / StepSeconds);

    /// <summary>RFC 4226 section 5.3: the last half byte tells where to read 31 bits.</summary>
    public static string At(byte[] key, long step, int figures = Figures)
    {
        Span<byte> counter = stackalloc byte[8];
        BinaryPrimitives.WriteInt64BigEndian(counter, step);
#pragma warning disable CA5350 // The standard's own; what authenticator apps compute.
        var hash = HMACSHA1.HashData(key, counter);
#pragma warning restore CA5350
        var number = BinaryPrimitives.ReadInt32BigEndian(hash.AsSpan(hash[^1] & 15)) & int.MaxValue;
        var modulus = (int)Math.Pow(10, figures);
        return (number % modulus).ToString(CultureInfo.InvariantCulture).PadLeft(figures, '0');
    }
}
