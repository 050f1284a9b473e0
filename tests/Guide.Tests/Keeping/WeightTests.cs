using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Foreshore.Guide.Tides;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Keeping;

/// <summary>What values are said to take is what they take, so that a bound in bytes is one.</summary>
public sealed class WeightTests(DemoGuideSite site) : IClassFixture<DemoGuideSite>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Light_and_tide_take_no_more_than_is_reckoned_and_not_much_less()
    {
        _ = site.Client;
        var (light, sky) = (site.Services.GetRequiredService<LightCache>(), site.Services.GetRequiredService<SharedSky>());
        var curves = new TideCurves(Shelf.Empty());
        await using var db = site.Open();
        var wrong = new List<string>();
        var seen = 0;
        foreach (var place in await db.CoastAsync(new Reader(Role.Warden), Parts.All, cancel: Cancel))
            foreach (var stance in place.VantagePoints)
                foreach (var picture in stance.Compositions)
                {
                    var view = (await db.PictureAsync(place.Slug, stance.Slug, picture.Slug, new Reader(Role.Warden), GuideHost.UsualNow, Cancel))!;
                    var use = PictureUse.Of(view.From, view.Picture, curves, GuideHost.UsualNow);
                    var season = await light.SeasonAsync(view.Place, view.Stance, view.Picture, use, HoursOut.Unrestricted, GuideHost.UsualNow, Cancel);
                    var dates = await light.GoodDatesAsync(view.Place, view.Stance, view.Picture, use, Almanac.Light.HoursOut.Unrestricted, GuideHost.UsualNow, Cancel);
                    var today = view.From.Today;
                    var behind = await light.BehindAsync(view.Place, view.Stance, view.Picture, new(today, today.PlusYears(1), SubjectAlignments.UsualToleranceDegrees, WantedBodies.Usual), GuideHost.UsualNow, Cancel);
                    var drawn = PictureLight.Draw(view, dates, sky.For(GuideHost.UsualNow));
                    Check($"season of {picture.Slug}", LightWeights.Of(season), season, 3);
                    Check($"dates of {picture.Slug}", LightWeights.Of(dates), dates, 4);
                    Check($"passages of {picture.Slug}", LightWeights.Of(behind), behind, 4);
                    Check($"drawings of {picture.Slug}", LightWeights.Drawings, drawn, 6);
                    if (view.From.At.Tide is { } tide && curves.Around(tide, GuideHost.UsualNow) is { } curve)
                    {
                        _ = curve.Extremes;
                        Check($"curve of {tide.Station.Id}", curve.Bytes, curve, 1.3);
                    }
                    seen++;
                }

        Assert.InRange(seen, 20, 400);
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));

        void Check(string what, long reckoned, object value, double atMostTimes)
        {
            var held = MemoryHeld.By(value, typeof(Composition), typeof(Skyline), typeof(SkyEphemeris));
            if (held > reckoned * 1.1 || reckoned > held * atMostTimes)
                wrong.Add($"{what}: {reckoned} reckoned, {held} held");
        }
    }

    [Fact]
    public async Task The_coast_takes_what_is_reckoned()
    {
        await using var db = site.Open();
        var places = (await db.CoastAsync(Reader.Visitor, Parts.All, cancel: Cancel)).Select(place => new CoastEntry(place, new LocalDate(2026, 11, 25)).Drawn).ToList();
        var rows = CoastDrawing.Of(places);

        Assert.InRange(CoastRows.Weight(rows), MemoryHeld.By(rows), 2 * MemoryHeld.By(rows));
    }

    [Fact]
    public async Task Spans_that_readers_choose_are_not_kept_and_push_nothing_out()
    {
        var kept = site.Services.GetRequiredService<Kept>();
        Assert.Equal(System.Net.HttpStatusCode.OK, (await site.Client.GetAsync("/weekend", Cancel)).StatusCode);
        var (before, station) = (kept.Bytes, "noaa-8410140");
        for (var day = 1; day <= 40; day++)
        {
            using var answer = await site.Client.GetAsync($"/api/v1/tides/{station}?from=2026-03-{day % 28 + 1:00}T0{day % 10}:00:00Z&to=2026-04-{day % 28 + 1:00}T00:00:00Z&step=60", Cancel);
            Assert.Equal(System.Net.HttpStatusCode.OK, answer.StatusCode);
        }

        Assert.Equal(before, kept.Bytes);
    }

    [Fact]
    public async Task Another_readers_hours_cost_a_table_and_not_the_drawings()
    {
        const string address = "/coast/gannet-stairs/lower-stair/two-stacks";
        var kept = site.Services.GetRequiredService<Kept>();
        await site.Client.GetStringAsync(address, Cancel);
        var before = kept.Bytes;
        foreach (var hours in new[] { "04:00", "05:00" })
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, address);
            request.Headers.Add("Cookie", $"{Preferences.CookieName}=_{hours}~22:00");
            using var answer = await site.Client.SendAsync(request, Cancel);
            Assert.Contains(hours, await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        }

        Assert.InRange(kept.Bytes - before, 2_000, 2 * 100_000);
    }
}
