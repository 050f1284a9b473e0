using System.Text;
using CsCheck;
using Foreshore.Guide.Locations;
using SkiaSharp;
using Xunit;

namespace Foreshore.Guide.Photos;

/// <summary>A stranger's file in, pixels out; or words that say what to do.</summary>
public sealed class DevelopingTests
{
    private static readonly string[] Plain = ["E0 JFIF", "DB", "C0", "C4"];

    [Theory]
    [InlineData(SKEncodedImageFormat.Jpeg)]
    [InlineData(SKEncodedImageFormat.Png)]
    [InlineData(SKEncodedImageFormat.Webp)]
    public void The_three_formats_become_two_plain_jpeg_files(SKEncodedImageFormat format)
    {
        var (width, height, full, small) = Developing.Develop(MadePicture.Encoded(format, 3000, 1000));

        Assert.Equal((2400, 800), (width, height));
        Assert.Equal((2400, 800), Size(full));
        Assert.Equal((640, 213), Size(small));
        AssertPlain(full, small);
        AssertCorners(full, MadePicture.Corners[0], MadePicture.Corners[1]);
    }

    [Fact]
    public void A_small_picture_is_not_blown_up()
    {
        var (width, height, full, small) = Developing.Develop(MadePicture.Jpeg());

        Assert.Equal((96, 64), (width, height));
        Assert.Equal((Size(full), Size(small)), ((96, 64), (96, 64)));
    }

    /// <summary>TIFF 6.0, page 36: which visual side the stored first row and first column are. Corners as stored: 0 1 above, 2 3 below.</summary>
    [Theory]
    [InlineData(1, 0, 1)]
    [InlineData(2, 1, 0)]
    [InlineData(3, 3, 2)]
    [InlineData(4, 2, 3)]
    [InlineData(5, 0, 2)]
    [InlineData(6, 2, 0)]
    [InlineData(7, 3, 1)]
    [InlineData(8, 1, 3)]
    public void It_stands_upright_however_the_camera_was_held(int orientation, int upperLeft, int upperRight)
    {
        var (width, height, full, small) = Developing.Develop(MadePicture.Tagged(orientation));

        Assert.Equal(orientation < 5 ? (96, 64) : (64, 96), (width, height));
        AssertCorners(full, MadePicture.Corners[upperLeft], MadePicture.Corners[upperRight]);
        AssertCorners(small, MadePicture.Corners[upperLeft], MadePicture.Corners[upperRight]);
        AssertPlain(full, small);
    }

    [Fact]
    public void Position_names_and_comments_do_not_come_through()
    {
        var tagged = MadePicture.Tagged(6);
        Assert.Equal(["E1 Exif", "E1 http", "ED Phot", "FE secr"], MadePicture.Markers(tagged).Take(4));

        var (_, _, full, small) = Developing.Develop(tagged);

        AssertPlain(full, small);
        foreach (var word in (string[])["Exif", "xmp", "GPS", "8BIM", "secret", "Ana", "Adobe"])
            Assert.DoesNotContain(word, Encoding.Latin1.GetString([.. full, .. small]), StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_that_hides_behind_or_inside_a_picture_comes_through()
    {
        var hidden = "<script>alert(document.domain)</script><?php system($_GET['c']); ?>"u8.ToArray();
        var png = MadePicture.Encoded(SKEncodedImageFormat.Png);

        foreach (var file in (byte[][])[[.. MadePicture.Jpeg(), .. hidden], [.. png, .. "PK\u0003\u0004"u8, .. hidden]])
        {
            var (_, _, full, small) = Developing.Develop(file);
            AssertPlain(full, small);
            Assert.True(full.AsSpan().IndexOf("script"u8) < 0 && small.AsSpan().IndexOf("script"u8) < 0);
        }
    }

    [Fact]
    public void Four_inks_sixteen_bits_and_moving_pictures_are_read()
    {
        using var ink = SKBitmap.Decode(Developing.Develop(MadePicture.Cmyk()).Full);
        // Half the ink, and half the black over it: a quarter of the light (0.5 × 0.5 × 255 = 64).
        Assert.InRange(ink.GetPixel(12, 8).Red, 60, 68);
        using var deep = SKBitmap.Decode(Developing.Develop(MadePicture.DeepPng(40, 30)).Full);
        Assert.True(deep.GetPixel(20, 15) is { Red: > 250, Green: < 5, Blue: < 5 });
        Assert.Equal((32, 32), Size(Developing.Develop(MadePicture.Animated()).Full));
    }

    [Fact]
    public void What_is_see_through_stands_on_white()
    {
        using var clear = new SKBitmap(20, 20, SKColorType.Rgba8888, SKAlphaType.Premul);
        clear.Erase(SKColors.Transparent);

        using var seen = SKBitmap.Decode(Developing.Develop(clear.Encode(SKEncodedImageFormat.Png, 100).ToArray()).Full);

        Assert.True(seen.GetPixel(10, 10) is { Red: > 250, Green: > 250, Blue: > 250 });
    }

    public static TheoryData<string, byte[], string> Refused => new()
    {
        { "nothing", [], "The file is empty" },
        { "drawing", "<svg xmlns='http://www.w3.org/2000/svg'><script/></svg>"u8.ToArray(), "no photo that is read here" },
        { "heic", [0, 0, 0, 24, .. "ftypheic"u8, .. new byte[12]], "HEIC" },
        { "raw", [.. "II*\0"u8, .. new byte[40]], "TIFF or raw" },
        { "gif", [.. "GIF89a"u8, .. new byte[40]], "GIF" },
        { "page with a photo's head", [0xFF, 0xD8, 0xFF, 0xE0, .. "<html><script>alert(1)</script>"u8], "holds none that can be read" },
        { "archive", [.. "PK\u0003\u0004"u8, .. new byte[40]], "no photo that is read here" },
        { "cut short", MadePicture.Jpeg()[..^60], "cut short" },
        { "png cut short", MadePicture.Encoded(SKEncodedImageFormat.Png, 400, 300)[..^90], "cut short" },
        { "far too wide", MadePicture.JpegStating(65500, 65500), "80 megapixels" },
        { "a little too wide", MadePicture.JpegStating(10000, 8001), "80 megapixels" },
        { "png that states too much", MadePicture.Png(65500, 65500, 8, new byte[64]), "80 megapixels" },
        { "too long", [0xFF, 0xD8, 0xFF, .. new byte[Developing.MostBytes]], "larger than 25 MB" },
    };

    [Theory]
    [MemberData(nameof(Refused), DisableDiscoveryEnumeration = true)]
    public void What_is_not_taken_says_why_and_what_to_do(string name, byte[] file, string words)
    {
        var refused = Assert.Throws<NotAcceptedException>(() => Developing.Develop(file));

        Assert.Contains(words, refused.Message, StringComparison.Ordinal);
        Assert.True(refused.Message.EndsWith('.'), name);
    }

    [Fact]
    public void Damaged_files_are_read_or_refused_and_nothing_else_happens()
    {
        byte[][] whole = [MadePicture.Tagged(6), MadePicture.Encoded(SKEncodedImageFormat.Png), MadePicture.Encoded(SKEncodedImageFormat.Webp), MadePicture.Animated(), MadePicture.Cmyk(), MadePicture.DeepPng(9, 7)];
        var taken = 0;

        Gen.Select(Gen.Int[0, whole.Length - 1], Gen.Select(Gen.Int[0, int.MaxValue], Gen.Byte).Array[1, 12], Gen.Int[0, 3], Gen.Int[0, int.MaxValue])
            .Sample((which, changes, kind, at) =>
            {
                var file = (byte[])whole[which].Clone();
                foreach (var (place, value) in changes)
                    file[place % file.Length] = value;
                if (kind == 1)
                    file = file[..(at % file.Length)];
                if (kind == 2)
                    file = [.. file[..(at % file.Length)], .. changes.Select(change => change.Item2), .. file[(at % file.Length)..]];
                try
                {
                    var (width, height, full, small) = Developing.Develop(file);
                    Interlocked.Increment(ref taken);
                    AssertPlain(full, small);
                    Assert.Equal((width, height), Size(full));
                }
                catch (NotAcceptedException)
                {
                    // As it should be.
                }
            }, iter: 600, threads: 1);

        Assert.InRange(taken, 1, 599);
    }

    private static void AssertPlain(params byte[][] files) => Assert.All(files, file =>
    {
        Assert.Equal(Plain, MadePicture.Markers(file).Distinct());
        Assert.Equal([0xFF, 0xD9], file[^2..]);
    });

    private static (int, int) Size(byte[] file)
    {
        using var codec = SKCodec.Create(SKData.CreateCopy(file));
        return (codec.Info.Width, codec.Info.Height);
    }

    private static void AssertCorners(byte[] file, SKColor upperLeft, SKColor upperRight)
    {
        using var seen = SKBitmap.Decode(file);
        Assert.True(IsLike(seen.GetPixel(8, 8), upperLeft), $"upper left {seen.GetPixel(8, 8)}");
        Assert.True(IsLike(seen.GetPixel(seen.Width - 9, 8), upperRight), $"upper right {seen.GetPixel(seen.Width - 9, 8)}");
    }

    private static bool IsLike(SKColor seen, SKColor meant) =>
        Math.Abs(seen.Red - meant.Red) < 40 && Math.Abs(seen.Green - meant.Green) < 40 && Math.Abs(seen.Blue - meant.Blue) < 40;
}
