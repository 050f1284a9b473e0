using Foreshore.Guide.Members;
using Foreshore.Guide.Shell;
using NodaTime;

namespace Foreshore.Guide.Contributions;

/// <summary>
/// One tap: what stands there is still correct today. It is a proposal of nothing but the day; a warden's own tap lets it in at
/// once, a member's waits in the queue like every change.
/// </summary>
public sealed class StillCorrect(Contributing contributing, Reviewing reviewing, IClock clock, Microsoft.EntityFrameworkCore.IDbContextFactory<GuideDb> database)
{
    public async Task<ReviewOutcome> SayAsync(SignedIn who, Guid formId, Matter matter, int targetId, CancellationToken cancel)
    {
        string today;
        await using (var db = await database.CreateDbContextAsync(cancel))
        {
            if (await db.ThingAsync(matter, targetId, who.Reader, cancel) is not { } thing)
                return ReviewOutcome.Refused("That is not in the guide any more.");
            today = Written.Of(clock.GetCurrentInstant().InZone(thing.Place.Zone).Date);
            if (thing.Read().GetValueOrDefault("checked-on") == today)
                return ReviewOutcome.Done(thing.Address);
        }

        var sent = await contributing.SendAsync(who.Reader, formId, matter, targetId, new Dictionary<string, string> { ["checked-on"] = today }, "Still correct", null, cancel);
        if (sent.Faults.Count > 0 || sent.Proposal is null)
            return new([], sent.Faults.Count > 0 ? sent.Faults : [new FieldFault("send", "That is not in the guide any more.")]);
        return who.Reader.IsWarden ? await reviewing.AcceptAsync(who, formId, new Dictionary<string, string>(), new HashSet<string>(), null, cancel) : ReviewOutcome.Done();
    }
}

internal static class StillCorrectEndpoint
{
    /// <summary>The button stands on many pages, so it posts to an address of its own and leads back.</summary>
    public static void MapStillCorrect(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/still-correct", [OpenTo(Role.Member)] () => Results.Redirect("/contribute"));
        routes.MapPost("/still-correct",
        [OpenTo(Role.Member)] async (HttpContext http, StillCorrect still, Microsoft.AspNetCore.Antiforgery.IAntiforgery antiforgery) =>
        {
            if (!await antiforgery.IsRequestValidAsync(http))
                return Results.BadRequest();
            var form = await http.Request.ReadFormAsync(http.RequestAborted);
            if (ProposalWords.Of(form["matter"]) is not { } matter || TypedValue.Whole(form["id"]) is not { } id)
                return Results.BadRequest();
            var outcome = await still.SayAsync(http.SignedIn()!, await http.KeyAsync("still-correct"), matter, id, http.RequestAborted);
            return outcome.IsDone ? Results.Redirect(LocalAddress.OrHome(form["back"]))
                : new PageFault("That was not sent", string.Join(' ', outcome.Faults.Select(fault => fault.Words)), "Go back, load the page again, and tell it once more.")
                    .Answer(http, StatusCodes.Status409Conflict);
        });
    }
}
