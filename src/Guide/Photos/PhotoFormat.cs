using SkiaSharp;

namespace Foreshore.Guide.Photos;

/// <summary>The kinds of file that are read, told apart by their first bytes and never by name or by what the browser says.</summary>
internal static class PhotoFormat
{
    public const string WhatIsRead = "Photos are read as JPEG, PNG or WebP";

    public static SKEncodedImageFormat? Of(ReadOnlySpan<byte> file) => file switch
    {
        _ when IsJpeg(file) => SKEncodedImageFormat.Jpeg,
        [0x89, (byte)'P', (byte)'N', (byte)'G', 13, 10, 26, 10, ..] => SKEncodedImageFormat.Png,
        [(byte)'R', (byte)'I', (byte)'F', (byte)'F', _, _, _, _, (byte)'W', (byte)'E', (byte)'B', (byte)'P', ..] => SKEncodedImageFormat.Webp,
        _ => null,
    };

    public static bool IsJpeg(ReadOnlySpan<byte> file) => file is [0xFF, 0xD8, 0xFF, ..];

    /// <summary>Why a file that is none of these is not taken.</summary>
    public static string WhyNot(ReadOnlySpan<byte> file) => file switch
    {
        [] => "The file is empty. Choose the photo again.",
        [_, _, _, _, (byte)'f', (byte)'t', (byte)'y', (byte)'p', ..] => $"This is a HEIC or AVIF picture, or a film. {WhatIsRead}: export it as JPEG and choose it again.",
        [(byte)'I', (byte)'I', ..] or [(byte)'M', (byte)'M', ..] => $"This is a TIFF or raw file. {WhatIsRead}: export it as JPEG and choose it again.",
        [(byte)'G', (byte)'I', (byte)'F', ..] => $"This is a GIF. {WhatIsRead}: save it as one of those and choose it again.",
        _ => $"This file is no photo that is read here. {WhatIsRead}; choose one of those.",
    };
}
