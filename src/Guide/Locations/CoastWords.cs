using System.Globalization;

namespace Foreshore.Guide.Locations;

/// <summary>What stands between two places of the coast.</summary>
public static class CoastWords
{
    /// <summary>What a page says once, over the strip.</summary>
    public const string Legend =
        "Top to bottom as one passes them with the sea on the left hand, so it lies to the right here. Each stretch is turned to run down the page: its arrow points north. Distances are straight lines between places; bays and capes are drawn from a coarse coastline. Not for navigation.";

    public static string Of(CoastLeg leg) => Distance(leg.Metres) + " " + leg.Point + (leg.Crossing is null ? "" : " · " + leg.Crossing);

    /// <summary>A round length as a scale bar bears it.</summary>
    public static string Length(double metres) => metres < 1000
        ? string.Create(CultureInfo.InvariantCulture, $"{metres:0} m")
        : string.Create(CultureInfo.InvariantCulture, $"{metres / 1000:0.#} km");

    public static string Distance(double metres) => metres < 950
        ? string.Create(CultureInfo.InvariantCulture, $"{Math.Round(metres / 50) * 50:0} m")
        : string.Create(CultureInfo.InvariantCulture, $"{metres / 1000:0.0} km");
}
