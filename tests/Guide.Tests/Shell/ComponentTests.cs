using Bunit;
using Foreshore.Almanac.Earth;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Shell;

public sealed class ComponentTests : BunitContext
{
    [Theory]
    [InlineData("suits", "suits", "verdict-suits")]
    [InlineData("borderline", "borderline", "verdict-borderline")]
    [InlineData("not judged", "[not judged]", "verdict-not-judged")]
    [InlineData("does not suit", "does not suit", "verdict-does-not-suit")]
    [InlineData("keep off", "keep off", "verdict-keep-off")]
    public void A_verdict_is_its_word_before_anything_else(string word, string printed, string cssClass)
    {
        var verdict = Render<VerdictWord>(p => p.Add(v => v.Word, word)).Find(".verdict");

        Assert.Equal(printed, verdict.TextContent);
        Assert.Contains(cssClass, verdict.ClassList);
    }

    [Fact]
    public void Keep_off_carries_the_barred_square_and_hides_it_from_screen_readers() =>
        Assert.Equal("true", Render<VerdictWord>(p => p.Add(v => v.Word, "keep off")).Find("svg").GetAttribute("aria-hidden"));

    [Fact]
    public void A_word_that_is_no_verdict_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Render<VerdictWord>(p => p.Add(v => v.Word, "fine")));

    [Fact]
    public void Cautions_give_the_number_the_warnings_and_who_overrides_the_page()
    {
        var panel = Render<CautionsPanel>(p => p.Add(c => c.Cautions,
            new Cautions(["Watch for 30 minutes first."], "911", "the coast guard", "Weather office", "https://example.org/warnings"))).Find("aside");

        Assert.Contains("Watch for 30 minutes first.", panel.TextContent, StringComparison.Ordinal);
        Assert.Equal("911", panel.QuerySelector("strong")!.TextContent);
        Assert.Equal("https://example.org/warnings", panel.QuerySelector("a")!.GetAttribute("href"));
        Assert.Contains("not for navigation", panel.TextContent, StringComparison.Ordinal);
        Assert.NotNull(panel.QuerySelector($"#{panel.GetAttribute("aria-labelledby")}"));
    }

    [Fact]
    public void A_figure_brings_its_numbers_as_a_table_that_can_be_reached_by_keyboard()
    {
        var figure = Render<FigureWithTable>(p => p
            .Add(f => f.Drawing, "<svg role='img'></svg>").Add(f => f.Table, "<table></table>")
            .Add(f => f.TableTitle, "Season table in numbers").Add(f => f.Caption, "Ink is the share of days.")).Find("figure");

        Assert.Equal("Season table in numbers", figure.QuerySelector("details > summary")!.TextContent);
        var region = figure.QuerySelector("details [role=region]")!;
        Assert.Equal(("0", "Season table in numbers"), (region.GetAttribute("tabindex"), region.GetAttribute("aria-label")));
        Assert.NotNull(region.QuerySelector("table"));
    }

    /// <summary>Eastern time is UTC−5 in winter and UTC−4 in summer; the Chatham Islands are at UTC+13:45 in summer (IANA tzdata).</summary>
    [Theory]
    [InlineData("America/New_York", 11, "05:42 EST", "2026-11-28T05:42:10-05:00")]
    [InlineData("America/New_York", 7, "06:42 EDT", "2026-07-28T06:42:10-04:00")]
    [InlineData("Pacific/Chatham", 11, "00:27 UTC+13:45", "2026-11-29T00:27:10+13:45")]
    public void A_time_is_the_places_own_with_its_zone(string zone, int month, string printed, string machine)
    {
        var time = Render<SiteTime>(p => p
            .Add(t => t.At, Instant.FromUtc(2026, month, 28, 10, 42, 10))
            .Add(t => t.Zone, DateTimeZoneProviders.Tzdb[zone])).Find("time");

        Assert.Equal(printed, time.TextContent);
        Assert.Equal(machine, time.GetAttribute("datetime"));
    }

    [Fact]
    public void A_time_with_its_day_names_the_month() =>
        Assert.Equal("Sat 28 Nov 05:42", Render<SiteTime>(p => p
            .Add(t => t.At, Instant.FromUtc(2026, 11, 28, 10, 42)).Add(t => t.Zone, DateTimeZoneProviders.Tzdb["America/New_York"])
            .Add(t => t.WithDay, true).Add(t => t.WithZone, false)).Find("time").TextContent);

    [Fact]
    public void The_error_summary_takes_the_focus_and_links_to_each_field()
    {
        var summary = Render<ErrorSummary>(p => p.Add(s => s.Faults,
            [new FieldFault("lat", "Enter a latitude between -90 and 90, like 44.65.")])).Find(".error-summary");

        Assert.Equal("There is a problem", summary.QuerySelector("h2")!.TextContent);
        Assert.True(summary.HasAttribute("autofocus"));
        Assert.Equal("/#lat", summary.QuerySelector("a")!.GetAttribute("href"));
    }

    [Fact]
    public void Without_faults_there_is_no_error_summary() =>
        Assert.Equal("", Render<ErrorSummary>(p => p.Add(s => s.Faults, [])).Markup.Trim());

    [Fact]
    public void A_field_prints_label_hint_and_fault_before_its_control()
    {
        var field = Render<Field>(p => p
            .Add(f => f.Label, "Latitude").Add(f => f.For, "lat").Add(f => f.Hint, "In degrees, south negative.")
            .Add(f => f.Fault, "Enter a latitude.").AddChildContent("<input id='lat'>")).Find(".field");

        Assert.Equal(["LABEL", "P", "P", "INPUT"], field.Children.Select(child => child.TagName));
        Assert.Equal("lat", field.QuerySelector("label")!.GetAttribute("for"));
        Assert.Equal("Error: Enter a latitude.", field.QuerySelector("#lat-fault")!.TextContent);
        Assert.Equal("lat-hint lat-fault", Field.DescribedBy("lat", "hint", "fault"));
        Assert.Null(Field.DescribedBy("lat", null, null));
    }

    [Theory]
    [InlineData(null, 1)]
    [InlineData(0, 1)]
    [InlineData(2, 1)]
    [InlineData(3, 1)]
    [InlineData(4, 2)]
    public void A_hazard_mark_always_stands_beside_words(int? severity, int paths)
    {
        var mark = Render<HazardMark>(p => p.Add(h => h.Severity, severity).AddChildContent("way cut off from half flood")).Find(".hazard");

        Assert.Equal("way cut off from half flood", mark.TextContent.Trim());
        Assert.Equal(paths, mark.QuerySelectorAll("path").Length);
        Assert.Equal(severity == 4, mark.ClassList.Contains("hazard-severe"));
    }

    [Fact]
    public void A_position_is_spaced_to_be_read_out()
    {
        var position = Render<Coordinates>(p => p.Add(c => c.Position, new Position(44.657, -67.2014))).Find(".coordinates");

        Assert.Equal(["44° 39.42′ N", "067° 12.08′ W", "44.65700, −67.20140"], position.QuerySelectorAll("span").Select(half => half.TextContent));
    }

    [Fact]
    public void An_empty_place_teaches_what_goes_there()
    {
        var empty = Render<EmptyState>(p => p
            .Add(e => e.Title, "No results yet").AddChildContent("A member who went can post what was seen.")
            .Add(e => e.ActionAddress, "/").Add(e => e.ActionWords, "Back to the guide")).Find(".empty");

        Assert.Contains("A member who went", empty.TextContent, StringComparison.Ordinal);
        Assert.Equal("/", empty.QuerySelector("a")!.GetAttribute("href"));
    }

    [Fact]
    public void Crumbs_begin_at_the_guide_and_leave_out_the_page_itself() =>
        Assert.Equal(["Guide", "Halfmoon Light"], Render<Crumbs>(p => p.Add(c => c.Above, [("Halfmoon Light", "/coast/halfmoon-light")]))
            .FindAll("a").Select(link => link.TextContent));

    [Fact]
    public void The_demo_line_stands_only_over_a_demo()
    {
        Assert.Equal("", Render<DemoLine>(p => p.AddCascadingValue(new Masthead("A club", null))).Markup.Trim());
        Assert.Equal("Demo: do not go by it.", Render<DemoLine>(p => p.AddCascadingValue(new Masthead("A club", "Demo: do not go by it."))).Find("p").TextContent);
    }
}
