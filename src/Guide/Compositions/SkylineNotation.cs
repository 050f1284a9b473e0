using System.Globalization;
using Foreshore.Almanac.Earth;
using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Compositions;

/// <summary>A skyline as one readable column: <c>22 2.5 land; 57 0 sea</c> (azimuth and altitude in degrees, kind of the piece that follows clockwise).</summary>
public static class SkylineNotation
{
    public static string Write(Skyline skyline) =>
        string.Join("; ", skyline.Points.Select(p => string.Create(CultureInfo.InvariantCulture,
            $"{p.AzimuthDegrees:0.##} {p.AltitudeDegrees:0.##} {p.Kind switch { SkylineKind.Land => "land", SkylineKind.Sea => "sea", _ => "unknown" }}")));

    public static Skyline Parse(string text)
    {
        try
        {
            return new Skyline(text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(Point));
        }
        catch (Exception e) when (e is FormatException or ArgumentException)
        {
            throw new NotAcceptedException(
                $"The skyline cannot be read: {e.Message} Write azimuth, altitude and land, sea or unknown, for example \"22 2.5 land; 57 0 sea\".", e);
        }
    }

    private static SkylinePoint Point(string triplet)
    {
        var parts = triplet.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (parts.Length != 3)
            throw new FormatException($"\"{triplet}\" has {parts.Length} parts.");

        var kind = parts[2] switch
        {
            "land" => SkylineKind.Land,
            "sea" => SkylineKind.Sea,
            "unknown" => SkylineKind.Unknown,
            var other => throw new FormatException($"\"{other}\" is none of land, sea, unknown."),
        };
        return new SkylinePoint(double.Parse(parts[0], CultureInfo.InvariantCulture), double.Parse(parts[1], CultureInfo.InvariantCulture), kind);
    }
}

/// <summary>A sketch is named by a plain file name, so that no name can reach outside the sketches' folder.</summary>
internal static class SketchName
{
    public static string Of(string fileName)
    {
        Require.That(fileName is { Length: > 4 and <= 120 } && fileName.EndsWith(".svg", StringComparison.Ordinal)
            && fileName[..^4].All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-'),
            $"\"{fileName}\" is not a sketch's file name. Use lower-case letters, digits and hyphens, ending in .svg.");
        return fileName;
    }
}
