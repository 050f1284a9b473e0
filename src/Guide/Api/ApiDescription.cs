using System.Text.Json.Serialization;
using Microsoft.OpenApi;

namespace Foreshore.Guide.Api;

/// <summary>/openapi/v1.json: the read API described for programs and for those who write them.</summary>
public static class ApiDescription
{
    private static readonly string[] Numbers = ["lat", "lon", "heightMetres"];
    private static readonly string[] Required = ["lat", "lon", "date", "near"];

    public static IServiceCollection AddReadApi(this IServiceCollection services) => services
        // The description reads the same JSON settings as the answers are written with.
        .ConfigureHttpJsonOptions(json => json.SerializerOptions.Converters.Add(new JsonStringEnumConverter(System.Text.Json.JsonNamingPolicy.CamelCase)))
        .AddOpenApi("v1", options =>
        {
            options.ShouldInclude = endpoint => endpoint.RelativePath?.StartsWith("api/v1", StringComparison.Ordinal) == true;
            options.AddDocumentTransformer((document, _, _) =>
            {
                document.Info = new()
                {
                    Title = "Coast guide: read API",
                    Version = "v1",
                    Description = $"{Words.NotForNavigation} Times are ISO 8601 with the place's own offset; angles are degrees, azimuths clockwise from true north; lengths and heights are metres. "
                        + "Null means not known, never none. Places are shown as the reader may see them. Errors are problem details (RFC 9457).",
                };
                // The address is the reader's own: behind a proxy the site does not know it.
                document.Servers = [];
                return Task.CompletedTask;
            });
            options.AddOperationTransformer((operation, context, _) =>
            {
                foreach (var parameter in operation.Parameters?.OfType<OpenApiParameter>() ?? [])
                {
                    if (parameter.In != ParameterLocation.Query) continue;
                    parameter.Required = Required.Contains(parameter.Name)
                        || (parameter.Name == "from" && context.Description.RelativePath?.Contains("/tides/", StringComparison.Ordinal) == true);
                    parameter.Schema = Numbers.Contains(parameter.Name) ? new OpenApiSchema { Type = JsonSchemaType.Number, Format = "double" }
                        : parameter.Name == "date" ? new OpenApiSchema { Type = JsonSchemaType.String, Format = "date" } : parameter.Schema;
                }
                return Task.CompletedTask;
            });
        });
}
