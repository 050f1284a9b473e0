using Foreshore.Guide.Members;
using Foreshore.Guide.Shell;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Photos;

/// <summary>
/// <c>/photos/{id}</c> and its thumbnail. Asked for apart from any page, so who may look is asked again here; nothing but a JPEG of
/// our own making is ever sent, and nothing in it could run.
/// </summary>
internal static class PhotoEndpoint
{
    private const string Policy = "sandbox; default-src 'none'";

    public static void AddPhotos(this IServiceCollection services)
    {
        services.AddSingleton<Darkroom>();
        services.AddSingleton<Album>();
    }

    public static void MapPhotos(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/photos/{id:guid}", (Guid id, IDbContextFactory<GuideDb> database, IClock clock, HttpContext http) => AnswerAsync(id, false, database, clock, http)).ExcludeFromDescription();
        routes.MapGet("/photos/{id:guid}/small", (Guid id, IDbContextFactory<GuideDb> database, IClock clock, HttpContext http) => AnswerAsync(id, true, database, clock, http)).ExcludeFromDescription();
        routes.MapPost("/photos/{id:guid}/take-down", TakeDownAsync).WithMetadata(new OpenToAttribute(Role.Member)).ExcludeFromDescription();
    }

    private static async Task<IResult> TakeDownAsync(Guid id, Album album, IAntiforgery tokens, HttpContext http)
    {
        if (!await tokens.IsRequestValidAsync(http))
            return Results.BadRequest();
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        return await album.TakeDownAsync(http.SignedIn()!, id, http.RequestAborted) ? Results.Redirect(LocalAddress.OrHome(form["back"])) : Results.NotFound();
    }

    private static async Task<IResult> AnswerAsync(Guid id, bool isSmall, IDbContextFactory<GuideDb> database, IClock clock, HttpContext http)
    {
        await using var db = await database.CreateDbContextAsync(http.RequestAborted);
        if (await db.PhotoIsOpenAsync(id, http.Reader(), clock.GetCurrentInstant(), http.RequestAborted) is not { } isOpen)
            return Results.NotFound();

        var headers = http.Response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers.ContentDisposition = "inline";
        // An hour at most: a photo that is taken down, or a place that becomes sensitive, is soon gone from browsers too.
        headers.CacheControl = isOpen ? "private, max-age=3600" : "private, no-store";
        return Results.Bytes(await db.PhotoBytesAsync(id, isSmall, http.RequestAborted), "image/jpeg");
    }
}
