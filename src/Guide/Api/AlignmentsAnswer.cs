using System.Text.Json.Serialization;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using NodaTime;

namespace Foreshore.Guide.Api;

/// <summary>When sun or moon stands behind a composition's subject.</summary>
/// <param name="Notice">Present when the guide is a demo.</param>
/// <param name="Cautions">What to mind wherever somebody stands by the sea.</param>
/// <param name="NotForNavigation">Stands in every answer.</param>
/// <param name="Composition">Its name.</param>
/// <param name="Page">Address of its page.</param>
/// <param name="Zone">IANA time zone of all times here.</param>
/// <param name="Subject">Its name; null when the composition has none, and then there are no alignments.</param>
/// <param name="BearingDegrees">From the vantage point, true.</param>
/// <param name="FootDegrees">Altitude of the subject's foot as seen.</param>
/// <param name="TopDegrees">Altitude of its top as seen.</param>
/// <param name="ToleranceDegrees">How near the disc's centre comes to the line from foot to top.</param>
/// <param name="Why">Why there are none, in words; null otherwise.</param>
/// <param name="Alignments">By time. Light alone: tide, sea, access and weather are not judged here.</param>
internal sealed record AlignmentsAnswer(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Notice, IReadOnlyList<string> Cautions, string NotForNavigation,
    string Composition, string Page, string Zone, string? Subject, double? BearingDegrees, double? FootDegrees, double? TopDegrees, double ToleranceDegrees,
    string? Why, IReadOnlyList<AlignmentAnswer> Alignments)
{
    public static AlignmentsAnswer Of(Location place, VantagePoint stance, Composition picture, LocalDate from, LocalDate to, double tolerance, ClubSettings? club, CountryCautions? cautions)
    {
        var behind = SubjectAlignments.Of(place, stance, picture, from, to, tolerance);
        return new(club?.Banner, cautions.ToPrint().Lines, Words.NotForNavigation, picture.Name, picture.Address(place, stance), place.ZoneId,
            picture.Subject?.Name, Rounded(behind.Seen?.Bearing.Degrees), Rounded(behind.Seen?.FootAltitudeDegrees), Rounded(behind.Seen?.TopAltitudeDegrees),
            tolerance, behind.Why, [.. behind.Found.Select(one => AlignmentAnswer.Of(one, place.Zone))]);
    }

    private static double? Rounded(double? degrees) => degrees is { } known ? Math.Round(known, 3) : null;
}

/// <summary>One passage.</summary>
/// <param name="Body">sun or moon.</param>
/// <param name="Time">When its centre comes nearest to the subject's line.</param>
/// <param name="OffDegrees">How near.</param>
/// <param name="AltitudeDegrees">Altitude of the centre as seen.</param>
/// <param name="AzimuthDegrees">True.</param>
/// <param name="IsRising">Whether it climbs.</param>
/// <param name="IlluminatedFraction">Of the moon, 0 to 1; null for the sun.</param>
internal sealed record AlignmentAnswer(
    SkyBody Body, DateTimeOffset Time, double OffDegrees, double AltitudeDegrees, double AzimuthDegrees, bool IsRising, double? IlluminatedFraction)
{
    public static AlignmentAnswer Of(Alignment one, DateTimeZone zone) => new(
        one.Body, one.Time.At(zone), Math.Round(one.OffDegrees, 3), Math.Round(one.SeenDegrees, 2), Math.Round(one.AzimuthDegrees, 2), one.IsRising,
        one.IlluminatedFraction is { } lit ? Math.Round(lit, 3) : null);
}
