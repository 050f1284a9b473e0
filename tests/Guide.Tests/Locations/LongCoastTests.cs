using AngleSharp.Html.Parser;
using Foreshore.Almanac.Earth;
using Foreshore.Guide.Support;
using Xunit;

namespace Foreshore.Guide.Locations;

/// <summary>A coast longer than a page comes in stretches, in order and without a gap.</summary>
public sealed class LongCoastTests(EmptyGuide site) : IClassFixture<EmptyGuide>
{
    private const int Places = 2 * CoastView.MostPlaces + 3;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Its_stretches_follow_each_other_and_keep_the_filters()
    {
        await using (var db = site.Open())
        {
            for (var i = 0; i < Places; i++)
                db.Add(new Location($"cove-{i:000}", $"Cove {i:000}", new Position(44 + i * 0.01, -67), "America/New_York", "US", null, i).Describe("A cove.", "A cove among others."));
            await db.SaveChangesAsync(Cancel);
        }

        // The masthead is read once a minute, and is not the page's.
        await site.Client.GetStringAsync("/about", Cancel);
        foreach (var filter in new[] { "", "q=cove", "within=20000" })
        {
            var (address, seen, parts) = ($"/?{filter}", new List<string>(), 0);
            while (true)
            {
                site.Commands.Reset();
                var page = new HtmlParser().ParseDocument(await site.Client.GetStringAsync(address, Cancel));
                Assert.InRange(site.Commands.Commands.Count, 1, 5);
                Assert.Equal(parts == 0, page.QuerySelector("a[rel=prev]") is null);
                seen.AddRange(page.QuerySelectorAll(".coast h2").Select(name => name.TextContent));
                parts++;
                if (page.QuerySelector("a[rel=next]")?.GetAttribute("href") is not { } next)
                    break;
                Assert.Contains(filter, next, StringComparison.Ordinal);
                address = next;
            }

            Assert.Equal(3, parts);
            Assert.Equal(Enumerable.Range(0, Places).Select(i => $"Cove {i:000}"), seen);
        }

        foreach (var odd in new[] { "0", "-1", "x", "99999999999" })
            Assert.Contains("Cove 000", await site.Client.GetStringAsync($"/?part={odd}", Cancel), StringComparison.Ordinal);
        Assert.DoesNotContain("Cove 0", await site.Client.GetStringAsync("/?part=900", Cancel), StringComparison.Ordinal);
    }
}
