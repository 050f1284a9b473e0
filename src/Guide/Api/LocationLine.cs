using System.Text.Json.Serialization;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Api;

/// <summary>The places of the coast.</summary>
/// <param name="Notice">Present when the guide is a demo.</param>
/// <param name="NotForNavigation">Stands in every answer.</param>
/// <param name="Locations">In the order one passes them with the sea on the left hand.</param>
internal sealed record LocationsAnswer(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Notice, string NotForNavigation, IReadOnlyList<LocationLine> Locations);

/// <summary>One place in a line.</summary>
/// <param name="Slug">Its name in addresses.</param>
/// <param name="Name">Its name.</param>
/// <param name="Page">Address of its page.</param>
/// <param name="Position">Its middle, or the centre of a cell.</param>
/// <param name="Summary">In a sentence or two.</param>
/// <param name="Zone">IANA time zone.</param>
/// <param name="Country">ISO 3166-1.</param>
/// <param name="Subdivision">ISO 3166-2.</param>
/// <param name="ClosedToday">A closure stops one from going there today.</param>
/// <param name="HasRecommendedWayIn">False: no way in that the club may recommend. Null: ways are not shown to this reader.</param>
/// <param name="SevereHazards">Severe notes that stand, in words.</param>
internal sealed record LocationLine(
    string Slug, string Name, string Page, PlaceAt Position, string Summary, string Zone, string Country, string? Subdivision,
    bool ClosedToday, bool? HasRecommendedWayIn, IReadOnlyList<string> SevereHazards)
{
    public static LocationLine Of(Location place, Instant now)
    {
        var today = now.InZone(place.Zone).Date;
        return new(place.Slug, place.Name, place.Address(), PlaceAt.Of(place), place.Summary, place.ZoneId, place.CountryCode, place.SubdivisionCode,
            place.ClosuresThatStop(today).Count > 0, place.IsBlurred ? null : place.HasRecommendedWayIn(today),
            [.. place.NotesShown(today).Where(n => n.IsSevere).Select(n => n.Text)]);
    }
}

/// <summary>A position on the WGS 84 ellipsoid.</summary>
/// <param name="LatitudeDegrees">North positive.</param>
/// <param name="LongitudeDegrees">East positive.</param>
/// <param name="WithinMetres">Null: the position itself. A number: the centre of a square cell of that side, and nothing closer is told.</param>
internal sealed record PlaceAt(double LatitudeDegrees, double LongitudeDegrees, int? WithinMetres = null)
{
    public static PlaceAt Of(Location place) => new(Round(place.LatitudeDegrees), Round(place.LongitudeDegrees), place.IsBlurred ? Blur.CellMetres : null);

    public static PlaceAt Of(Almanac.Earth.Position position) => new(Round(position.LatitudeDegrees), Round(position.LongitudeDegrees));

    // Six decimals are a decimetre.
    private static double Round(double degrees) => Math.Round(degrees, 6);
}
