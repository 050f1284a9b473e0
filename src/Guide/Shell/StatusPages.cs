using System.Data.Common;
using System.Net.Sockets;
using Foreshore.Guide.Locations;
using Microsoft.AspNetCore.Diagnostics;
using Npgsql;

namespace Foreshore.Guide.Shell;

/// <summary>Faults become pages that say what happened and what to do; answers for programs stay problem details.</summary>
internal static class StatusPages
{
    public static void UseStatusPages(this WebApplication app)
    {
        app.UseWhen(context => IsForPrograms(context.Request.Path),
            programs => programs.UseExceptionHandler(new ExceptionHandlerOptions { StatusCodeSelector = StatusOf, SuppressDiagnosticsCallback = IsToldAlready }));
        app.UseWhen(context => !IsForPrograms(context.Request.Path), pages =>
        {
            pages.Use(async (context, next) =>
            {
                await context.RequestServices.GetRequiredService<MastheadQueries>().CurrentAsync(context.RequestAborted);
                await next(context);
            });
            pages.UseExceptionHandler(new ExceptionHandlerOptions
            {
                ExceptionHandlingPath = "/error",
                CreateScopeForErrors = true,
                // A form that is too large is the asker's fault (413), not the site's.
                StatusCodeSelector = StatusOf,
                SuppressDiagnosticsCallback = IsToldAlready,
            });
            pages.UseStatusCodePagesWithReExecute("/status/{0}", createScopeForStatusCodePages: true);
            pages.Use((context, next) =>
            {
                // The page about a failed post is itself only read: it must not ask for the form's token or handler.
                if (context.Features.Get<IStatusCodeReExecuteFeature>() is not null || context.Features.Get<IExceptionHandlerFeature>() is not null)
                    context.Request.Method = HttpMethods.Get;

                return next(context);
            });
        });
    }

    /// <summary>
    /// Told on the page, and no fault of the site's code: a trace for each would hide what is one. That the database is away stands in the
    /// log once, not again for each page that says so.
    /// </summary>
    private static bool IsToldAlready(ExceptionHandlerSuppressDiagnosticsContext context) =>
        context.Exception is BadHttpRequestException or MisdirectedException or NotAcceptedException
        || context.Exception.GetBaseException() is DbException { SqlState: PostgresErrorCodes.CannotConnectNow };

    private static int StatusOf(Exception fault) => fault switch
    {
        BadHttpRequestException bad => bad.StatusCode,
        // What a form did not show beside its field is told all the same.
        NotAcceptedException => StatusCodes.Status400BadRequest,
        MisdirectedException => StatusCodes.Status421MisdirectedRequest,
        _ when fault.GetBaseException() is DbException { SqlState: PostgresErrorCodes.DiskFull } => StatusCodes.Status507InsufficientStorage,
        _ when IsDatabaseAway(fault) => StatusCodes.Status503ServiceUnavailable,
        _ => StatusCodes.Status500InternalServerError,
    };

    /// <summary>No connection, one refused or one that broke: PostgreSQL's error classes 08, 3D, 53 and 57 (its manual, appendix A).</summary>
    private static bool IsDatabaseAway(Exception? fault) => fault switch
    {
        null => false,
        SocketException or TimeoutException => true,
        DbException { SqlState: [var first, var second, ..] } when (first, second) is ('0', '8') or ('3', 'D') or ('5', '3') or ('5', '7') => true,
        NpgsqlException { IsTransient: true } and not PostgresException => true,
        _ => IsDatabaseAway(fault.InnerException),
    };

    /// <summary>Path and query that were asked for, also on the page that tells why they failed; never another site's.</summary>
    public static string AskedFor(HttpContext context)
    {
        var (path, query) = (context.Request.Path, context.Request.QueryString.ToString());
        if (context.Features.Get<IStatusCodeReExecuteFeature>() is { } failed)
            (path, query) = (new PathString(failed.OriginalPath), failed.OriginalQueryString ?? "");
        else if (context.Features.Get<IExceptionHandlerPathFeature>() is { } broken)
            path = new PathString(broken.Path);

        return LocalAddress.OrHome(path.ToUriComponent() + query);
    }

    public static bool IsForPrograms(PathString path) =>
        path.StartsWithSegments("/api") || path.StartsWithSegments("/openapi") || path.StartsWithSegments("/health");
}
