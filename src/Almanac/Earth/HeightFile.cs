using System.Buffers.Binary;
using System.Globalization;

namespace Foreshore.Almanac.Earth;

/// <summary>What is wrong with a height file.</summary>
public enum HeightFileFault
{
    /// <summary>The name gives no corner, or one that does not exist.</summary>
    Name,

    /// <summary>The length is neither that of 3601 × 3601 nor of 1201 × 1201 heights.</summary>
    Length,

    /// <summary>The two bytes of each height stand the wrong way round.</summary>
    ByteOrder,

    /// <summary>Heights that no ground has.</summary>
    Heights,

    /// <summary>No height at all, only voids.</summary>
    Empty,
}

/// <summary>A file that is no SRTM height file, with the reason and what to do about it in words.</summary>
public sealed class HeightFileException : Exception
{
    /// <summary>Says what is wrong.</summary>
    public HeightFileException(HeightFileFault fault, string message) : base(message) => Fault = fault;

    /// <summary>What is wrong.</summary>
    public HeightFileFault Fault { get; }
}

/// <summary>
/// Files of the Shuttle Radar Topography Mission: <c>N44W068.hgt</c>, one degree square, 3601² heights an arc second apart or 1201² three
/// apart, 16-bit big-endian metres above mean sea level (EGM96), row by row from the north-west, −32768 where unmeasured.
/// The name is the corner in the south-west, the centre of its sample (NASA, SRTM Topography, documentation, section 3).
/// </summary>
public static class HeightFile
{
    // Wider than any ground: the shore of the Dead Sea lies at −430 m, the highest summit at 8,849 m.
    private const int LowestMetres = -600, HighestMetres = 9000;

    /// <summary>Length in bytes of a file at one arc second.</summary>
    public const int OneSecondBytes = 3601 * 3601 * 2;

    /// <summary>Length in bytes of a file at three arc seconds.</summary>
    public const int ThreeSecondBytes = 1201 * 1201 * 2;

    /// <summary>The south-west corner that a name gives.</summary>
    /// <param name="fileName">Such as N44W068.hgt; folders before it and the case of letters do not count.</param>
    /// <exception cref="HeightFileException">The name gives none.</exception>
    public static Position CornerOf(string fileName)
    {
        ArgumentNullException.ThrowIfNull(fileName);
        var name = fileName[(fileName.LastIndexOfAny(['/', '\\']) + 1)..].ToUpperInvariant();
        if (name.Length != 11 || !name.EndsWith(".HGT", StringComparison.Ordinal) || name[0] is not ('N' or 'S') || name[3] is not ('E' or 'W')
            || !int.TryParse(name.AsSpan(1, 2), NumberStyles.None, CultureInfo.InvariantCulture, out var latitude)
            || !int.TryParse(name.AsSpan(4, 3), NumberStyles.None, CultureInfo.InvariantCulture, out var longitude))
            throw Fault(HeightFileFault.Name, $"\"{Short(fileName)}\" does not name a corner. A height file is named after its south-west corner, such as N44W068.hgt: N or S and two digits, E or W and three.");

        var (isSouth, isWest) = (name[0] == 'S', name[3] == 'W');
        if (isSouth ? latitude is < 1 or > 90 : latitude > 89)
            throw Fault(HeightFileFault.Name, $"{name[..3]} is no southern edge of a one-degree square: they run from S90 over S01 and N00 to N89. Was the file renamed? Give it the name it was published under.");
        if (isWest ? longitude is < 1 or > 180 : longitude > 179)
            throw Fault(HeightFileFault.Name, $"{name[3..7]} is no western edge of a one-degree square: they run from W180 over W001 and E000 to E179. Was the file renamed? Give it the name it was published under.");
        return new Position(isSouth ? -latitude : latitude, isWest ? -longitude : longitude);
    }

    /// <summary>Reads a file.</summary>
    /// <param name="fileName">Its name, which gives the corner.</param>
    /// <param name="bytes">The whole of it, unpacked.</param>
    /// <exception cref="HeightFileException">It is none, or damaged.</exception>
    public static ElevationGrid Read(string fileName, ReadOnlySpan<byte> bytes)
    {
        var corner = CornerOf(fileName);
        var side = bytes.Length switch
        {
            OneSecondBytes => 3601,
            ThreeSecondBytes => 1201,
            _ => throw Fault(HeightFileFault.Length, LengthWords(bytes.Length)),
        };

        var samples = new short[side * side];
        for (var i = 0; i < samples.Length; i++)
            samples[i] = BinaryPrimitives.ReadInt16BigEndian(bytes[(2 * i)..]);
        Judge(samples, side);
        var step = 1.0 / (side - 1);
        return new ElevationGrid(corner.LatitudeDegrees + 1, corner.LongitudeDegrees, step, step, side, side, samples);
    }

    private static string LengthWords(int length) => length switch
    {
        0 => "The file is empty. Fetch it again.",
        < ThreeSecondBytes => Invariant($"The file has {length:N0} bytes; one at three arc seconds has {ThreeSecondBytes:N0}. It was cut short: fetch it again."),
        < OneSecondBytes => Invariant($"The file has {length:N0} bytes, between the two known lengths: {ThreeSecondBytes:N0} at three arc seconds, {OneSecondBytes:N0} at one. It was cut short or is of another kind: fetch it again, unpacked."),
        _ => Invariant($"The file has {length:N0} bytes, more than the {OneSecondBytes:N0} of one at an arc second. It is of another kind: only one-degree squares at one or three arc seconds are read."),
    };

    private static void Judge(short[] samples, int side)
    {
        long given = 0, swapped = 0, steps = 0, measured = 0;
        short lowest = short.MaxValue, highest = short.MinValue;
        for (var i = 0; i < samples.Length; i++)
        {
            var sample = samples[i];
            if (sample == ElevationGrid.Void) continue;
            measured++;
            if (sample < lowest) lowest = sample;
            if (sample > highest) highest = sample;
            if (i % side == 0 || samples[i - 1] == ElevationGrid.Void) continue;
            steps++;
            given += Math.Abs(sample - samples[i - 1]);
            swapped += Math.Abs(BinaryPrimitives.ReverseEndianness(sample) - BinaryPrimitives.ReverseEndianness(samples[i - 1]));
        }

        if (measured == 0)
            throw Fault(HeightFileFault.Empty, "The file holds no height, only voids. Fetch one with the voids filled, or leave it out.");
        // Ground rises by some metres from sample to sample; the wrong byte order makes steps of hundreds.
        var isOutside = lowest < LowestMetres || highest > HighestMetres;
        if (swapped < given / 4 && (isOutside || given > 20 * steps))
            throw Fault(HeightFileFault.ByteOrder, "The two bytes of each height stand the wrong way round (little-endian): read so, the ground would be all needles. Fetch the file as published, big-endian.");
        if (isOutside)
            throw Fault(HeightFileFault.Heights, Invariant($"The file says {(highest > HighestMetres ? highest : lowest):N0} m, which no ground has ({LowestMetres:N0} to {HighestMetres:N0} m is read). It is damaged or of another kind: fetch it again."));
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static string Short(string name) => name.Length <= 40 ? name : name[..40] + "…";

    private static HeightFileException Fault(HeightFileFault fault, string message) => new(fault, message);
}
