using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Foreshore.Guide.Locations;

public sealed class SearchTests(DemoGuideSite site) : IClassFixture<DemoGuideSite>
{
    [Theory]
    [InlineData("widow's", "widows-table")]
    [InlineData("WIDOWS tab", "widows-table")]
    [InlineData("kiln arch", "sorrel-holm")]
    [InlineData("sardine", "herring-slip")]
    [InlineData("hiss", "shingle-howe")]
    public async Task Places_are_found_by_anything_named_in_them(string words, string slug)
    {
        await using var db = site.Open();
        Assert.Equal(slug, Assert.Single(await db.CoastAsync(Reader.Visitor, Parts.None, words)).Slug);
    }

    [Theory]
    [InlineData("")]
    [InlineData("'")]
    [InlineData("\\")]
    [InlineData("a & !b | (c <-> d):*")]
    [InlineData("'; DROP TABLE locations; --")]
    [InlineData("\0")]
    [InlineData("\ud800")]
    [InlineData("％ ＇ ‘ ’")]
    public async Task No_query_breaks_the_search(string words)
    {
        await using var db = site.Open();
        Assert.InRange((await db.CoastAsync(Reader.Visitor, Parts.None, words)).Count, 0, 14);
    }

    [Fact]
    public async Task A_megabyte_finds_nothing()
    {
        await using var db = site.Open();
        Assert.Empty(await db.CoastAsync(Reader.Visitor, Parts.None, new string('a', 1 << 20)));
    }

    [Fact]
    public async Task A_composition_added_to_a_vantage_point_alone_is_found_and_hides_nothing_else()
    {
        await using (var db = site.Open())
        {
            var bench = await db.VantagePoints.SingleAsync(v => v.Slug == "hill-bench");
            bench.Compose(new Composition("zeppelin", "Zeppelin over the roofs", "Seen once.", 90,
                new Lens(50, Sensor.FullFrame, Orientation.Landscape), WantedLight.GoldenLight));
            await db.SaveChangesAsync();
        }

        await using var again = site.Open();
        Assert.Equal("herring-slip", Assert.Single(await again.CoastAsync(Reader.Visitor, Parts.None, "zeppelin")).Slug);
        Assert.Equal("herring-slip", Assert.Single(await again.CoastAsync(Reader.Visitor, Parts.None, "sardine")).Slug);
    }
}
