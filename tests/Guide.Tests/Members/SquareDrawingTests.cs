using System.Globalization;
using System.Text.RegularExpressions;
using Xunit;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace Foreshore.Guide.Members;

/// <summary>The drawn squares, read by ZXing.Net, which shares nothing with what drew them.</summary>
public sealed partial class SquareDrawingTests
{
    [Theory]
    [InlineData("otpauth://totp/Club:ana%40example.org?secret=JBSWY3DPEHPK3PXPJBSWY3DPEHPK3PXP&issuer=Club")]
    [InlineData("otpauth://totp/Gull%20Rock%20Photographers%3A%20north%20shore:a.rather.long.address%2Bguide%40sub.example.org?secret=JBSWY3DPEHPK3PXPJBSWY3DPEHPK3PXP&issuer=Gull%20Rock%20Photographers%3A%20north%20shore")]
    [InlineData("x")]
    public void Another_programs_reader_finds_the_text_in_the_drawing(string text)
    {
        var drawn = SquareDrawing.Of(text);
        var squares = new BitMatrix(drawn.Side);
        var dark = 0;
        foreach (Match run in Run().Matches(drawn.Path))
        {
            var (x, y, length) = (Number(run, 1), Number(run, 2), Number(run, 3));
            Assert.Equal(x, Number(run, 4));
            for (var i = 0; i < length; i++, dark++)
                squares[x + i, y] = true;
        }

        Assert.Equal(drawn.Path.Length, Run().Matches(drawn.Path).Sum(run => run.Length));
        Assert.InRange(dark, 1, drawn.Side * drawn.Side);
        // Each square as three by three dots, as a camera sees it.
        var read = new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(Grey(squares, 3))), new Dictionary<DecodeHintType, object> { [DecodeHintType.TRY_HARDER] = true });
        Assert.Equal(text, read?.Text);
    }

    private static RGBLuminanceSource Grey(BitMatrix squares, int scale)
    {
        var side = squares.Width * scale;
        var dots = new byte[side * side];
        for (var i = 0; i < dots.Length; i++)
            dots[i] = squares[i % side / scale, i / side / scale] ? (byte)0 : (byte)255;
        return new(dots, side, side, RGBLuminanceSource.BitmapFormat.Gray8);
    }

    private static int Number(Match run, int group) => int.Parse(run.Groups[group].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"M(\d+) (\d+)h(\d+)v1H(\d+)z")]
    private static partial Regex Run();
}
