using System.Buffers;
using System.Globalization;
using System.Text.Json;

namespace Foreshore.Guide.Shell.Maps;

/// <summary>GET /coastline: the drawn coast of a view as GeoJSON (RFC 7946), for maps without tiles.</summary>
public static class CoastlineEndpoint
{
    public static IEndpointRouteBuilder MapCoastline(this IEndpointRouteBuilder routes)
    {
        routes.MapMethods("/coastline", ["GET", "HEAD"], Answer)
            .WithName("coastline")
            .WithSummary("The coarse coast of a box as GeoJSON: land to fill, shore to ink. Not for navigation.")
            .ExcludeFromDescription();
        return routes;
    }

    private static IResult Answer(string? west, string? south, string? east, string? north, HttpResponse response)
    {
        if (!Degrees(west, out var w) || !Degrees(south, out var s) || !Degrees(east, out var e) || !Degrees(north, out var n))
            return Refused("west, south, east and north must each be given once, as degrees with a decimal point.");
        MapBox box;
        try
        {
            if (e > 180) return Refused($"The east must be a number of −180 to 180; {east} is not. A box across the 180° meridian has an east smaller than its west.");
            box = new MapBox(w, s, e, n);
        }
        catch (ArgumentOutOfRangeException refused)
        {
            return Refused(refused.Message.Split(" (Parameter")[0] + $" Given: {refused.ActualValue}.");
        }
        response.Headers.CacheControl = "public, max-age=604800";
        return Results.Bytes(GeoJson(box).ToArray(), "application/geo+json");
    }

    /// <summary>RFC 7946 3.1.9 asks for geometry to be cut at the 180° meridian: a view across it is answered in two halves.</summary>
    internal static ReadOnlyMemory<byte> GeoJson(MapBox box)
    {
        var detail = box.HeightDegrees / 600;
        var halves = Halves(box).Select(half => Coastline.ClippedTo(half, detail)).ToList();

        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer))
        {
            json.WriteStartObject();
            json.WriteString("type", "FeatureCollection");
            json.WriteString("notice", Coastline.Note);
            json.WriteStartArray("features");
            WriteFeature(json, "land", "MultiPolygon", () =>
            {
                foreach (var piece in halves.SelectMany(h => h.Land))
                {
                    json.WriteStartArray();
                    WriteLine(json, piece.Outer);
                    foreach (var lake in piece.Lakes) WriteLine(json, lake);
                    json.WriteEndArray();
                }
            });
            WriteFeature(json, "shore", "MultiLineString", () =>
            {
                foreach (var line in halves.SelectMany(h => h.Shore)) WriteLine(json, line);
            });
            json.WriteEndArray();
            json.WriteEndObject();
        }
        return buffer.WrittenMemory;
    }

    private static IEnumerable<MapBox> Halves(MapBox box)
    {
        if (box.East <= 180) yield return box;
        else
        {
            if (box.West < 180) yield return new(box.West, box.South, 180, box.North);
            yield return new(-180, box.South, box.East - 360, box.North);
        }
    }

    private static void WriteFeature(Utf8JsonWriter json, string kind, string geometry, Action writeCoordinates)
    {
        json.WriteStartObject();
        json.WriteString("type", "Feature");
        json.WriteStartObject("properties");
        json.WriteString("kind", kind);
        json.WriteEndObject();
        json.WriteStartObject("geometry");
        json.WriteString("type", geometry);
        json.WriteStartArray("coordinates");
        writeCoordinates();
        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void WriteLine(Utf8JsonWriter json, IReadOnlyList<MapPoint> line)
    {
        json.WriteStartArray();
        foreach (var p in line)
        {
            // Five decimals are a metre; the source is a hundred times coarser.
            json.WriteStartArray();
            json.WriteNumberValue(Math.Round(p.LongitudeDegrees, 5));
            json.WriteNumberValue(Math.Round(p.LatitudeDegrees, 5));
            json.WriteEndArray();
        }
        json.WriteEndArray();
    }

    private static bool Degrees(string? text, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value);

    private static IResult Refused(string detail) =>
        Results.Problem(detail, title: "That is not a box on the map", statusCode: StatusCodes.Status400BadRequest);
}
