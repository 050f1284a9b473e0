using Foreshore.Guide.Locations;
using Foreshore.Guide.Shell;
using Microsoft.AspNetCore.Http.Features;

namespace Foreshore.Guide.Members;

/// <summary>What the account's pages about a second step take.</summary>
public sealed class SecondStepForm
{
    /// <summary>The secret as shown on the page; it is kept once a code made from it comes back.</summary>
    public string? Key { get; set; }

    public string? Code { get; set; }

    public string? Name { get; set; }

    public Guid Passkey { get; set; }

    public string? Credential { get; set; }

    public string? Seal { get; set; }

    public string? Back { get; set; }

    public byte[] KeyBytes => Base32.Bytes(Key) is { } key && OneTimeCode.IsKey(key) ? key : OneTimeCode.NewKey();

    /// <summary>In groups of four, for whoever types it.</summary>
    public static string Grouped(byte[] key) => string.Join(' ', Base32.Of(key).Chunk(4).Select(group => new string(group)));

    /// <summary>How authenticator apps take a secret by a link (the otpauth scheme, common practice).</summary>
    public static string Link(byte[] key, string club, string email) =>
        $"otpauth://totp/{Uri.EscapeDataString(club)}:{Uri.EscapeDataString(email)}?secret={Base32.Of(key)}&issuer={Uri.EscapeDataString(club)}";

    /// <summary>Runs a change; what it refuses stands beside the field.</summary>
    public static async Task<IReadOnlyList<FieldFault>> TryAsync(HttpContext http, string field, Func<Task> change)
    {
        try
        {
            await change();
            return [];
        }
        catch (NotAcceptedException fault)
        {
            http.Response.StatusCode = StatusCodes.Status400BadRequest;
            return [new(field, fault.Message)];
        }
    }

    /// <summary>A page that shows a secret is not compressed: its length would tell of it.</summary>
    public static void KeepUncompressed(HttpContext http)
    {
        if (http.Features.Get<IHttpsCompressionFeature>() is { } compression)
            compression.Mode = HttpsCompressionMode.DoNotCompress;
    }
}
