using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Net.Http.Headers;

namespace Foreshore.Guide.Api;

internal static class Words
{
    public const string NotForNavigation =
        "Not for navigation. A place in this answer is not a place where one can stand now: signs, the coastguard, local rules, landowners and the sea itself decide.";

    public const string SeaUnknown = "The sea is not known here: look, and read the official forecast.";
}

/// <summary>A JSON answer with a strong validator of its own bytes: asking again costs a 304 while nothing has changed.</summary>
internal sealed class Answer<T>(T value, string caching = "no-cache") : IResult
{
    public static readonly JsonSerializerOptions Format = new(JsonSerializerDefaults.Web) { Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase) } };

    public async Task ExecuteAsync(HttpContext http)
    {
        var body = JsonSerializer.SerializeToUtf8Bytes(value, Format);
        var tag = new EntityTagHeaderValue($"\"{Convert.ToHexStringLower(SHA256.HashData(body).AsSpan(0, 12))}\"");
        http.Response.Headers.ETag = tag.ToString();
        http.Response.Headers.CacheControl = caching;
        if (http.Request.GetTypedHeaders().IfNoneMatch.Any(known => known.Compare(tag, useStrongComparison: false) || known.Equals(EntityTagHeaderValue.Any)))
        {
            http.Response.StatusCode = StatusCodes.Status304NotModified;
            return;
        }
        http.Response.ContentType = "application/json; charset=utf-8";
        await http.Response.Body.WriteAsync(body, http.RequestAborted);
    }
}

internal static class ApiProblem
{
    public static ProblemHttpResult Refused(string detail) =>
        TypedResults.Problem(detail, title: "That question cannot be answered", statusCode: StatusCodes.Status400BadRequest);

    public static ProblemHttpResult Missing(string detail) =>
        TypedResults.Problem(detail, title: "Nothing is there", statusCode: StatusCodes.Status404NotFound);
}
