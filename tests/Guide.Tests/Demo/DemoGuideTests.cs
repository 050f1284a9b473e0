using System.Diagnostics;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Testing;
using Xunit;

namespace Foreshore.Guide.Demo;

public sealed class DemoGuideTests(GuideDatabase database) : IClassFixture<GuideDatabase>
{
    private static readonly FakeClock Clock = new(Instant.FromUtc(2026, 11, 25, 12, 0));

    [Fact]
    public async Task Loads_once_into_an_empty_database_and_never_again()
    {
        await using var db = database.Open();
        var watch = Stopwatch.StartNew();
        Assert.True(await DemoGuide.LoadAsync(db, Clock));
        TestContext.Current.TestOutputHelper?.WriteLine($"loaded in {watch.ElapsedMilliseconds} ms");

        await using var again = database.Open();
        Assert.False(await DemoGuide.LoadAsync(again, Clock));
        Assert.Equal(15, await again.Locations.CountAsync());

        var coast = await again.CoastAsync(new Reader(Role.Warden), Parts.All);
        Assert.Equal(DemoGuide.Locations(Clock.GetCurrentInstant().InUtc().Date).Select(l => l.Slug), coast.Select(l => l.Slug));
        Assert.Equal(DemoGuide.Locations(Clock.GetCurrentInstant().InUtc().Date).SelectMany(l => l.VantagePoints.Select(v => v.Slug)), coast.SelectMany(l => l.VantagePoints.Select(v => v.Slug)));
        Assert.Equal(("pigeon-neck", null, null), await again.MovedToAsync(Reader.Visitor, "pidgeon-neck"));

        var settings = await again.ClubSettings.SingleAsync();
        Assert.Equal("Demo: invented access and limits at real coordinates. Do not go by it.", settings.Banner);
    }
}
