namespace Foreshore.Guide.Hosting;

/// <summary>
/// Where people reach the site, from <c>Site:Address</c>, like https://guide.example.org. Passkeys are made for its host name; links in
/// mails begin with it; where it says https, cookies that matter bear the <c>__Host-</c> prefix and go by https alone.
/// </summary>
public sealed record SiteAddress(Uri? Given)
{
    private const string Setting = "Site:Address";

    /// <summary>Without the setting the site is this machine's own.</summary>
    public string PasskeyDomain => Given?.Host ?? "localhost";

    public bool IsHttps => Given?.Scheme == Uri.UriSchemeHttps;

    public static SiteAddress From(IConfiguration configuration)
    {
        var text = configuration[Setting];
        if (string.IsNullOrWhiteSpace(text))
            return new SiteAddress(Given: null);

        return Uri.TryCreate(text.Trim(), UriKind.Absolute, out var address)
            && (address.Scheme == Uri.UriSchemeHttps || address.Scheme == Uri.UriSchemeHttp)
            && address.PathAndQuery == "/" && address.UserInfo.Length == 0
                ? new SiteAddress(address)
                : throw new SettingException(Setting, $"\"{text}\" is not the address of a site", "Give scheme and name alone, like https://guide.example.org.");
    }

    /// <summary>The whole address of a path of this site, for people who get it by other means than a page.</summary>
    public string Of(string path, string fallback) => new Uri(Given ?? new Uri(fallback), path).ToString();

    public string Of(string path, HttpRequest request) => Of(path, $"{request.Scheme}://{request.Host}");

    /// <summary>
    /// On http the prefix would keep the cookie from being stored at all: as shipped the site is http on this machine alone. Behind a
    /// proxy that speaks https the setting says so, whatever the proxy tells.
    /// </summary>
    public CookieBuilder Cookie(string name, SameSiteMode sameSite) => new()
    {
        Name = IsHttps ? $"__Host-{name}" : name,
        HttpOnly = true,
        IsEssential = true,
        Path = "/",
        SameSite = sameSite,
        SecurePolicy = IsHttps ? CookieSecurePolicy.Always : CookieSecurePolicy.SameAsRequest,
    };
}
