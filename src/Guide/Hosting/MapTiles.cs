namespace Foreshore.Guide.Hosting;

/// <summary>
/// Where map tiles come from: <c>Map:TileUrl</c> (with {z}, {x}, {y} and optionally {s}) and <c>Map:Attribution</c>.
/// The same setting feeds the map and the content security policy, so that they cannot disagree.
/// Without an address the map draws the coast kept on the server.
/// </summary>
public sealed record MapTiles(string? UrlTemplate, string? Attribution, string? Host)
{
    public static MapTiles From(IConfiguration configuration)
    {
        var template = configuration["Map:TileUrl"];
        return string.IsNullOrWhiteSpace(template)
            ? new MapTiles(null, null, null)
            : new MapTiles(template, configuration["Map:Attribution"], HostOf(template));
    }

    /// <summary>The scheme, host and port as a content security policy names them; {s} becomes a wildcard label.</summary>
    private static string HostOf(string template)
    {
        var hasPlaces = template.Contains("{z}", StringComparison.Ordinal)
            && template.Contains("{x}", StringComparison.Ordinal)
            && template.Contains("{y}", StringComparison.Ordinal);
        var plain = template.Replace("{s}", "subdomain", StringComparison.Ordinal);
        if (!hasPlaces
            || !Uri.TryCreate(plain, UriKind.Absolute, out var address)
            || (address.Scheme != Uri.UriSchemeHttps && address.Scheme != Uri.UriSchemeHttp))
        {
            throw new SettingException(
                "Map:TileUrl",
                $"\"{template}\" is not a tile address",
                "Give an https address with {z}, {x} and {y}, like https://tile.example.org/{z}/{x}/{y}.png, or leave it empty to use the drawn coast.");
        }

        return address.GetLeftPart(UriPartial.Authority).Replace("subdomain.", "*.", StringComparison.Ordinal);
    }
}
