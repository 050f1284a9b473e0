using Xunit;

namespace Foreshore.Guide.Shell;

public sealed class LocalAddressTests
{
    [Theory]
    [InlineData("/")]
    [InlineData("/coast/halfmoon-light?x=1#hazards")]
    [InlineData("/weekend?from=2026-11-27")]
    public void A_page_of_this_site_is_gone_back_to(string address) => Assert.Equal(address, LocalAddress.OrHome(address));

    [Theory]
    [InlineData("/é", "/%C3%A9")]
    [InlineData("/?q=caf\u00e9 noir", "/?q=caf%C3%A9%20noir")]
    [InlineData("/?q=%C3%A9", "/?q=%C3%A9")]
    public void Letters_that_no_header_holds_are_encoded(string address, string sent) => Assert.Equal(sent, LocalAddress.OrHome(address));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("//elsewhere.example")]
    [InlineData("/\\elsewhere.example")]
    [InlineData("/a\\..\\b")]
    [InlineData("/\t/elsewhere.example")]
    [InlineData("/x\r\nSet-Cookie: a=b")]
    [InlineData("https://elsewhere.example/")]
    [InlineData("javascript:alert(1)")]
    [InlineData("coast")]
    [InlineData("/\0")]
    public void Anything_else_leads_home(string? address) => Assert.Equal("/", LocalAddress.OrHome(address));

    [Fact]
    public void An_endless_address_leads_home() => Assert.Equal("/", LocalAddress.OrHome("/" + new string('a', 2001)));
}
