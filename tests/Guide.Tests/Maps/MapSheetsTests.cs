using System.Globalization;
using System.Text.Json;
using Bunit;
using Foreshore.Almanac.Earth;
using Foreshore.Guide.Demo;
using Foreshore.Guide.Hosting;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.Extensions.DependencyInjection;
using NodaTime.Testing;
using Xunit;

namespace Foreshore.Guide.Maps;

public sealed class MapSheetsTests : BunitContext
{
    private static readonly FakeClock Clock = new(GuideHost.UsualNow);
    private static readonly IReadOnlyList<Location> Coast = DemoGuide.Locations(Clock.GetCurrentInstant().InUtc().Date);

    [Fact]
    public void The_list_names_exactly_what_the_map_draws()
    {
        Services.AddSingleton(new MapTiles(null, null, null));
        foreach (var sheet in Coast.Select(place => MapSheets.Of(place, Clock)).Append(MapSheets.OfCoast(Coast, Clock)))
        {
            var page = Render<CoastMap>(p => p.Add(m => m.Sheet, sheet));
            var drawn = JsonDocument.Parse(page.Find("script[type='application/json']").TextContent).RootElement.GetProperty("items")
                .EnumerateArray().Select(i => i.GetProperty("id").GetString()).ToList();
            var listed = page.FindAll("[data-item]").Select(li => li.GetAttribute("data-item")).ToList();
            Assert.Equal(listed, drawn);
            Assert.Equal(listed.Count, listed.Distinct().Count());
            Assert.All(page.FindAll("[data-item]"), li => Assert.False(string.IsNullOrWhiteSpace(li.QuerySelector("p")!.TextContent)));
        }
    }

    [Fact]
    public void A_sensitive_place_is_a_square_and_nothing_else()
    {
        var exact = Coast.Single(l => l.Visibility == Visibility.Sensitive);
        var seen = Blur.For(exact, Reader.Visitor);
        foreach (var sheet in new[] { MapSheets.Of(seen, Clock), MapSheets.OfCoast([seen], Clock) })
        {
            Assert.IsType<MapCell>(Assert.Single(sheet.Items));
            var json = sheet.ToJson();
            foreach (var position in exact.VantagePoints.Select(v => v.Position).Append(exact.Position))
            {
                Assert.DoesNotContain(position.LatitudeDegrees.ToString("0.0000", CultureInfo.InvariantCulture), json, StringComparison.Ordinal);
                Assert.DoesNotContain(position.LongitudeDegrees.ToString("0.0000", CultureInfo.InvariantCulture), json, StringComparison.Ordinal);
            }
            // The view is laid round the cell's centre, not round the place.
            var view = sheet.View!;
            Assert.Equal(seen.LatitudeDegrees, (view.South + view.North) / 2, 6);
            Assert.Equal(seen.LongitudeDegrees, (view.West + view.East) / 2, 6);
            Assert.InRange(exact.LatitudeDegrees, view.South, view.North);
        }
    }

    [Fact]
    public void Closures_and_severe_notes_stand_on_the_map_in_words()
    {
        var marks = Coast.SelectMany(place => MapSheets.Of(place, Clock).Items).OfType<MapMark>().ToList();
        Assert.All(marks.Where(m => m.Kind == MapMarkKind.Hazard), m => Assert.NotNull(m.Word));
        Assert.All(marks.Where(m => m.IsBarred), m => Assert.StartsWith("Closed now.", m.Words, StringComparison.Ordinal));
        Assert.Contains(marks, m => m.Kind == MapMarkKind.Hazard && m.Word == "severe");
        Assert.Contains(marks, m => m is { Kind: MapMarkKind.Stance, Wedges.Count: > 0 });
    }

    [Fact]
    public void The_whole_coast_is_small_on_the_wire() =>
        Assert.InRange(MapSheets.OfCoast(Coast, Clock).ToJson().Length, 100, 2500);

    [Fact]
    public void A_view_across_the_date_line_goes_the_shorter_way()
    {
        var view = new MapSheet("Two", [new("All",
        [
            new MapMark("a", MapMarkKind.Place, "A", null, "a", new Position(-17, 179), []),
            new MapMark("b", MapMarkKind.Place, "B", null, "b", new Position(-17, -179), []),
        ])]).View!;
        Assert.InRange(view.WidthDegrees, 2, 3);
        Assert.Equal(180, (view.West + view.East) / 2, 6);
    }

    [Fact]
    public void A_sheet_without_marks_has_no_view_and_draws_nothing()
    {
        Assert.Null(new MapSheet("None", []).View);
        Assert.Equal("""{"items":[]}""", new MapSheet("None", []).ToJson());
    }

    [Fact]
    public void Words_cannot_leave_the_script_element()
    {
        var sheet = new MapSheet("</script>", [new("All", [new MapMark("</script><b>", MapMarkKind.Hazard, "A", null, "a", new Position(0, 0), [], "</script>")])]);
        Assert.DoesNotContain("</", sheet.ToJson(), StringComparison.Ordinal);
    }
}
