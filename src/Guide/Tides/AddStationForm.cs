using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Tides;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Shell;
using NodaTime;

namespace Foreshore.Guide.Tides;

/// <summary>A station of the club's as typed; flat, so that it binds from a plain post. A chosen file goes before the pasted table.</summary>
public sealed class AddStationForm
{
    public const string FromConstituents = "constituents", FromTable = "table";
    public const string Look = "look", Keep = "keep", Change = "change";

    public string? Id { get; set; }

    public string? Name { get; set; }

    public string? Latitude { get; set; }

    public string? Longitude { get; set; }

    public string? Kind { get; set; } = FromConstituents;

    public string? ChartDatum { get; set; } = "LAT";

    public string? MeanSeaLevel { get; set; }

    public string? Model { get; set; } = nameof(NodalModel.Iho);

    public string? Zone { get; set; } = "UTC";

    public string? Attribution { get; set; }

    public string? Licence { get; set; } = "the club's own figures";

    public string? LicenceLink { get; set; }

    public string? Rows { get; set; }

    /// <summary><see cref="Keep"/> stores what was looked at, <see cref="Change"/> goes back to the fields; anything else looks.</summary>
    public string? Then { get; set; }

    /// <summary>The stamp of what was looked at.</summary>
    public string? Looked { get; set; }

    /// <summary>What a second post must bring back unchanged: nobody stores what was not looked at.</summary>
    public string Stamp => Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(
        new[] { Id, Name, Latitude, Longitude, Kind, ChartDatum, MeanSeaLevel, Model, Zone, Attribution, Licence, LicenceLink, Rows }.Select(one => one ?? ""))));

    public bool WasLookedAt => Looked == Stamp;

    /// <summary>Browsers end lines by two signs; the text must be the same whichever way it came.</summary>
    public void TakeRows(string? text) => Rows = text?.Replace("\r\n", "\n", StringComparison.Ordinal);

    /// <summary>The station, or what is to be mended; nothing is stored here.</summary>
    public (TideStation? Station, IReadOnlyList<FieldFault> Faults) Read()
    {
        if (Encoding.UTF8.GetByteCount(Rows ?? "") > StationTable.MostBytes)
            return (null, [new("rows", $"The table is longer than {StationTable.MostBytes / 1024} kB, and no station's table is. Look whether it is the right one.")]);
        List<FieldFault> faults = [];
        var latitude = Degrees(Latitude, 90);
        var longitude = Degrees(Longitude, 180);
        if (latitude is null) faults.Add(new("latitude", "Enter a latitude between -90 and 90, like 44.65."));
        if (longitude is null) faults.Add(new("longitude", "Enter a longitude between -180 and 180, west negative, like -67.25."));
        var zone = DateTimeZoneProviders.Tzdb.GetZoneOrNull(Zone?.Trim() ?? "");
        if (zone is null) faults.Add(new("zone", "Enter a time zone of the IANA list, like UTC or America/New_York."));
        var level = FormNumbers.Read(MeanSeaLevel, double.NaN, -2, 12, "mean-sea-level", "Mean sea level", faults);
        if (Kind != FromTable && double.IsNaN(level) && faults.All(fault => fault.FieldId != "mean-sea-level"))
            faults.Add(new("mean-sea-level", "Constituents are counted from mean sea level, heights from chart datum: enter how far the one lies above the other, in metres."));

        if (faults.Count > 0)
        {
            faults.AddRange(TableFaults(zone ?? DateTimeZone.Utc));
            return (null, faults);
        }
        try
        {
            return Of(new Position(latitude!.Value, longitude!.Value), zone!, double.IsNaN(level) ? null : level);
        }
        catch (NotAcceptedException refused)
        {
            return (null, [new(FieldOf(refused.Message), refused.Message)]);
        }
    }

    private (TideStation?, IReadOnlyList<FieldFault>) Of(Position at, DateTimeZone zone, double? level)
    {
        TideStation station;
        IReadOnlyList<string> faults;
        if (Kind == FromTable)
        {
            (var waters, faults) = TurnTable.Read(Rows ?? "", zone);
            station = faults.Count > 0 ? null! : TideStation.OfTable(Id ?? "", Name ?? "", at, ChartDatum ?? "", level, waters);
        }
        else
        {
            (var constants, faults) = ConstituentTable.Read(Rows ?? "");
            station = faults.Count > 0 ? null! : TideStation.OfConstituents(Id ?? "", Name ?? "", at, ChartDatum ?? "", level!.Value,
                Model == nameof(NodalModel.Schureman) ? NodalModel.Schureman : NodalModel.Iho, constants);
        }
        return faults.Count > 0 ? (null, [.. faults.Select(words => new FieldFault("rows", words))])
            : (station.Credit(Attribution ?? "", Licence ?? "", LicenceLink), []);
    }

    /// <summary>Faults of the table beside those of the fields: one mends all in one go.</summary>
    private IEnumerable<FieldFault> TableFaults(DateTimeZone zone) =>
        (Kind == FromTable ? TurnTable.Read(Rows ?? "", zone).Faults : ConstituentTable.Read(Rows ?? "").Faults).Select(words => new FieldFault("rows", words));

    /// <summary>The entity names its values in words; the form's field is the one these words begin with.</summary>
    private static string FieldOf(string words) => words switch
    {
        _ when words.StartsWith("The address name", StringComparison.Ordinal) => "id",
        _ when words.StartsWith("The station's name", StringComparison.Ordinal) => "name",
        _ when words.StartsWith("Whom", StringComparison.Ordinal) => "attribution",
        _ when words.StartsWith("The licence", StringComparison.Ordinal) => "licence",
        _ when words.StartsWith("The link", StringComparison.Ordinal) => "licence-link",
        _ when words.StartsWith("Mean sea level", StringComparison.Ordinal) => "mean-sea-level",
        _ => "chart-datum",
    };

    private static double? Degrees(string? typed, double most) => FormNumbers.Read(typed) is { } degrees && Math.Abs(degrees) <= most ? degrees : null;
}
