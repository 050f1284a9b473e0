using Foreshore.Guide.Locations;
using Microsoft.AspNetCore.Diagnostics;

namespace Foreshore.Guide.Shell;

/// <summary>What went wrong with a request, in the three sentences a reader needs: what happened, why, what to do.</summary>
public sealed record PageFault(string Title, string Why, string WhatToDo)
{
    private const string Key = nameof(PageFault);

    /// <summary>Ends an endpoint with this fault; the status page prints it inside the site's own layout, and programs get it as a problem.</summary>
    public IResult Answer(HttpContext context, int statusCode)
    {
        if (StatusPages.IsForPrograms(context.Request.Path))
            return Results.Problem($"{Why} {WhatToDo}", title: Title, statusCode: statusCode);

        Leave(context);
        return Results.StatusCode(statusCode);
    }

    /// <summary>Leaves it on the request, for the page about what is thrown next.</summary>
    public void Leave(HttpContext context) => context.Items[Key] = this;

    /// <summary>The fault an endpoint left on the request, or the usual words for the status.</summary>
    public static PageFault Of(HttpContext context, int statusCode) =>
        context.Items[Key] as PageFault ?? OfRefusal(context) ?? Usual(statusCode);

    /// <summary>A value that was not taken says in its own words why.</summary>
    private static PageFault? OfRefusal(HttpContext context) => context.Features.Get<IExceptionHandlerFeature>()?.Error is NotAcceptedException refused
        ? new("That could not be taken", refused.Message, "Nothing was stored. Go back, put it right and send it again; what you typed is still in the form.") : null;

    private static PageFault Usual(int statusCode) => statusCode switch
    {
        400 => new("That request could not be read", "Something in the address or the form is not what this page expects.",
            "Go back, check what was filled in, and send it again. What you typed is still in the form."),
        403 => new("This page is not open to you", "It is kept to some members, or the form came from another site.",
            "If you belong to the club, ask a guide warden. Otherwise start from the guide."),
        404 => NotFound,
        405 => new("That address does not take this kind of request", "It is only there for a form to be sent to, or only to be read.",
            "Go to the guide and take the link or button from there."),
        413 => new("That was too large to take in", "What was sent is larger than this site accepts.",
            "Send less at a time: shorter text, or a smaller file."),
        429 => new("Too many requests in a short time", "This site is a small machine and limits how often one visitor may ask.",
            "Wait a minute, then try again."),
        503 => new("The guide is not ready", "The database behind it does not answer just now. Nothing was lost.",
            "Wait a minute, then load the page again. Printed sheets keep their own times and still say when they run out."),
        507 => new("The disk of this site is full", "There is no room to store what was sent. Nothing was stored; what is in the guide can still be read.",
            "Keep what you typed and tell whoever keeps the site: it has to make room. Then go back and send it again."),
        < 500 => new("That request could not be answered", "The address or the form is not what this site expects.",
            "Go back and try again, or start from the guide."),
        _ => Broken,
    };

    public static readonly PageFault NotFound = new("There is no page at this address",
        "The place may have been renamed or taken out of the guide, or the address has a slip in it.",
        "Look for the place on the coast, or search for a word of its name.");

    public static readonly PageFault Broken = new("Something went wrong on our side",
        "The site could not finish this page. The fault is written to the site's log; nothing that was saved before is lost.",
        "Load the page again. If it happens twice, tell whoever keeps the site what you were doing and when.");
}
