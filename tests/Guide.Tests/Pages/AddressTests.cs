using System.Net;
using Foreshore.Guide.Support;
using Xunit;

namespace Foreshore.Guide.Pages;

/// <summary>Old, wrong and hostile addresses get a clear answer and never a stack trace.</summary>
public class AddressTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    [Theory]
    [InlineData("/coast/nowhere")]
    [InlineData("/coast/halfmoon-light/nowhere")]
    [InlineData("/coast/halfmoon-light/high-edge/nowhere")]
    [InlineData("/coast/nowhere/high-edge/light-and-first-sun")]
    [InlineData("/coast/%F0%9F%8C%8A")]
    [InlineData("/coast/a'%20or%201=1")]
    public async Task A_slug_that_is_not_there_answers_404_in_the_sites_own_words(string address)
    {
        var answer = await guide.Client.GetAsync(address);

        Assert.True(answer.StatusCode is HttpStatusCode.NotFound or HttpStatusCode.BadRequest, $"{answer.StatusCode}");
        var text = await answer.Content.ReadAsStringAsync();
        Assert.DoesNotContain("   at ", text, StringComparison.Ordinal);
        if (answer.StatusCode == HttpStatusCode.NotFound)
            Assert.Contains("There is no page at this address", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_old_slug_answers_301_to_the_current_address_with_all_below_it()
    {
        var answer = await guide.Client.GetAsync($"/coast/{Demo.WesternDemo.OldSlug}");
        Assert.Equal(HttpStatusCode.MovedPermanently, answer.StatusCode);
        Assert.Equal($"/coast/{Demo.WesternDemo.NewSlug}", answer.Headers.Location!.ToString());

        await using var db = guide.Open();
        var place = (await Locations.LocationQueries.LocationAsync(db, Demo.WesternDemo.NewSlug, Members.Reader.Visitor))!;
        var (stance, picture) = (place.VantagePoints[0], place.VantagePoints[0].Compositions[0]);

        var below = await guide.Client.GetAsync($"/coast/{Demo.WesternDemo.OldSlug}/{stance.Slug}/{picture.Slug}?from=here");
        Assert.Equal(HttpStatusCode.MovedPermanently, below.StatusCode);
        Assert.Equal($"/coast/{Demo.WesternDemo.NewSlug}/{stance.Slug}/{picture.Slug}?from=here", below.Headers.Location!.ToString());
    }

    [Theory]
    [InlineData("/?footing=wings")]
    [InlineData("/?light=neon")]
    [InlineData("/?within=NaN")]
    [InlineData("/?within=-3")]
    [InlineData("/?within=1e400")]
    public async Task A_filter_that_cannot_be_read_answers_400_and_says_what_to_do(string address)
    {
        var answer = await guide.Client.GetAsync(address);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var text = await answer.Content.ReadAsStringAsync();
        Assert.Matches("Choose one from the list|Enter kilometres", text);
        Assert.Contains("role=\"alert\"", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("zzzz")]
    [InlineData("%27%20%26%20%7C%20%21%3A%2A")]
    [InlineData("%3Cscript%3Ealert(1)%3C%2Fscript%3E")]
    public async Task A_search_that_meets_nothing_teaches(string words)
    {
        var answer = await guide.Client.GetAsync($"/?q={words}");
        var text = await answer.Content.ReadAsStringAsync();

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains("No place on this coast fits that", text, StringComparison.Ordinal);
        Assert.DoesNotContain("<script>alert", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_search_of_sixty_thousand_letters_is_refused_or_answered_empty()
    {
        var answer = await guide.Client.GetAsync($"/?q={new string('a', 60_000)}");

        Assert.True((int)answer.StatusCode is 200 or (>= 400 and < 500), $"{answer.StatusCode}");
        Assert.DoesNotContain(">Herring Slip</a>", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/?q=herring", 1)]
    [InlineData("/?q=HERR", 1)]
    public async Task A_search_shortens_the_coast(string address, int places)
    {
        var text = await guide.Client.GetStringAsync(address);

        Assert.Equal(places, text.Split("class=\"coast-words\"").Length - 1);
        Assert.Contains("Show the whole coast", text, StringComparison.Ordinal);
        Assert.Contains("The places that fit: list of what the map shows", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_whole_coast_is_introduced_in_the_clubs_words()
    {
        await using var db = guide.Open();
        var introduction = db.ClubSettings.Single().Introduction;

        Assert.NotEmpty(introduction);
        Assert.Contains(WebUtility.HtmlEncode(introduction[..40]), await guide.Client.GetStringAsync("/"), StringComparison.Ordinal);
        Assert.Contains("The whole coast: list of what the map shows", await guide.Client.GetStringAsync("/"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/?footing=anyone")]
    [InlineData("/?light=star-trails")]
    [InlineData("/?parking=yes&overnight=yes")]
    public async Task A_filter_shortens_the_coast_but_leaves_some(string address)
    {
        var whole = (await guide.Client.GetStringAsync("/")).Split("class=\"coast-words\"").Length - 1;
        var some = (await guide.Client.GetStringAsync(address)).Split("class=\"coast-words\"").Length - 1;

        Assert.InRange(some, 1, whole - 1);
    }

    [Fact]
    public async Task Distance_from_home_shortens_the_coast_and_home_stays_out_of_the_page()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/?within=15");
        request.Headers.Add("Cookie", $"{Members.Preferences.CookieName}={new Members.Preferences(new(44.66, -67.19), null).ToCookie()}");
        var answer = await guide.Client.SendAsync(request);
        var text = await answer.Content.ReadAsStringAsync();

        var whole = (await guide.Client.GetStringAsync("/")).Split("class=\"coast-words\"").Length - 1;
        Assert.InRange(text.Split("class=\"coast-words\"").Length - 1, 1, whole - 1);
        Assert.DoesNotContain("44.66~", text, StringComparison.Ordinal);
        Assert.DoesNotMatch("44\\.66[^0-9]", text);
    }

    [Theory]
    [InlineData("/", HttpStatusCode.OK)]
    [InlineData("/coast/halfmoon-light", HttpStatusCode.OK)]
    [InlineData("/coast/halfmoon-light/high-edge", HttpStatusCode.OK)]
    [InlineData("/coast/halfmoon-light/high-edge/light-and-first-sun", HttpStatusCode.OK)]
    [InlineData("/coast/nowhere", HttpStatusCode.NotFound)]
    [InlineData("/coast/" + Demo.WesternDemo.OldSlug, HttpStatusCode.MovedPermanently)]
    public async Task Head_answers_as_get_does_without_a_body(string address, HttpStatusCode expected)
    {
        using var request = new HttpRequestMessage(HttpMethod.Head, address);
        var answer = await guide.Client.SendAsync(request);

        Assert.Equal(expected, answer.StatusCode);
        Assert.Empty(await answer.Content.ReadAsByteArrayAsync());
    }
}
