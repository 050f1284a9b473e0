using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Http.Metadata;

namespace Foreshore.Guide.Shell;

/// <summary>
/// What cannot be read is answered in words before any page takes it: an address or a form with letters that nothing can keep, a form that is
/// too large, or in pieces, or without the token of the page it was on. Left to the pages each would come to a fault of its own.
/// </summary>
internal static class UnreadForms
{
    private const int BytesInMegabyte = 1 << 20;

    private static readonly PageFault NoToken = new("That form could not be taken",
        "It came without the sign of the page it was on, or with one that is no longer good: the page was open for long, cookies are off, or the form is from another site. Nothing was changed.",
        "Go back, load the page again and send it once more. What you typed is still there in most browsers; a chosen file must be chosen again.");

    /// <summary>Errors 28 and 122 of Linux (ENOSPC, EDQUOT) and 112 of Windows, as the runtime passes them on.</summary>
    private static readonly int[] NoRoomCodes = [28, 122, unchecked((int)0x80070070)];

    private static readonly PageFault Unreadable = new("That form could not be read",
        "It holds a letter that no page can hold, such as one without a sign, or came in pieces. Nothing was changed.",
        "Go back, type the text again instead of pasting it, and send it once more.");

    private static readonly PageFault UnreadableAddress = new("That address could not be read",
        "It holds a letter that no page can hold, such as one without a sign.",
        "Go to the guide and take the link from there, or type what you look for into the search.");

    /// <summary>Early: whatever asks the database with a word of the address comes later.</summary>
    public static void UseReadableAddresses(this WebApplication app) => app.Use((http, next) =>
        http.Features.Get<IExceptionHandlerFeature>() is null && http.Request.Query.Any(pair => !TypedValue.IsText(pair.Key) || !pair.Value.All(TypedValue.IsText))
            ? UnreadableAddress.Answer(http, StatusCodes.Status400BadRequest).ExecuteAsync(http) : next(http));

    /// <summary>After it is known who asks, before the check of the token: what is refused is not read, and what is read is read once.</summary>
    public static void UseReadableForms(this WebApplication app) => app.Use(async (http, next) =>
    {
        if (await FaultOfAsync(http) is { } answer)
            await answer.ExecuteAsync(http);
        else
            await next(http);
    });

    /// <summary>After the check of the token, before the pages.</summary>
    public static void UseUnreadForms(this WebApplication app) => app.Use((http, next) =>
        // The page that tells of it is only read, and passes here too.
        !HttpMethods.IsGet(http.Request.Method) && http.Features.Get<IAntiforgeryValidationFeature>() is { IsValid: false, Error: var error }
            ? (Answer(http, error) ?? NoToken.Answer(http, StatusCodes.Status400BadRequest)).ExecuteAsync(http) : next(http));

    private static async Task<IResult?> FaultOfAsync(HttpContext http)
    {
        if (http.GetEndpoint() is null || HttpMethods.IsGet(http.Request.Method) || HttpMethods.IsOptions(http.Request.Method) || !http.Request.HasFormContentType)
            return null;

        try
        {
            var form = await http.Request.ReadFormAsync(http.RequestAborted);
            return form.All(pair => TypedValue.IsText(pair.Key) && pair.Value.All(TypedValue.IsText)) && form.Files.All(file => TypedValue.IsText(file.Name) && TypedValue.IsText(file.FileName))
                ? null : Unreadable.Answer(http, StatusCodes.Status400BadRequest);
        }
        catch (Exception fault) when (fault is InvalidDataException or IOException)
        {
            // A connection that broke in the middle is nobody's to answer.
            return Answer(http, fault) ?? Unreadable.Answer(http, StatusCodes.Status400BadRequest);
        }
    }

    /// <summary>What could not be read is told by what lies within: too many bytes in all, or in one part of the form. Null: something else.</summary>
    private static IResult? Answer(HttpContext http, Exception? error)
    {
        for (var fault = error; fault is not null; fault = fault.InnerException)
        {
            if (fault is BadHttpRequestException { StatusCode: StatusCodes.Status413PayloadTooLarge }
                || (fault is InvalidDataException && fault.Message.Contains("limit", StringComparison.OrdinalIgnoreCase)))
                return TooLarge(http).Answer(http, StatusCodes.Status413PayloadTooLarge);
            if (fault is IOException && NoRoomCodes.Contains(fault.HResult))
                return Results.StatusCode(StatusCodes.Status507InsufficientStorage);
            if (fault is InvalidDataException)
                return Unreadable.Answer(http, StatusCodes.Status400BadRequest);
        }

        return null;
    }

    private static PageFault TooLarge(HttpContext http)
    {
        var most = http.GetEndpoint()?.Metadata.GetMetadata<IRequestSizeLimitMetadata>()?.MaxRequestBodySize;
        return new("That was too large to take in",
            $"What was sent is larger than this page takes{(most is >= BytesInMegabyte ? $", {most / BytesInMegabyte} MB at a time" : "")}, or holds more than a thousand fields. Nothing was stored.",
            "Send less at a time: a smaller file, or a shorter text.");
    }
}
