using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.Metadata;

namespace Foreshore.Guide.Shell;

/// <summary>
/// A form that is too large to be read, or comes without the token of the page it was on, is answered in words before any page
/// takes it: left to the pages it would come to an empty answer.
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

    /// <summary>After the check of the token, before the pages.</summary>
    public static void UseUnreadForms(this WebApplication app) => app.Use((http, next) =>
        // The page that tells of it is only read, and passes here too.
        !HttpMethods.IsGet(http.Request.Method) && http.Features.Get<IAntiforgeryValidationFeature>() is { IsValid: false, Error: var error }
            ? Answer(http, error).ExecuteAsync(http) : next(http));

    private static IResult Answer(HttpContext http, Exception? error)
    {
        // What could not be read is told by what lies within: too many bytes in all, or in one part of the form.
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

        return NoToken.Answer(http, StatusCodes.Status400BadRequest);
    }

    private static PageFault TooLarge(HttpContext http)
    {
        var most = http.GetEndpoint()?.Metadata.GetMetadata<IRequestSizeLimitMetadata>()?.MaxRequestBodySize;
        return new("That was too large to take in",
            $"What was sent is larger than this page takes{(most is >= BytesInMegabyte ? $", {most / BytesInMegabyte} MB at a time" : "")}. Nothing was stored.",
            "Send less at a time: a smaller file, or a shorter text.");
    }
}
