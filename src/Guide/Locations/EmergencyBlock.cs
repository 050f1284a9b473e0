using System.Globalization;
using Foreshore.Almanac.Earth;
using NodaTime;

namespace Foreshore.Guide.Locations;

/// <summary>What one reads out or looks for when it has gone wrong. Null fields read "not recorded".</summary>
public sealed record EmergencyBlock
{
    private EmergencyBlock() { }

    public EmergencyBlock(Position position, string whomToRing)
    {
        (LatitudeDegrees, LongitudeDegrees) = (position.LatitudeDegrees, position.LongitudeDegrees);
        WhomToRing = Require.Text(whomToRing, 200, "Whom to ring");
    }

    public double LatitudeDegrees { get; private init; }

    public double LongitudeDegrees { get; private init; }

    /// <summary>The number and the service to ask for, as printed on the field sheet.</summary>
    public string WhomToRing { get; private init; } = "";

    /// <summary>Grid reference where a national grid is in use.</summary>
    public string? GridReference { get; init => field = Require.TextOrNull(value, 60, "The grid reference"); }

    /// <summary>The nearest road an ambulance can reach.</summary>
    public string? NearestRoad { get; init => field = Require.TextOrNull(value, 300, "The nearest road"); }

    /// <summary>The last point on the walk with phone signal.</summary>
    public string? LastPhoneSignal { get; init => field = Require.TextOrNull(value, 300, "The last point with phone signal"); }

    /// <summary>The nearest throw-line or ring.</summary>
    public string? ThrowLine { get; init => field = Require.TextOrNull(value, 300, "The nearest throw-line"); }

    public LocalDate? ThrowLineSeenOn { get; init; }

    public string? WayOutOfWater { get; init => field = Require.TextOrNull(value, 300, "The way out of the water"); }

    public string? Shelter { get; init => field = Require.TextOrNull(value, 300, "The shelter"); }

    /// <summary>Official warnings for just this place, where they exist; else the country's link counts.</summary>
    public string? WarningsLink { get; init => field = Require.LinkOrNull(value, "The link to the official warnings"); }

    public Position Position => new(LatitudeDegrees, LongitudeDegrees);

    /// <summary>The position as one reads it out on the radio or the phone: degrees and decimal minutes.</summary>
    public string ReadOut => DegreesAndMinutes(Position);

    /// <summary>For example <c>44° 39.42′ N, 067° 12.08′ W</c>: thousandths would promise more than a phone knows.</summary>
    public static string DegreesAndMinutes(Position position) =>
        $"{Part(position.LatitudeDegrees, "00", 'N', 'S')}, {Part(position.LongitudeDegrees, "000", 'E', 'W')}";

    private static string Part(double degrees, string wholeFormat, char positive, char negative)
    {
        // Rounded as hundredths of a minute first, so that 59.996′ becomes the next degree and not 60.00′.
        var hundredths = (int)Math.Round(Math.Abs(degrees) * 6000, MidpointRounding.AwayFromZero);
        var whole = (hundredths / 6000).ToString(wholeFormat, CultureInfo.InvariantCulture);
        var minutes = (hundredths % 6000 / 100.0).ToString("00.00", CultureInfo.InvariantCulture);
        return $"{whole}° {minutes}′ {(degrees < 0 ? negative : positive)}";
    }
}
