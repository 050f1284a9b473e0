using System.Buffers.Binary;
using System.Globalization;
using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Elevation;

/// <summary>
/// The first directory of a TIFF, looked through before any library opens it: whatever it promises must lie within the file.
/// A library takes the room it is told of first and reads then, so that a kilobyte could ask for gigabytes (TIFF 6.0, section 2).
/// </summary>
internal sealed class TiffDirectory
{
    private const int Width = 256, Height = 257, Bands = 277, StripOffsets = 273, StripBytes = 279, TileWidth = 322, TileHeight = 323, TileOffsets = 324, TileBytes = 325;
    private const int Classic = 42, Big = 43, EntryBytes = 12, ShortType = 3, LongType = 4, LeastTile = 16, MostTile = 4096;

    /// <summary>Bytes of a value of each type, from 1 on: BYTE, ASCII, SHORT, LONG, RATIONAL, the same signed, FLOAT, DOUBLE, IFD.</summary>
    private static readonly int[] Sizes = [0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8, 4];

    private readonly byte[] bytes;
    private readonly bool isLittleEndian;
    private readonly Dictionary<int, (int Type, long Count, long At)> entries = [];

    private TiffDirectory(byte[] bytes) => (this.bytes, isLittleEndian) = (bytes, bytes[0] == 'I');

    /// <summary>Looks through it.</summary>
    /// <param name="bytes">The file, which begins with II or MM.</param>
    /// <param name="mostHeights">More heights than that are not read.</param>
    /// <exception cref="NotAcceptedException">It promises what is not there, or more than is read.</exception>
    public static void Check(byte[] bytes, int mostHeights)
    {
        RequireWhole(bytes.Length >= 8);
        var directory = new TiffDirectory(bytes);
        var kind = directory.Short(2);
        Require.That(kind != Big, "The file is a BigTIFF, made for files larger than are read here. Write it anew as a plain one, for instance with GDAL: gdal_translate -co BIGTIFF=NO.");
        RequireWhole(kind == Classic);
        directory.ReadEntries(directory.Long(4));
        directory.CheckSize(mostHeights);
        directory.CheckPieces(StripOffsets, StripBytes);
        directory.CheckPieces(TileOffsets, TileBytes);
    }

    private void ReadEntries(long at)
    {
        RequireWhole(at + 2 <= bytes.Length);
        var count = Short(at);
        RequireWhole(at + 2 + (long)count * EntryBytes <= bytes.Length);
        for (var entry = at + 2; count > 0; count--, entry += EntryBytes)
        {
            var (type, values) = (Short(entry + 2), Long(entry + 4));
            RequireWhole(type > 0 && type < Sizes.Length);
            var length = values * Sizes[type];
            var place = length <= 4 ? entry + 8 : Long(entry + 8);
            RequireWhole(place + length <= bytes.Length);
            RequireWhole(entries.TryAdd(Short(entry), (type, values, place)));
        }
    }

    private void CheckSize(int mostHeights)
    {
        var (width, height) = (Number(Width), Number(Height));
        Require.That(width >= 2 && height >= 2, "The file holds no heights to speak of. Fetch it again.");
        // The first two bound the third, so that it cannot overflow.
        Require.That(width <= mostHeights && height <= mostHeights && width * height <= mostHeights, string.Create(CultureInfo.InvariantCulture,
            $"The file holds {width:N0} by {height:N0} heights; at most {mostHeights:N0} are read. Cut it to the coast you need: a skyline looks 100 km far."));
        Require.That(Number(Bands, 1) == 1, "The file has several bands, like a picture. Heights are one band: write that one alone into a file.");
        if (!entries.ContainsKey(TileWidth) && !entries.ContainsKey(TileHeight))
            return;
        var (across, down) = (Number(TileWidth), Number(TileHeight));
        Require.That(across is >= LeastTile and <= MostTile && down is >= LeastTile and <= MostTile, string.Create(CultureInfo.InvariantCulture,
            $"The file's tiles are of {across:N0} by {down:N0} heights; {LeastTile} to {MostTile:N0} either way are read. Write it anew, for instance with GDAL: gdal_translate."));
        // Tiles much larger than what they hold would be unpacked for nothing.
        RequireWhole((width + across - 1) / across * across * ((height + down - 1) / down * down) <= 4L * mostHeights);
    }

    /// <summary>Each strip or tile must lie within the file.</summary>
    private void CheckPieces(int offsets, int lengths)
    {
        if (!entries.TryGetValue(offsets, out var where) || !entries.TryGetValue(lengths, out var size))
            return;
        for (var i = 0; i < Math.Min(where.Count, size.Count); i++)
            RequireWhole(Value(where, i) + Value(size, i) <= bytes.Length, "The file ends before its last row. It was cut short: fetch it again.");
    }

    private long Number(int tag, long otherwise = 0) => entries.TryGetValue(tag, out var entry) && entry.Count > 0 ? Value(entry, 0) : otherwise;

    private long Value((int Type, long Count, long At) entry, long index) => entry.Type switch
    {
        ShortType => Short(entry.At + 2 * index),
        LongType => Long(entry.At + 4 * index),
        _ => 0,
    };

    private int Short(long at) => isLittleEndian ? BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan((int)at)) : BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan((int)at));

    private long Long(long at) => isLittleEndian ? BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan((int)at)) : BinaryPrimitives.ReadUInt32BigEndian(bytes.AsSpan((int)at));

    private static void RequireWhole(bool holds, string words = "The file contradicts itself and cannot be read. It is damaged or cut short: fetch it again, or write it anew with GDAL: gdal_translate.") =>
        Require.That(holds, words);
}
