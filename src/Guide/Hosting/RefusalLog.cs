using Foreshore.Guide.Members;
using NodaTime;

namespace Foreshore.Guide.Hosting;

/// <summary>
/// Writes down what was refused: by the pattern of the address and the number of the member, never what was sent. Ten lines a second at most,
/// with the count of those left out, so that whoever is refused cannot fill the disk.
/// </summary>
internal sealed partial class RefusalLog(ILogger<RefusalLog> log, IClock clock)
{
    private const int MostASecond = 10;
    private static readonly int[] Refusals = [400, 401, 403, 413, 421, 429];
    private readonly Lock one = new();
    private long second;
    private int written;
    private int left;

    public static void Use(WebApplication app)
    {
        var refusals = app.Services.GetRequiredService<RefusalLog>();
        app.Use(async (http, next) =>
        {
            var pattern = (http.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText ?? "no address";
            await next(http);
            // A page about a refusal passes here too, on its way to be printed.
            if (Refusals.Contains(http.Response.StatusCode) && !pattern.StartsWith("/status", StringComparison.Ordinal))
                refusals.Note(http, pattern);
        });
    }

    private void Note(HttpContext http, string pattern)
    {
        int leftBefore;
        lock (one)
        {
            var now = clock.GetCurrentInstant().ToUnixTimeSeconds();
            if (now != second)
                (second, written) = (now, 0);
            if (++written > MostASecond)
            {
                left++;
                return;
            }

            (leftBefore, left) = (left, 0);
        }

        var method = HttpMethods.GetCanonicalizedValue(http.Request.Method);
        Refused(log, http.Response.StatusCode, HttpMethods.IsGet(method) || HttpMethods.IsPost(method) ? method : "another method", pattern, http.SignedIn() is { } who ? $"member {who.MemberId}" : "a visitor");
        if (leftBefore > 0)
            LeftOut(log, leftBefore);
    }

    [LoggerMessage(Level = LogLevel.Information, Message = "Refused with {Status}: {Method} {Pattern} by {Who}")]
    private static partial void Refused(ILogger log, int status, string method, string pattern, string who);

    [LoggerMessage(Level = LogLevel.Information, Message = "{Count} refusals before it were not written down")]
    private static partial void LeftOut(ILogger log, int count);
}
