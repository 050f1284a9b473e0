namespace Foreshore.Guide.Compositions;

/// <summary>Short level strokes under a sea horizon, closer together the farther the water: a manner of engraving, not a forecast.</summary>
internal static class SeaLines
{
    private static readonly double[] DegreesBelow = [0.35, 0.8, 1.4, 2.2, 3.2, 4.6, 6.4, 8.8, 12, 16, 21, 27, 34];

    public static IEnumerable<IReadOnlyList<(double X, double Y)>> Below(double dipDegrees, FramePicture picture)
    {
        for (var row = 0; row < DegreesBelow.Length; row++)
        {
            if (picture.At(picture.Frame.Facing.Degrees, -dipDegrees - DegreesBelow[row]) is not var (_, y) || y > picture.Height || y < 0) continue;
            // Strokes and gaps step by the golden ratio, which never falls into a pattern.
            var x = -Golden(row) * 20;
            for (var stroke = 0; x < picture.Width; stroke++)
            {
                var length = 9 + 26 * Golden(row * 7 + stroke * 3 + 1) + 0.3 * DegreesBelow[row];
                yield return [(x, y), (x + length, y)];
                x += length + 12 + (34 + 2 * row) * Golden(row * 5 + stroke * 11 + 4);
            }
        }
    }

    private static double Golden(int step) => step * 0.6180339887498949 % 1;
}
