using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>All that is stored about a member, as one JSON file for themselves: the rows in which their number stands, secrets left out.</summary>
public static class OwnExport
{
    public const string Address = "/account/export";

    private const string About = "Every row of the guide's database in which your number stands, by table. Times are UTC. Left out is what would open "
        + "the account: passwords and links are kept as hashes, and the authenticator's secret stays where it is. People appear by their number alone. Of what others wrote and you decided on, it says which, "
        + "what and when; their words are theirs.";

    private static readonly JsonSerializerOptions Written = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static void MapOwnExport(this IEndpointRouteBuilder routes) =>
        routes.MapPost(Address, AnswerAsync).WithMetadata(new OpenToAttribute(Role.Member)).ExcludeFromDescription();

    private static async Task<IResult> AnswerAsync(HttpContext http, IAntiforgery tokens, IDbContextFactory<GuideDb> database, IClock clock)
    {
        // It is only read, but it is logged: another site shall not make somebody do it.
        if (!await tokens.IsRequestValidAsync(http))
            return Results.BadRequest();

        await using var db = await database.CreateDbContextAsync(http.RequestAborted);
        var (member, now) = (http.SignedIn()!.MemberId, clock.GetCurrentInstant());
        db.Add(new AuditEntry(Act.Exported, now, member));
        await db.SaveChangesAsync(http.RequestAborted);
        var file = JsonSerializer.SerializeToUtf8Bytes(await OfAsync(db, member, now, http.RequestAborted), Written);
        return Results.File(file, "application/json", "what-the-guide-keeps-about-you.json");
    }

    private static async Task<JsonObject> OfAsync(GuideDb db, Guid member, Instant now, CancellationToken cancel)
    {
        var tables = new JsonObject();
        foreach (var trace in Traces.Of(db.Model))
        {
            var rows = await RowsAsync(db, trace, member, cancel);
            if (rows.Count == 0)
                continue;

            var all = (JsonArray)(tables[trace.Table] ??= new JsonArray());
            // One row can name somebody twice: who did it and to whom.
            foreach (var row in rows.Where(row => !all.Any(one => JsonNode.DeepEquals(one, row))))
                all.Add(row);
        }

        return new JsonObject { ["about"] = About, ["at"] = now.ToString(), ["tables"] = tables };
    }

    private static async Task<List<JsonNode>> RowsAsync(GuideDb db, Trace trace, Guid member, CancellationToken cancel)
    {
        // Names of tables and columns come from the model; the number travels as a parameter.
#pragma warning disable EF1002
        var rows = await db.Database.SqlQueryRaw<string>(
            $"""SELECT ({(trace.Deed is { } told ? $"jsonb_build_object({string.Join(", ", told.Select(column => $"'{column}', t.\"{column}\""))})" : "to_jsonb(t)")} - @secrets)::text AS "Value" FROM "{trace.Table}" t WHERE t."{trace.Column}" = @member""",
            new Npgsql.NpgsqlParameter("secrets", trace.Secrets.ToArray()), new Npgsql.NpgsqlParameter("member", member)).ToListAsync(cancel);
#pragma warning restore EF1002
        return [.. rows.Select(row => JsonNode.Parse(row)!)];
    }
}
