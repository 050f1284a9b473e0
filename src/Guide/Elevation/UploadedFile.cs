using System.IO.Compression;
using Foreshore.Almanac.Earth;
using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Elevation;

/// <summary>An elevation file as it comes by form: told apart by its first bytes and its name, never by what the browser says.</summary>
internal static class UploadedFile
{
    /// <summary>Two and a half files at an arc second: room for a GeoTIFF of floating-point heights.</summary>
    public const int MostBytes = 64 << 20;

    /// <summary>What a form around it may add.</summary>
    public const int MostBytesPosted = MostBytes + (1 << 16);

    /// <exception cref="NotAcceptedException">The file is none that is read; the words say why and what to do.</exception>
    public static (string Name, ElevationGrid Grid) Read(string fileName, byte[] bytes)
    {
        var name = fileName[(fileName.LastIndexOfAny(['/', '\\']) + 1)..].Trim();
        Require.That(bytes.Length > 0, "The file is empty. Choose it again, or fetch it anew.");
        Require.That(bytes.Length <= MostBytes, "The file is larger than 64 MB. Cut it to the coast you need: a skyline looks 100 km far.");
        try
        {
            if (bytes is [(byte)'P', (byte)'K', 3, 4, ..])
                (name, bytes) = Unzipped(bytes);
            if (bytes is [(byte)'I', (byte)'I', ..] or [(byte)'M', (byte)'M', ..] && !name.EndsWith(".hgt", StringComparison.OrdinalIgnoreCase))
                return (name, GeoTiff.Read(bytes));
            Require.That(name.EndsWith(".hgt", StringComparison.OrdinalIgnoreCase),
                $"\"{(name.Length > 60 ? name[..60] + "…" : name)}\" is neither a height file (.hgt, also zipped) nor a GeoTIFF. Those two are read.");
            return (name.ToUpperInvariant().Replace(".HGT", ".hgt", StringComparison.Ordinal), HeightFile.Read(name, bytes));
        }
        catch (HeightFileException damaged)
        {
            throw new NotAcceptedException(damaged.Message, damaged);
        }
    }

    private static (string Name, byte[] Bytes) Unzipped(byte[] bytes)
    {
        try
        {
            using var archive = new ZipArchive(new MemoryStream(bytes));
            var heights = archive.Entries.Take(100).Where(entry => entry.Name.EndsWith(".hgt", StringComparison.OrdinalIgnoreCase)).ToList();
            Require.That(heights.Count == 1, $"The archive holds {(heights.Count == 0 ? "no height file" : "several height files")}. Zip one .hgt file alone, or bring it unpacked.");
            // Never more than a file can have, whatever the archive says of itself.
            var room = new byte[HeightFile.OneSecondBytes + 1];
            using var entry = heights[0].Open();
            var read = entry.ReadAtLeast(room, room.Length, throwOnEndOfStream: false);
            return (heights[0].Name, room[..read]);
        }
        catch (InvalidDataException broken)
        {
            throw new NotAcceptedException("The archive is damaged or cut short. Fetch it again, or bring the .hgt file unpacked.", broken);
        }
    }
}
