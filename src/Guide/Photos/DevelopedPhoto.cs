using System.Buffers.Binary;

namespace Foreshore.Guide.Photos;

/// <summary>What comes out of developing: two new JPEG files that hold pixels and nothing else.</summary>
/// <param name="Sha256">Of the file that went in.</param>
public sealed record DevelopedPhoto(byte[] Sha256, int Width, int Height, byte[] Full, byte[] Small)
{
    private const int HeadBytes = 16;

    /// <summary>As it goes from one process to the other: four numbers, then the two files.</summary>
    public static void Write(Stream to, int width, int height, ReadOnlySpan<byte> full, ReadOnlySpan<byte> small)
    {
        Span<byte> head = stackalloc byte[HeadBytes];
        BinaryPrimitives.WriteInt32LittleEndian(head, width);
        BinaryPrimitives.WriteInt32LittleEndian(head[4..], height);
        BinaryPrimitives.WriteInt32LittleEndian(head[8..], full.Length);
        BinaryPrimitives.WriteInt32LittleEndian(head[12..], small.Length);
        to.Write(head);
        to.Write(full);
        to.Write(small);
        to.Flush();
    }

    /// <summary>Null where the answer is not whole: the other process is not trusted more than the file it read.</summary>
    public static DevelopedPhoto? Read(byte[] answer, byte[] sha256)
    {
        if (answer.Length < HeadBytes)
            return null;
        var (width, height) = (Number(0), Number(4));
        var (full, small) = (Number(8), Number(12));
        var isWhole = Math.Min(width, height) > 0 && Math.Max(width, height) <= Developing.LongestFull
            && full > 0 && small > 0 && (long)HeadBytes + full + small == answer.Length
            && PhotoFormat.IsJpeg(answer.AsSpan(HeadBytes, full)) && PhotoFormat.IsJpeg(answer.AsSpan(HeadBytes + full, small));
        return isWhole ? new(sha256, width, height, answer[HeadBytes..(HeadBytes + full)], answer[(HeadBytes + full)..]) : null;

        int Number(int at) => BinaryPrimitives.ReadInt32LittleEndian(answer.AsSpan(at));
    }
}
