using AngleSharp.Dom;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Shell;

public sealed class MastheadTests(EmptyGuide guide) : IClassFixture<EmptyGuide>
{
    [Fact]
    public async Task The_club_signs_every_page_and_a_demo_says_so_first()
    {
        await using (var db = guide.Open())
        {
            db.ClubSettings.Add(new ClubSettings("Tern Bank Camera Club", "Tern Bank").MarkAsDemo());
            await db.SaveChangesAsync();
        }

        // The page of a failed request is as much a page as any: it must not go out before the club's name is read.
        guide.Clock.Advance(Duration.FromMinutes(2));
        var missing = await ShellPagesTests.DocumentAsync(await guide.Client.GetAsync("/nothing-here"));
        Assert.Equal(ClubSettings.DemoBanner, missing.QuerySelector("header > :first-child")!.TextContent);

        guide.Clock.Advance(Duration.FromMinutes(2));
        var page = await ReadAsync();
        Assert.Equal("Tern Bank Camera Club", page.QuerySelector("a.club")!.TextContent);
        Assert.Equal("About this guide – Tern Bank Camera Club", page.Title);
        Assert.Equal(ClubSettings.DemoBanner, page.QuerySelector("header > :first-child")!.TextContent);

        guide.Commands.Reset();
        await ReadAsync();
        Assert.Empty(guide.Commands.Commands);
    }

    private async Task<IDocument> ReadAsync() => await ShellPagesTests.DocumentAsync(await guide.Client.GetAsync("/about"));
}
