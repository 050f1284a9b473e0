using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Configuration;
using Xunit;

namespace Foreshore.Guide.Hosting;

public class SiteAddressTests
{
    [Fact]
    public void Cookies_bear_the_prefix_where_the_site_is_https()
    {
        var cookie = From("https://guide.example.org").Cookie("word", SameSiteMode.Lax);
        Assert.Equal(("__Host-word", CookieSecurePolicy.Always, true, "/", null), (cookie.Name, cookie.SecurePolicy, cookie.HttpOnly, cookie.Path, cookie.Domain));
        Assert.Equal("word", From(null).Cookie("word", SameSiteMode.Lax).Name);
        Assert.Equal("word", From("http://localhost:5080").Cookie("word", SameSiteMode.Lax).Name);
    }

    [Fact]
    public void Passkeys_belong_to_its_name_never_to_what_a_request_says()
    {
        Assert.Equal("guide.example.org", From("https://guide.example.org").PasskeyDomain);
        Assert.Equal("localhost", From(null).PasskeyDomain);
        Assert.Equal("https://guide.example.org/a", From("https://guide.example.org/").Of("/a", "http://localhost:5080"));
    }

    [Theory]
    [InlineData("guide.example.org")]
    [InlineData("ftp://guide.example.org")]
    [InlineData("https://guide.example.org/below")]
    [InlineData("https://somebody@guide.example.org")]
    public void What_is_no_address_of_a_site_is_refused(string text) => Assert.Throws<SettingException>(() => From(text));

    private static SiteAddress From(string? address) =>
        SiteAddress.From(new ConfigurationBuilder().AddInMemoryCollection([new("Site:Address", address)]).Build());
}
