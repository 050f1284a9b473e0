using System.Globalization;
using CsCheck;
using Xunit;

namespace Foreshore.Guide.Shell.Ink;

public sealed class InkPathTests
{
    [Theory]
    [InlineData(0, "0")]
    [InlineData(-0.04, "0")]
    [InlineData(0.25, ".2")]
    [InlineData(-0.6, "-.6")]
    [InlineData(12.34, "12.3")]
    [InlineData(-100, "-100")]
    public void Numbers_are_written_short(double value, string text) => Assert.Equal(text, InkPath.Number(value));

    [Fact]
    public void A_square_is_written_with_level_and_upright_strokes() =>
        Assert.Equal("M1 2h3v4h-3z", InkPath.Area([(1, 2), (4, 2), (4, 6), (1, 6)]));

    [Fact]
    public void Points_that_print_on_the_last_one_are_left_out() =>
        Assert.Equal("M0 0l5-5", InkPath.Line([(0, 0), (0.01, -0.04), (5, -5), (5.02, -5.01)]));

    [Fact]
    public void Rounding_never_adds_up_along_a_line() =>
        Gen.Double[-500, 500].Select(Gen.Double[-500, 500]).Array[2, 200].Sample(points =>
        {
            var drawn = Follow(InkPath.Line(points));
            var (x, y) = points[^1];
            return Math.Abs(drawn.X - x) <= 0.0501 && Math.Abs(drawn.Y - y) <= 0.0501;
        });

    /// <summary>Follows M, l, h and v to the end, as a browser would.</summary>
    private static (double X, double Y) Follow(string path)
    {
        var (x, y) = (0.0, 0.0);
        foreach (System.Text.RegularExpressions.Match step in System.Text.RegularExpressions.Regex.Matches(path, "([Mlhv])([^Mlhv]*)"))
        {
            var numbers = System.Text.RegularExpressions.Regex.Matches(step.Groups[2].Value, @"-?\d*\.?\d+")
                .Select(n => double.Parse(n.Value, CultureInfo.InvariantCulture)).ToArray();
            (x, y) = step.Groups[1].Value switch
            {
                "M" => (numbers[0], numbers[1]),
                "l" => (x + numbers[0], y + numbers[1]),
                "h" => (x + numbers[0], y),
                _ => (x, y + numbers[0]),
            };
        }
        return (x, y);
    }
}
