using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;
using Foreshore.Almanac.Earth;
using Foreshore.Guide.Access;
using Foreshore.Guide.Shell.Maps;

namespace Foreshore.Guide.Maps;

public enum MapMarkKind { Place, Stance, Parking, Hazard, Closure }

/// <summary>The direction and the angle of view of one composition, degrees, clockwise from true north.</summary>
public readonly record struct Wedge(double FacingDegrees, double AngleDegrees);

/// <summary>Something drawn on a map and named in the list beside it. The list holds the words, the drawing only the shape.</summary>
/// <param name="Id">Unique on its sheet.</param>
/// <param name="Name">What it is called; with the kind it makes the mark's accessible name.</param>
/// <param name="Address">Where more is said; null when nowhere.</param>
/// <param name="Words">What one should know of it in a line.</param>
public abstract record MapItem(string Id, string Name, string? Address, string Words)
{
    internal abstract IEnumerable<Position> Corners { get; }
}

/// <summary>A mark at a point. Its word stands beside the mark on the map: "severe", "closed".</summary>
public sealed record MapMark(
    string Id, MapMarkKind Kind, string Name, string? Address, string Words, Position At,
    IReadOnlyList<Wedge> Wedges, string? Word = null, bool IsBarred = false) : MapItem(Id, Name, Address, Words)
{
    internal override IEnumerable<Position> Corners => [At];
}

/// <summary>A drawn way; each legal status has a line pattern of its own.</summary>
public sealed record MapWay(string Id, string Name, string? Address, string Words, IReadOnlyList<Position> Line, LegalStatus Status, bool IsBarred)
    : MapItem(Id, Name, Address, Words)
{
    internal override IEnumerable<Position> Corners => Line;
}

/// <summary>The fixed cell in which a sensitive place lies: all that a map may show of it.</summary>
public sealed record MapCell(string Id, string Name, string? Address, string Words, Position Centre, double SideMetres) : MapItem(Id, Name, Address, Words)
{
    internal override IEnumerable<Position> Corners => [Centre];
    internal MapBox Box => MapBox.Around(Centre.LatitudeDegrees, Centre.LongitudeDegrees, SideMetres);
}

/// <summary>A heading of the list beside the map with what stands under it.</summary>
public sealed record MapGroup(string Name, IReadOnlyList<MapItem> Items);

/// <summary>What one map shows.</summary>
public sealed record MapSheet(string Name, IReadOnlyList<MapGroup> Groups)
{
    /// <summary>Room round the outermost marks, and the least view: nobody needs a closer first look than 600 m.</summary>
    private const double LeastSpanMetres = 600;

    public IEnumerable<MapItem> Items => Groups.SelectMany(g => g.Items);

    /// <summary>The first view: all items with room round them, by the shorter way round the Earth; null for an empty sheet.</summary>
    public MapBox? View
    {
        get
        {
            var corners = Items.SelectMany(i => i.Corners).ToList();
            if (corners.Count == 0) return null;
            var longitudes = corners.Select(c => c.LongitudeDegrees).Order().ToList();
            // The widest empty gap between neighbours, the one across ±180 included, is what the view leaves out.
            var (west, gap) = (longitudes[0], longitudes[0] + 360 - longitudes[^1]);
            foreach (var (before, after) in longitudes.Zip(longitudes.Skip(1)))
                if (after - before > gap) (west, gap) = (after, after - before);
            var (south, north) = (corners.Min(c => c.LatitudeDegrees), corners.Max(c => c.LatitudeDegrees));
            var least = MapBox.Around((south + north) / 2, west, LeastSpanMetres);
            var width = Math.Max(360 - gap, least.WidthDegrees);
            var height = Math.Max(north - south, least.HeightDegrees);
            var (middleLongitude, middleLatitude) = (west + (360 - gap) / 2, (south + north) / 2);
            var left = middleLongitude - width * 0.6;
            if (left < -180) left += 360;
            if (left > 180) left -= 360;
            return new(left, Math.Max(-89.9, middleLatitude - height * 0.6), left + Math.Min(360, width * 1.2), Math.Min(89.9, middleLatitude + height * 0.6));
        }
    }

    /// <summary>The shapes for the browser. Names and words are not in it: the module reads them from the list. Fit to stand in a script element.</summary>
    public string ToJson()
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer))
        {
            json.WriteStartObject();
            if (View is { } view) WriteBox(json, "view", view);
            json.WriteStartArray("items");
            foreach (var item in Items) Write(json, item);
            json.WriteEndArray();
            json.WriteEndObject();
        }
        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    private static void Write(Utf8JsonWriter json, MapItem item)
    {
        json.WriteStartObject();
        json.WriteString("id", item.Id);
        switch (item)
        {
            case MapMark mark:
                json.WriteString("kind", Lower(mark.Kind.ToString()));
                json.WriteStartArray("at");
                WriteNumber(json, mark.At.LatitudeDegrees, 5);
                WriteNumber(json, mark.At.LongitudeDegrees, 5);
                json.WriteEndArray();
                if (mark.Word is not null) json.WriteString("word", mark.Word);
                if (mark.IsBarred) json.WriteBoolean("barred", true);
                if (mark.Wedges.Count > 0)
                {
                    json.WriteStartArray("wedges");
                    foreach (var wedge in mark.Wedges)
                    {
                        WriteNumber(json, wedge.FacingDegrees, 1);
                        WriteNumber(json, wedge.AngleDegrees, 1);
                    }
                    json.WriteEndArray();
                }
                break;
            case MapWay way:
                json.WriteString("kind", "way");
                json.WriteString("status", Lower(way.Status.ToString()));
                if (way.IsBarred) json.WriteBoolean("barred", true);
                json.WriteStartArray("line");
                foreach (var p in way.Line)
                {
                    WriteNumber(json, p.LatitudeDegrees, 5);
                    WriteNumber(json, p.LongitudeDegrees, 5);
                }
                json.WriteEndArray();
                break;
            case MapCell cell:
                json.WriteString("kind", "cell");
                WriteBox(json, "box", cell.Box);
                break;
        }
        json.WriteEndObject();
    }

    private static void WriteBox(Utf8JsonWriter json, string name, MapBox box)
    {
        json.WriteStartArray(name);
        foreach (var edge in new[] { box.West, box.South, box.East, box.North }) WriteNumber(json, edge, 5);
        json.WriteEndArray();
    }

    private static void WriteNumber(Utf8JsonWriter json, double value, int decimals) =>
        json.WriteRawValue(Math.Round(value, decimals).ToString("R", CultureInfo.InvariantCulture));

    private static string Lower(string name) => char.ToLowerInvariant(name[0]) + name[1..];
}
