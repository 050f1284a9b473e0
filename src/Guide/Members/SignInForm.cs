namespace Foreshore.Guide.Members;

/// <summary>What the pages of signing in take; flat, so that it binds from a plain post.</summary>
public sealed class SignInForm
{
    public string? Email { get; set; }

    public string? Password { get; set; }

    public string? Code { get; set; }

    public string? Back { get; set; }

    /// <summary>A passkey's answer, as the browser wrote it, and the seal of the question.</summary>
    public string? Credential { get; set; }

    public string? Seal { get; set; }

    public const string WrongPassword = "This e-mail address and this password do not belong together. Check both, or use a passkey.";
    public const string WrongCode = "This code does not hold. Enter the six figures the app shows now, or a recovery code not used before.";
    public const string WrongPasskey = "The passkey was not taken. Press the button again; if that does not help, sign in with your password.";

    /// <summary>The page one came from, where the address does not say.</summary>
    public static SignInForm From(HttpRequest request, string? back)
    {
        var referer = Uri.TryCreate(request.Headers.Referer, UriKind.Absolute, out var from) && from.Authority == request.Host.Value && !from.AbsolutePath.StartsWith(SignInAddress.Page, StringComparison.Ordinal)
            && !from.AbsolutePath.StartsWith("/invitation", StringComparison.Ordinal) && !from.AbsolutePath.StartsWith("/sign-out", StringComparison.Ordinal) ? from.PathAndQuery : null;
        return new SignInForm { Back = Shell.LocalAddress.OrHome(back ?? referer) };
    }
}
