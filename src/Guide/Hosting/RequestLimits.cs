using System.Globalization;
using System.Threading.RateLimiting;
using Foreshore.Guide.Shell;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.StaticAssets;

namespace Foreshore.Guide.Hosting;

/// <summary>
/// How much one client may ask in a minute, by the framework's limiter: pages, the API, forms, and forms that open accounts, each for itself
/// and by what it costs (<see cref="RequestCosts"/>). Wide enough for a club behind one address; 0 is no limit. Counted in memory, so by
/// each node alone: tries to sign in are counted in the database besides (SignInLimits).
/// </summary>
internal sealed record RequestLimits(int Pages, int Api, int Forms, int SignIns)
{
    private static readonly string[] OpensAccounts = ["/sign-in", "/invitation", "/new-start"];
    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);

    public static RequestLimits From(IConfiguration configuration) => new(
        Number(configuration["Limits:Pages"], "Limits:Pages", 1_200),
        Number(configuration["Limits:Api"], "Limits:Api", 600),
        Number(configuration["Limits:Forms"], "Limits:Forms", 240),
        Number(configuration["Limits:SignIns"], "Limits:SignIns", 60));

    public void Describe(IServiceCollection services) => services.AddRateLimiter(options =>
    {
        options.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
        options.GlobalLimiter = new ByCost(PartitionedRateLimiter.Create<HttpContext, (string Kind, string Client)>(PartitionOf), http => Math.Min(RequestCosts.Of(http), Math.Max(1, LimitOf(KindOf(http)))));
        options.OnRejected = async (rejected, _) => await RefuseAsync(rejected.HttpContext, rejected.Lease.TryGetMetadata(MetadataName.RetryAfter, out var after) ? after : Minute);
    });

    private RateLimitPartition<(string, string)> PartitionOf(HttpContext http)
    {
        var kind = KindOf(http);
        var limit = LimitOf(kind);
        if (limit == 0)
            return RateLimitPartition.GetNoLimiter((kind, ""));

        // A small limit comes back one by one, a large one each second.
        var period = TimeSpan.FromSeconds(Math.Max(1, Minute.TotalSeconds / limit));
        return RateLimitPartition.GetTokenBucketLimiter((kind, Client.Of(http)), _ => new TokenBucketRateLimiterOptions
        {
            TokenLimit = limit,
            ReplenishmentPeriod = period,
            TokensPerPeriod = Math.Max(1, (int)(limit * period.TotalSeconds / Minute.TotalSeconds)),
            QueueLimit = 0,
        });
    }

    private const string Free = "free";

    /// <summary>Files, the probe of health and pages about a fault are free: they cost little, and are what is needed when much is asked.</summary>
    private static string KindOf(HttpContext http)
    {
        var (request, path) = (http.Request, http.Request.Path);
        if (http.GetEndpoint()?.Metadata.GetMetadata<StaticAssetDescriptor>() is not null || path.StartsWithSegments("/health")
            || http.Features.Get<IStatusCodeReExecuteFeature>() is not null || http.Features.Get<IExceptionHandlerFeature>() is not null)
            return Free;
        if (StatusPages.IsForPrograms(path))
            return nameof(Api);
        if (HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method) || HttpMethods.IsOptions(request.Method))
            return nameof(Pages);
        return OpensAccounts.Any(opens => path.StartsWithSegments(opens)) ? nameof(SignIns) : nameof(Forms);
    }

    private int LimitOf(string kind) => kind switch
    {
        nameof(Pages) => Pages,
        nameof(Api) => Api,
        nameof(Forms) => Forms,
        nameof(SignIns) => SignIns,
        _ => 0,
    };

    private static Task RefuseAsync(HttpContext http, TimeSpan after)
    {
        var seconds = Math.Max(1, (int)Math.Ceiling(after.TotalSeconds));
        http.Response.Headers.RetryAfter = seconds.ToString(CultureInfo.InvariantCulture);
        return new PageFault("Too many requests in a short time",
            "This site is a small machine, and more was asked from your address within a minute than it gives to one. Nothing was stored.",
            string.Create(CultureInfo.InvariantCulture, $"Wait {seconds} {(seconds == 1 ? "second" : "seconds")}, then try again; what you typed is still in the form when you go back."))
            .Answer(http, StatusCodes.Status429TooManyRequests).ExecuteAsync(http);
    }

    private static int Number(string? text, string setting, int usual) => string.IsNullOrWhiteSpace(text) ? usual
        : TypedValue.Whole(text) ?? throw new SettingException(setting, $"\"{text}\" is no whole number", "Write requests a minute, like 600; 0 is no limit.");

    /// <summary>The framework's middleware takes one token a request; here a request takes as many as it costs.</summary>
    private sealed class ByCost(PartitionedRateLimiter<HttpContext> inner, Func<HttpContext, int> cost) : PartitionedRateLimiter<HttpContext>
    {
        public override RateLimiterStatistics? GetStatistics(HttpContext resource) => inner.GetStatistics(resource);

        protected override RateLimitLease AttemptAcquireCore(HttpContext resource, int permitCount) => inner.AttemptAcquire(resource, permitCount * cost(resource));

        protected override ValueTask<RateLimitLease> AcquireAsyncCore(HttpContext resource, int permitCount, CancellationToken cancellationToken) =>
            inner.AcquireAsync(resource, permitCount * cost(resource), cancellationToken);

        protected override void Dispose(bool disposing)
        {
            if (disposing)
                inner.Dispose();
            base.Dispose(disposing);
        }
    }
}
