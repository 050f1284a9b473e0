using System.Globalization;
using Foreshore.Almanac.Tides;
using Foreshore.Guide.Locations;
using Npgsql;
using NpgsqlTypes;

namespace Foreshore.Guide.Tides;

/// <summary>
/// Puts the catalogue that comes with the site into the database when it is newer than what is stored. The club's own stations
/// stay as they are; a station that left the catalogue stays while a place goes by it.
/// </summary>
internal static class CatalogueLoad
{
    private const string Columns = """
        id, slug, name, latitude_degrees, longitude_degrees, country_code, subdivision_code, kind, catalogue_edition, licence, licence_link,
        attribution, disclaimer, quality, has_reckoned_levels, first_year, last_year, chart_datum, level_codes, levels_metres, lowest_metres,
        highest_metres, constituent_names, amplitudes_metres, phases_degrees, nodal_model, reference_id, high_water_minutes,
        low_water_minutes, high_water_height, low_water_height, heights_are_ratios, turn_times, turn_metres, search_text
        """;

    /// <summary>Any number: loaders wait for each other, and find nothing left to do.</summary>
    private const long Lock = 0x7469646573;

    /// <returns>How many stations were stored; 0 when the stored edition is this one or a newer.</returns>
    public static async Task<int> RunAsync(string ownerConnection, CancellationToken stop = default)
    {
        var edition = StationAsset.ReadEdition();
        await using var connection = new NpgsqlConnection(new NpgsqlConnectionStringBuilder(ownerConnection) { Pooling = false }.ConnectionString);
        await connection.OpenAsync(stop);
        await using var all = await connection.BeginTransactionAsync(stop);
        await RunAsync(connection, $"SELECT pg_advisory_xact_lock({Lock})", stop);
        if (await StoredEditionAsync(connection, stop) >= edition)
            return 0;

        var asset = StationAsset.Read();
        await RunAsync(connection, $"CREATE TEMP TABLE fresh ON COMMIT DROP AS SELECT {Columns} FROM tide_stations WITH NO DATA", stop);
        await using (var copy = await connection.BeginBinaryImportAsync($"COPY fresh ({Columns}) FROM STDIN (FORMAT binary)", stop))
        {
            foreach (var station in asset.Stations)
                await WriteAsync(copy, station, asset, stop);
            await copy.CompleteAsync(stop);
        }

        var set = string.Join(", ", Columns.Split(',', StringSplitOptions.TrimEntries).Skip(1).Select(column => $"{column} = excluded.{column}"));
        await RunAsync(connection, $"""
            INSERT INTO tide_stations ({Columns}) SELECT {Columns} FROM fresh ORDER BY reference_id NULLS FIRST
            ON CONFLICT (id) DO UPDATE SET {set} WHERE tide_stations.catalogue_edition IS NOT NULL
            """, stop);
        await RunAsync(connection, $"""
            DELETE FROM tide_stations gone WHERE gone.catalogue_edition < {edition.ToString(CultureInfo.InvariantCulture)}
                AND NOT EXISTS (SELECT 1 FROM locations place WHERE place.tide_station_id = gone.id)
                AND NOT EXISTS (SELECT 1 FROM tide_stations other JOIN locations place ON place.tide_station_id = other.id WHERE other.reference_id = gone.id)
                AND NOT EXISTS (SELECT 1 FROM tide_stations other WHERE other.reference_id = gone.id AND other.catalogue_edition IS NULL)
            """, stop);
        await RunAsync(connection, $"""
            INSERT INTO tide_catalogue (id, edition) VALUES (1, {edition.ToString(CultureInfo.InvariantCulture)})
            ON CONFLICT (id) DO UPDATE SET edition = excluded.edition
            """, stop);
        await all.CommitAsync(stop);
        return asset.Stations.Count;
    }

    private static async Task<int> StoredEditionAsync(NpgsqlConnection connection, CancellationToken stop)
    {
        await using var command = new NpgsqlCommand("SELECT edition FROM tide_catalogue", connection);
        return await command.ExecuteScalarAsync(stop) is int edition ? edition : 0;
    }

    private static async Task WriteAsync(NpgsqlBinaryImporter copy, StationAsset.Station station, StationAsset asset, CancellationToken stop)
    {
        var (licence, link) = Licence(asset.Licences[station.Licence]);
        var levels = Tuples(station.Levels, 2);
        var constants = Tuples(station.Constants, 3);
        await copy.StartRowAsync(stop);
        await Text(station.Id);
        await Text(TideStation.SlugOf(station.Id));
        await Text(station.Name);
        await Number(station.At[0]);
        await Number(station.At[1]);
        await Text(station.Country);
        await Text(station.Subdivision);
        await Text((station.Reference is null ? StationKind.Harmonic : StationKind.Subordinate).ToString());
        await Whole(asset.Edition);
        await Text(licence);
        await Text(link);
        await Text(asset.Attributions[station.Attribution]);
        await Text(station.Disclaimer is { } warning ? asset.Disclaimers[warning] : null);
        await Whole(station.Quality);
        await copy.WriteAsync(station.DatumsFrom == "harmonic", NpgsqlDbType.Boolean, stop);
        await Whole(station.Years?[0]);
        await Whole(station.Years?[1]);
        await Text(asset.Datums[station.ChartDatum]);
        await Texts(levels.Select(level => asset.Datums[level[0]]));
        await Numbers(levels.Select(level => level[1] / 1000.0));
        await Number(station.Bounds?[0] / 1000.0);
        await Number(station.Bounds?[1] / 1000.0);
        await Texts(constants.Select(constant => asset.Constituents[constant[0]]));
        await Numbers(constants.Select(constant => constant[1] / 10000.0));
        await Numbers(constants.Select(constant => constant[2] / 100.0));
        await Text(ModelOf(station.Id).ToString());
        await Text(station.Reference);
        await Whole(station.Offsets?[0]);
        await Whole(station.Offsets?[1]);
        await Number(station.Offsets?[2] / 1000.0);
        await Number(station.Offsets?[3] / 1000.0);
        await (station.IsRatio is { } isRatio ? copy.WriteAsync(isRatio, NpgsqlDbType.Boolean, stop) : copy.WriteNullAsync(stop));
        await copy.WriteAsync(Array.Empty<DateTime>(), NpgsqlDbType.Array | NpgsqlDbType.TimestampTz, stop);
        await Numbers([]);
        await Text(SearchWords.Fold($"{station.Name} {station.Id}"));

        Task Text(string? value) => value is null ? copy.WriteNullAsync(stop) : copy.WriteAsync(value, NpgsqlDbType.Text, stop);
        Task Number(double? value) => value is { } number ? copy.WriteAsync(number, NpgsqlDbType.Double, stop) : copy.WriteNullAsync(stop);
        Task Whole(int? value) => value is { } number ? copy.WriteAsync(number, NpgsqlDbType.Integer, stop) : copy.WriteNullAsync(stop);
        Task Texts(IEnumerable<string> values) => copy.WriteAsync(values.ToArray(), NpgsqlDbType.Array | NpgsqlDbType.Text, stop);
        Task Numbers(IEnumerable<double> values) => copy.WriteAsync(values.ToArray(), NpgsqlDbType.Array | NpgsqlDbType.Double, stop);
    }

    /// <summary>
    /// NOAA computes its own predictions with Schureman's factors; constants fitted elsewhere are taken with the series that
    /// run on through the year. Both models differ by millimetres to some centimetres.
    /// </summary>
    private static NodalModel ModelOf(string id) => id.StartsWith("noaa/", StringComparison.Ordinal) ? NodalModel.Schureman : NodalModel.Iho;

    private static (string Licence, string Link) Licence(string words)
    {
        var at = words.LastIndexOf(' ');
        return (words[..at] == "cc-by-4.0" ? "CC BY 4.0" : words[..at], words[(at + 1)..]);
    }

    private static int[][] Tuples(int[]? flat, int size) => flat is null ? [] : [.. flat.Chunk(size)];

    /// <summary>Names of columns and numbers of this class alone.</summary>
    private static async Task RunAsync(NpgsqlConnection connection, string statement, CancellationToken stop)
    {
#pragma warning disable CA2100
        await using var command = new NpgsqlCommand(statement, connection);
#pragma warning restore CA2100
        await command.ExecuteNonQueryAsync(stop);
    }
}
