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
/// <param name="FullMoons">
/// Moons at least 95 % lit that rise within half an hour of sunset, or set within half an hour of sunrise, over the own
/// skyline, whatever stands before them; empty when the sun alone is asked for.
/// </param>
internal sealed record AlignmentsAnswer(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Notice, IReadOnlyList<string> Cautions, string NotForNavigation,
    string Composition, string Page, string Zone, string? Subject, double? BearingDegrees, double? FootDegrees, double? TopDegrees, double ToleranceDegrees,
    string? Why, IReadOnlyList<AlignmentAnswer> Alignments, IReadOnlyList<FullMoonAnswer> FullMoons)
{
    public static AlignmentsAnswer Of(Location place, VantagePoint stance, Composition picture, double toleranceDegrees, SubjectAlignments behind, ClubSettings? club, CountryCautions? cautions) =>
        new(club?.Banner, cautions.ToPrint().Lines, Words.NotForNavigation, picture.Name, picture.Address(place, stance), place.ZoneId,
            picture.Subject?.Name, Rounded(behind.Seen?.Bearing.Degrees), Rounded(behind.Seen?.FootAltitudeDegrees), Rounded(behind.Seen?.TopAltitudeDegrees),
            toleranceDegrees, behind.Why, [.. behind.Found.Select(one => AlignmentAnswer.Of(one, place.Zone))], [.. behind.FullMoons.Select(one => FullMoonAnswer.Of(one, place.Zone))]);

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
/// <param name="SunAltitudeDegrees">Airless altitude of the sun's centre then; a moon with the sun above 6 counts as one by day.</param>
internal sealed record AlignmentAnswer(
    SkyBody Body, DateTimeOffset Time, double OffDegrees, double AltitudeDegrees, double AzimuthDegrees, bool IsRising, double? IlluminatedFraction, double SunAltitudeDegrees)
{
    public static AlignmentAnswer Of(Alignment one, DateTimeZone zone) => new(
        one.Body, one.Time.At(zone), Math.Round(one.OffDegrees, 3), Math.Round(one.SeenDegrees, 2), Math.Round(one.AzimuthDegrees, 2), one.IsRising,
        one.IlluminatedFraction is { } lit ? Math.Round(lit, 3) : null, Math.Round(one.SunDegrees, 2));
}

/// <summary>A moon near full on the horizon at dusk or dawn.</summary>
/// <param name="Moon">When its upper limb rises or sets over the own skyline.</param>
/// <param name="IsRising">At dusk; else it sets at dawn.</param>
/// <param name="Sun">Sunset at dusk, sunrise at dawn.</param>
/// <param name="AzimuthDegrees">Of the moon then, true.</param>
/// <param name="IlluminatedFraction">0.95 to 1.</param>
internal sealed record FullMoonAnswer(DateTimeOffset Moon, bool IsRising, DateTimeOffset Sun, double AzimuthDegrees, double IlluminatedFraction)
{
    public static FullMoonAnswer Of(FullMoonAtTwilight one, DateTimeZone zone) =>
        new(one.Moon.At(zone), one.IsRising, one.Sun.At(zone), Math.Round(one.AzimuthDegrees, 2), Math.Round(one.IlluminatedFraction, 3));
}
