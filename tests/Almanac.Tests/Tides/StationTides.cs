using System.IO.Compression;
using System.Text.Json;
using Foreshore.Almanac.Checks;

namespace Foreshore.Almanac.Tides;

/// <summary>The stations of data/tides/stations.json.br as tides, with constituents left out where a comparison asks for it.</summary>
internal static class StationTides
{
    /// <summary>Left out by tools/tides/sweep.mjs too, which says why.</summary>
    internal static readonly string[] Apart =
        ["M1", "M1_TICON", "M1_TICON_SHORT", "M3", "S3", "2MN2", "3N2", "3L2", "MP1", "MSK5", "ML4", "3ML8", "MKL2S2", "MLN2S2", "2MLNS6", "2NMLS6", "3MLS6", "4MLS8", "4MSL12", "SA_KV", "S1_KV", "OQ2_KV", "ALP1", "BET1"];

    private static readonly Lazy<JsonElement> Asset = new(Read);
    private static readonly Lazy<string[]> Names = new(() => [.. ConstituentNames]);
    private static readonly Lazy<Dictionary<string, JsonElement>> ById = new(() => Asset.Value.GetProperty("stations").EnumerateArray().ToDictionary(one => one.GetProperty("id").GetString()!));

    internal static IEnumerable<string> ConstituentNames => Asset.Value.GetProperty("constituents").EnumerateArray().Select(name => name.GetString()!);

    /// <summary>Lowest and highest astronomical tide as the dataset gives them, above chart datum.</summary>
    internal static (double Lowest, double Highest) Bounds(string id)
    {
        var bounds = ById.Value[id].GetProperty("bounds");
        return (bounds[0].GetInt32() / 1000.0, bounds[1].GetInt32() / 1000.0);
    }

    /// <summary>Ids of all stations with a lowest and highest astronomical tide, in the order of the file.</summary>
    internal static IReadOnlyList<string> BoundedIds => [.. Asset.Value.GetProperty("stations").EnumerateArray().Where(one => one.TryGetProperty("bounds", out _)).Select(one => one.GetProperty("id").GetString()!)];

    /// <summary>Ids of all stations with constituents of their own that begin with some letters.</summary>
    internal static IEnumerable<string> HarmonicIds(string beginning) =>
        ById.Value.Where(one => one.Key.StartsWith(beginning, StringComparison.Ordinal) && one.Value.TryGetProperty("constants", out _)).Select(one => one.Key);

    /// <summary>Amplitude in 0.1 mm and phase in 0.01° of each station's waves, by name.</summary>
    internal static IEnumerable<Dictionary<string, (int Amplitude, int Phase)>> Constants()
    {
        var names = ConstituentNames.ToArray();
        return ById.Value.Values.Where(station => station.TryGetProperty("constants", out _))
            .Select(station => station.GetProperty("constants").EnumerateArray().Select(one => one.GetInt32()).Chunk(3).ToDictionary(one => names[one[0]], one => (one[1], one[2])));
    }

    /// <summary>The constants of one station, as stored.</summary>
    internal static IEnumerable<HarmonicConstant> Waves(string id) => Waves(ById.Value[id]);

    internal static TideSource Of(string id, NodalModel model, IEnumerable<string> without, BetweenWaters between = BetweenWaters.ReferenceCurve)
    {
        var station = ById.Value[id];
        if (!station.TryGetProperty("reference", out var reference)) return Harmonic(station, model, without);
        var by = station.GetProperty("offsets").EnumerateArray().Select(one => one.GetDouble()).ToArray();
        var kind = station.GetProperty("isRatio").GetBoolean() ? HeightOffset.Ratio : HeightOffset.Fixed;
        return new SubordinateTide(Harmonic(ById.Value[reference.GetString()!], model, without), new TideOffsets(by[0], by[1], by[2] / 1000, by[3] / 1000, kind), between);
    }

    private static HarmonicTide Harmonic(JsonElement station, NodalModel model, IEnumerable<string> without)
    {
        var constants = Waves(station).Where(one => !without.Contains(one.Constituent.Name));
        return new HarmonicTide([.. constants], MeanSeaLevel(station), model);
    }

    private static IEnumerable<HarmonicConstant> Waves(JsonElement station) =>
        station.GetProperty("constants").EnumerateArray().Select(one => one.GetInt32()).Chunk(3).Select(one => new HarmonicConstant(Constituents.Of(Names.Value[one[0]]), one[1] / 1e4, one[2] / 100.0));

    private static double MeanSeaLevel(JsonElement station)
    {
        var datums = Asset.Value.GetProperty("datums").EnumerateArray().Select(name => name.GetString()).ToList();
        var levels = station.GetProperty("levels").EnumerateArray().Select(one => one.GetInt32()).Chunk(2);
        return levels.Single(pair => pair[0] == datums.IndexOf("MSL"))[1] / 1000.0;
    }

    private static JsonElement Read()
    {
        using var file = File.OpenRead(Path.Combine(Repository.Root, "data", "tides", "stations.json.br"));
        using var unpacked = new BrotliStream(file, CompressionMode.Decompress);
        return JsonDocument.Parse(unpacked).RootElement;
    }
}
