namespace Foreshore.Almanac.Earth;

/// <summary>Ground made from a formula, on grids like those of a mission.</summary>
internal static class MadeGround
{
    internal const double Radius = 6371000;

    /// <summary>Ground at three arc seconds, a square of some degrees with a corner in the south-west.</summary>
    internal static ElevationGrid Grid(double south, double west, double degrees, Func<double, double, double> metres, double stepSeconds = 3)
    {
        var step = stepSeconds / 3600;
        var side = (int)Math.Round(degrees / step) + 1;
        var samples = new short[side * side];
        for (var row = 0; row < side; row++)
            for (var column = 0; column < side; column++)
            {
                var height = metres(south + degrees - row * step, west + column * step);
                samples[row * side + column] = double.IsNaN(height) ? ElevationGrid.Void : (short)Math.Round(height * 10);
            }

        return new ElevationGrid(south + degrees, west, step, step, side, side, samples, 0.1);
    }

    /// <summary>A cone with its top in a place.</summary>
    internal static Func<double, double, double> Cone(Position top, double height, double baseMetres) => (latitude, longitude) =>
        // Far outside, no geodesic is needed.
        Math.Abs(latitude - top.LatitudeDegrees) > baseMetres / 100_000 || Math.Abs(longitude - top.LongitudeDegrees) > baseMetres / 50_000 ? 0 : Math.Max(0, height * (1 - Geodesic.Between(top, new Position(latitude, longitude)).Metres / baseMetres));

    /// <summary>A file's bytes from samples, in the mission's byte order or the other.</summary>
    internal static byte[] Bytes(int side, Func<int, short> sample, bool isSwapped = false)
    {
        var bytes = new byte[2 * side * side];
        for (var i = 0; i < side * side; i++)
        {
            var value = sample(i);
            (bytes[2 * i], bytes[2 * i + 1]) = isSwapped ? ((byte)value, (byte)(value >> 8)) : ((byte)(value >> 8), (byte)value);
        }

        return bytes;
    }
}
