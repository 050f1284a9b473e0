using Foreshore.Guide.Demo;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace Foreshore.Guide.Locations;

public sealed class VisibilityTests(DemoGuideSite site) : IClassFixture<DemoGuideSite>
{
    private const string MembersOnly = "cannery-point";
    private const string Sensitive = "skerrin-hollow";
    private static readonly Reader Member = new(Role.Member, Guid.NewGuid());

    [Fact]
    public async Task Visitors_do_not_learn_of_members_places()
    {
        await using var db = site.Open();
        Assert.DoesNotContain(await db.CoastAsync(Reader.Visitor, Parts.None), l => l.Slug == MembersOnly);
        Assert.Null(await db.LocationAsync(MembersOnly, Reader.Visitor));
        Assert.Null(await db.MovedToAsync(Reader.Visitor, MembersOnly));
        Assert.DoesNotContain(await db.CoastAsync(Reader.Visitor, Parts.None, "cannery"), l => l.Slug == MembersOnly);
        Assert.NotNull(await db.LocationAsync(MembersOnly, Member));
        Assert.Contains(await db.CoastAsync(Member, Parts.None, "cannery"), l => l.Slug == MembersOnly);
    }

    [Theory]
    [InlineData(Parts.None)]
    [InlineData(Parts.All)]
    public async Task Everyone_else_gets_a_sensitive_place_blurred_whatever_is_loaded(Parts parts)
    {
        await using var db = site.Open();
        foreach (var reader in new[] { Reader.Visitor, Member })
        {
            Assert.True((await db.LocationAsync(Sensitive, reader, parts))!.IsBlurred);
            Assert.True((await db.CoastAsync(reader, parts)).Single(l => l.Slug == Sensitive).IsBlurred);
        }
        Assert.False((await db.LocationAsync(Sensitive, new Reader(Role.Warden), parts))!.IsBlurred);
    }

    [Fact]
    public async Task Those_who_may_see_it_exactly_do()
    {
        await using var db = site.Open();
        foreach (var reader in new[] { new Reader(Role.Warden), new Reader(Role.Member, ReachDemo.Proposer), new Reader(Role.Member, ReachDemo.Granted) })
        {
            var place = (await db.LocationAsync(Sensitive, reader))!;
            Assert.False(place.IsBlurred);
            Assert.NotEmpty(place.VantagePoints);
        }
    }

    [Fact]
    public async Task A_sensitive_place_is_found_by_its_own_name_but_not_by_words_from_below_it()
    {
        await using var db = site.Open();
        Assert.True(Assert.Single(await db.CoastAsync(Reader.Visitor, Parts.None, "skerrin")).IsBlurred);
        Assert.Empty(await db.CoastAsync(Reader.Visitor, Parts.None, "pink bowl"));
        Assert.Empty(await db.CoastAsync(new Reader(Role.Warden), Parts.None, "pink bowl"));
    }

    [Fact]
    public async Task Addresses_below_a_sensitive_place_tell_a_stranger_nothing()
    {
        await using var db = site.Open();
        Assert.Null(await db.MovedToAsync(Reader.Visitor, Sensitive, "rim-of-the-bowl"));
    }

    [Fact]
    public async Task Any_part_costs_one_command_however_many_places_there_are()
    {
        await using var db = await site.Services.GetRequiredService<IDbContextFactory<GuideDb>>().CreateDbContextAsync();
        site.Commands.Reset();
        await db.CoastAsync(Reader.Visitor, Parts.All);
        Assert.Equal(4, site.Commands.Commands.Count);
    }
}
