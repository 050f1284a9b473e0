using System.Globalization;

namespace Foreshore.Guide.Locations;

/// <summary>Heights and distances in words: never a figure without its unit and its datum.</summary>
public static class PlaceWords
{
    public static string Words(this TideDatum datum) => datum switch
    {
        TideDatum.ChartDatum => "chart datum",
        TideDatum.MeanSeaLevel => "mean sea level",
        TideDatum.LowestAstronomicalTide => "lowest astronomical tide",
        _ => throw new ArgumentOutOfRangeException(nameof(datum), datum, "No such datum."),
    };

    /// <summary>For example "2.6 m above chart datum at station 8411060".</summary>
    public static string Words(this TideHeight height) => string.Create(CultureInfo.InvariantCulture,
        $"{Math.Abs(height.Metres):0.0#} m {(height.Metres < 0 ? "below" : "above")} {height.Datum.Words()} at station {height.StationId}");

    /// <summary>Under a kilometre in tens of metres, under twenty in tenths, beyond that whole kilometres.</summary>
    public static string Distance(double metres) => metres switch
    {
        < 995 => string.Create(CultureInfo.InvariantCulture, $"{Math.Round(metres / 10) * 10:0} m"),
        < 19_950 => string.Create(CultureInfo.InvariantCulture, $"{metres / 1000:0.0} km"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{metres / 1000:0} km"),
    };

    /// <summary>Paragraphs are parted by blank lines in what members write.</summary>
    public static IEnumerable<string> Paragraphs(string text) =>
        text.Split(["\r\n\r\n", "\n\n"], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
}
