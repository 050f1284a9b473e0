using System.Net;
using AngleSharp;
using AngleSharp.Dom;
using Foreshore.Guide.Support;
using Xunit;

namespace Foreshore.Guide.Shell;

public sealed class ShellPagesTests(EmptyGuide guide) : IClassFixture<EmptyGuide>
{
    /// <summary>Remembers no cookie from one test to the next.</summary>
    private readonly HttpClient client = guide.CreateClient(new() { AllowAutoRedirect = false, HandleCookies = false });

    [Theory]
    [InlineData("paper")]
    [InlineData("slate")]
    [InlineData("lamp")]
    public async Task A_chosen_theme_is_in_the_first_tag_of_the_next_page(string theme)
    {
        var answer = await ChooseAsync(theme, "/about?x=1#look");

        Assert.Equal(HttpStatusCode.SeeOther, answer.StatusCode);
        Assert.Equal("/about?x=1#look", answer.Headers.Location?.OriginalString);
        var cookie = Assert.Single(answer.Headers.GetValues("Set-Cookie"));
        Assert.Contains("httponly", cookie, StringComparison.Ordinal);
        Assert.Contains("samesite=lax", cookie, StringComparison.Ordinal);

        var page = await ReadAsync("/about", cookie.Split(';')[0]);
        Assert.Equal(theme, page.DocumentElement.GetAttribute("data-theme"));
        Assert.Equal("true", page.QuerySelector($".masthead button[value={theme}]")!.GetAttribute("aria-pressed"));
        Assert.Equal(theme == "lamp", page.QuerySelector(".lamp-notice") is not null);
    }

    [Fact]
    public async Task The_browsers_bars_take_the_ground_of_the_style_sheet()
    {
        foreach (var theme in Theme.All)
        {
            Assert.Equal(StyleSheet.Themes[theme.Name]["ground"], Colour.Parse(theme.Ground[1..]));
            var page = await ReadAsync("/about", $"{Theme.CookieName}={theme.Name}");
            Assert.Equal(theme.Ground, page.QuerySelector("meta[name=theme-color]")!.GetAttribute("content"));
        }
    }

    [Fact]
    public async Task Without_a_choice_the_page_names_no_theme()
    {
        var forgotten = await ChooseAsync(Theme.AsDevice, "/about");
        Assert.Contains("expires=Thu, 01 Jan 1970", forgotten.Headers.GetValues("Set-Cookie").Single(), StringComparison.Ordinal);
        Assert.False((await ReadAsync("/about")).DocumentElement.HasAttribute("data-theme"));
        Assert.False((await ReadAsync("/about", $"{Theme.CookieName}=%22%3E%3Cscript%3E")).DocumentElement.HasAttribute("data-theme"));
    }

    [Theory]
    [InlineData("//elsewhere.example/")]
    [InlineData("https://elsewhere.example/")]
    [InlineData("")]
    public async Task A_form_never_leads_to_another_site(string back) =>
        Assert.Equal("/", (await ChooseAsync("slate", back)).Headers.Location?.OriginalString);

    [Fact]
    public async Task A_theme_that_does_not_exist_is_refused_in_words()
    {
        var answer = await ChooseAsync("neon", "/");
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("There is no such theme", (await DocumentAsync(answer)).QuerySelector("h1")!.TextContent);

        var notAForm = await client.PostAsync("/theme", new StringContent("{}", null, "application/json"));
        Assert.Equal(HttpStatusCode.BadRequest, notAForm.StatusCode);
    }

    [Fact]
    public async Task A_form_from_another_site_is_refused()
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/theme") { Content = new FormUrlEncodedContent([new("theme", "lamp")]) };
        request.Headers.Add("Sec-Fetch-Site", "cross-site");
        Assert.Equal(HttpStatusCode.Forbidden, (await client.SendAsync(request)).StatusCode);
    }

    [Theory]
    [InlineData("/nothing-here")]
    [InlineData("/not-found")]
    [InlineData("/status/400")]
    [InlineData("/error")]
    [InlineData("/coast/a/b/c/d/e")]
    public async Task An_address_without_a_page_is_404_and_offers_a_way_on(string address)
    {
        var answer = await client.GetAsync(address);
        var page = await DocumentAsync(answer);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Equal("There is no page at this address", page.QuerySelector("main h1")!.TextContent);
        Assert.NotNull(page.QuerySelector("main form[role=search] input[name=q]"));
        Assert.Equal($"{address}#main", page.QuerySelector("a.skip")!.GetAttribute("href"));
        Assert.Equal(address, page.QuerySelector("input[name=back]")!.GetAttribute("value"));
        Assert.Equal("noindex", page.QuerySelector("meta[name=robots]")!.GetAttribute("content"));
    }

    [Fact]
    public async Task No_address_makes_a_page_link_elsewhere()
    {
        var page = await DocumentAsync(await client.GetAsync(new Uri("http://localhost//elsewhere.example/")));
        Assert.Equal("/#main", page.QuerySelector("a.skip")!.GetAttribute("href"));
        Assert.Equal("/", page.QuerySelector("input[name=back]")!.GetAttribute("value"));
    }

    [Fact]
    public async Task Programs_that_ask_for_nothing_get_no_page()
    {
        var answer = await client.GetAsync("/api/v1/nothing");
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.DoesNotContain("<html", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_page_can_be_shared_printed_and_walked_by_landmarks()
    {
        var page = await ReadAsync("/about");

        Assert.Equal("About this guide – Coast guide", page.Title);
        Assert.Equal("en", page.DocumentElement.GetAttribute("lang"));
        Assert.Equal("http://localhost/about", page.QuerySelector("link[rel=canonical]")!.GetAttribute("href"));
        Assert.Equal("http://localhost/icons/share.png", page.QuerySelector("meta[property='og:image']")!.GetAttribute("content"));
        Assert.NotEmpty(page.QuerySelector("meta[name=description]")!.GetAttribute("content")!);
        Assert.Equal("/about#main", page.QuerySelector("a.skip")!.GetAttribute("href"));
        Assert.Equal(["HEADER", "MAIN", "FOOTER"], page.QuerySelectorAll("header, main, footer").Select(part => part.TagName));
        Assert.Empty(page.QuerySelectorAll("script, style, [style]"));
        Assert.Contains("http://localhost/about", page.QuerySelector("footer .print-only")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_the_head_of_a_page_names_is_there()
    {
        var page = await ReadAsync("/about");
        foreach (var link in page.QuerySelectorAll("head link[href]:not([rel=canonical])"))
        {
            var address = link.GetAttribute("href")!;
            Assert.StartsWith("/", address, StringComparison.Ordinal);
            Assert.Equal(HttpStatusCode.OK, (await client.GetAsync(address)).StatusCode);
        }

        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync("/icons/share.png")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync("/favicon.ico")).StatusCode);
    }

    private Task<HttpResponseMessage> ChooseAsync(string theme, string back) =>
        client.PostAsync("/theme", new FormUrlEncodedContent([new("theme", theme), new("back", back)]));

    private async Task<IDocument> ReadAsync(string address, string? cookie = null)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, address);
        if (cookie is not null)
            request.Headers.Add("Cookie", cookie);
        return await DocumentAsync(await client.SendAsync(request));
    }

    internal static async Task<IDocument> DocumentAsync(HttpResponseMessage answer) =>
        await BrowsingContext.New().OpenAsync(async response => response.Content(await answer.Content.ReadAsStringAsync()));
}
