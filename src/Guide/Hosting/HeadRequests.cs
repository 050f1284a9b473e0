namespace Foreshore.Guide.Hosting;

/// <summary>
/// Answers HEAD wherever GET is answered: components and minimal endpoints refuse it by themselves (405), yet health
/// checks, link checkers and calendar clients ask that way. The request runs as a GET whose body goes nowhere.
/// </summary>
internal static class HeadRequests
{
    public static IApplicationBuilder UseHeadRequests(this IApplicationBuilder app) => app.Use(async (context, next) =>
    {
        if (!HttpMethods.IsHead(context.Request.Method))
        {
            await next(context);
            return;
        }

        var body = context.Response.Body;
        context.Request.Method = HttpMethods.Get;
        context.Response.Body = Stream.Null;
        try
        {
            await next(context);
        }
        finally
        {
            context.Request.Method = HttpMethods.Head;
            context.Response.Body = body;
        }
    });
}
