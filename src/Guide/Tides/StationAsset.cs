using System.IO.Compression;
using System.Text.Json;

namespace Foreshore.Guide.Tides;

/// <summary>Reads data/tides/stations.json.br, carried in the assembly; the fields are written down in tools/tides/make.mjs, which makes it.</summary>
internal sealed record StationAsset(
    string Source, int Edition, string[] Licences, string[] Attributions, string[] Disclaimers, string[] Constituents, string[] Datums,
    IReadOnlyList<StationAsset.Station> Stations)
{
    private static readonly JsonSerializerOptions Format = new(JsonSerializerDefaults.Web);

    public static StationAsset Read()
    {
        using var unpacked = Open();
        return JsonSerializer.Deserialize<StationAsset>(unpacked, Format)!;
    }

    /// <summary>The edition alone, from the head: nobody unpacks all stations to learn that nothing is new.</summary>
    public static int ReadEdition()
    {
        const string name = "\"edition\":";
        using var reader = new StreamReader(Open());
        var head = new char[200];
        var text = new string(head, 0, reader.ReadBlock(head));
        var from = text.IndexOf(name, StringComparison.Ordinal) + name.Length;
        return int.Parse(text.AsSpan(from, text.IndexOf(',', from) - from), System.Globalization.CultureInfo.InvariantCulture);
    }

    private static BrotliStream Open() =>
        new(typeof(StationAsset).Assembly.GetManifestResourceStream("tide-stations")!, CompressionMode.Decompress);

    internal sealed record Station(
        string Id, string Name, double[] At, string? Country, string? Subdivision, int Licence, int Attribution, int? Disclaimer, int Quality,
        string? DatumsFrom, int[]? Years, int ChartDatum, int[]? Bounds, int[]? Levels, int[]? Constants, string? Reference, int[]? Offsets, bool? IsRatio);
}
