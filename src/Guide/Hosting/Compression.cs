using System.IO.Compression;
using Microsoft.AspNetCore.ResponseCompression;

namespace Foreshore.Guide.Hosting;

/// <summary>
/// Pages are compressed, over https too. The known danger is a secret and a stranger's text in one compressed page, guessed by
/// its length: form tokens are sealed anew for every answer, so they give nothing to guess, and nothing else on a page is secret.
/// </summary>
internal static class Compression
{
    public static IServiceCollection AddPageCompression(this IServiceCollection services) => services
        .Configure<BrotliCompressionProviderOptions>(options => options.Level = CompressionLevel.Optimal)
        .Configure<GzipCompressionProviderOptions>(options => options.Level = CompressionLevel.Optimal)
        .AddResponseCompression(options =>
        {
            options.EnableForHttps = true;
            options.Providers.Add<BrotliCompressionProvider>();
            options.Providers.Add<GzipCompressionProvider>();
            options.MimeTypes =
            [
                .. ResponseCompressionDefaults.MimeTypes,
                "application/problem+json", "application/geo+json", "application/gpx+xml", "application/manifest+json",
                "image/svg+xml", "text/calendar",
            ];
        });
}
