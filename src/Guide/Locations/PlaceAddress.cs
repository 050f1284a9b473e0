using Foreshore.Guide.Compositions;
using Foreshore.Guide.Members;
using Microsoft.AspNetCore.Components;

namespace Foreshore.Guide.Locations;

/// <summary>The lasting addresses of places, and what an address that holds nothing answers.</summary>
public static class PlaceAddress
{
    public static string Address(this Location place) => $"/coast/{place.Slug}";

    public static string Address(this VantagePoint stance, Location place) => $"/coast/{place.Slug}/{stance.Slug}";

    public static string Address(this Composition picture, Location place, VantagePoint stance) => $"/coast/{place.Slug}/{stance.Slug}/{picture.Slug}";

    /// <summary>
    /// An old slug answers 301 to the current address; whatever else isn't there, or isn't for this reader, answers 404 alike,
    /// so that an answer never tells that a place exists.
    /// </summary>
    internal static async Task AnswerMissingAsync(
        this HttpContext http, NavigationManager navigation, GuideDb db, Reader reader, string location, string? stance = null, string? picture = null, string? page = null)
    {
        if (await db.MovedToAsync(reader, location, stance, picture, http.RequestAborted) is not var (place, point, composition) || place is null)
        {
            navigation.NotFound();
            return;
        }

        var address = string.Join('/', new[] { "/coast", place, point, composition, page }.OfType<string>());
        http.Response.StatusCode = StatusCodes.Status301MovedPermanently;
        http.Response.Headers.Location = address + http.Request.QueryString;
    }
}
