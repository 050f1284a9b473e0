using System.Xml.Linq;
using Bunit;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Outlooks;
using NodaTime;
using Snapshooter.Xunit3;
using Xunit;

namespace Foreshore.Guide.Compositions;

/// <summary>What every drawing owes the page: words for those who can't see it, nothing the content policy stops, few bytes.</summary>
public sealed class DrawnMarkupTests : BunitContext
{
    private static readonly SubjectSeen Tower = new(Bearing.FromDegrees(103), 620, -0.2, 3.6, 3.8);

    private string Ruler => Render<HorizonRuler>(p => p.Add(c => c.Drawing, HorizonDrawing.Of(
        Scenes.Ledge, Scenes.WideToSea, (Bearing.FromDegrees(88), Bearing.FromDegrees(168)), new(2026, 10), Scenes.Zone, Scenes.Sun))).Markup;

    private string View => Render<FrameView>(p => p.Add(c => c.Zone, Scenes.Zone).Add(c => c.SubjectName, "the light").Add(c => c.Drawing,
        FrameDrawing.Of(Scenes.Ledge, Scenes.WideToSea, Tower, Scenes.Day(Scenes.Today), Scenes.Day(Scenes.Best), Scenes.Sun,
            FrameNights.Of(new Scene(Scenes.Ledge, Scenes.WideToSea, [WantedLight.GalaxyBand]), Scenes.Today, null, Scenes.Zone, Scenes.Sky)))).Markup;

    private string Season => Render<SeasonChart>(p => p.Add(c => c.Drawing, SeasonDrawing.Of(SeasonTables.For(
        new Scene(Scenes.Ledge, Scenes.WideToSea, [WantedLight.SunInFrame]), Scenes.Zone, new(2026, 10), HoursOut.Unrestricted, Scenes.Sky)))).Markup;

    private string Path => Render<SunPathChart>(p => p.Add(c => c.Zone, Scenes.Zone).Add(c => c.Drawing,
        SunPathDrawing.Of(Scenes.Ledge, Scenes.WideToSea, Scenes.Today, Scenes.Zone, Scenes.Sun))).Markup;

    private string Strip => Render<LightStrip>(p => p.Add(c => c.Zone, Scenes.Zone).Add(c => c.Drawing, LightDrawing.Of(
        new(Instant.FromUtc(2027, 2, 14, 9, 30), Instant.FromUtc(2027, 2, 14, 13, 30)), Scenes.Ledge,
        [new(Instant.FromUtc(2027, 2, 14, 10, 37), Instant.FromUtc(2027, 2, 14, 11, 48))], Scenes.Zone, Scenes.Sun))).Markup;

    private string Coast => Render<CoastStrip>(p => p.Add(c => c.Row, CoastDrawing.Of([new(new(44.815, -66.951)), new(new(44.657, -67.205))])[0])).Markup;

    private string Sketch => Render<SketchMap>(p => p.Add(c => c.Drawing, SketchDrawing.Of(
        [new(SketchMarkKind.Vantage, "1", "South ledge", Scenes.Ledge.Position, [new(Bearing.FromDegrees(112), 74)])], []))).Markup;

    [Fact]
    public void No_drawing_carries_a_style_a_script_or_a_bad_number() => Assert.All([Ruler, View, Season, Path, Strip, Coast, Sketch], markup =>
    {
        Assert.DoesNotContain("style", markup);
        Assert.DoesNotContain("script", markup);
        Assert.DoesNotContain("NaN", markup);
        Assert.DoesNotContain("∞", markup);
        XDocument.Parse(markup.Replace("<br>", "<br/>", StringComparison.Ordinal)); // well formed, every tag closed
    });

    [Fact]
    public void Every_drawing_has_a_name_a_description_and_a_table() => Assert.All([Ruler, View, Season, Path, Sketch], markup =>
    {
        var figure = XDocument.Parse(markup);
        var drawing = figure.Descendants("svg").First();
        Assert.Equal("img", drawing.Attribute("role")?.Value);
        Assert.NotEmpty(drawing.Element("title")!.Value);
        Assert.NotEmpty(drawing.Element("desc")!.Value);
        Assert.NotEmpty(figure.Descendants("details").Single().Descendants("td"));
    });

    [Fact]
    public void The_suns_way_in_the_frame_bears_no_mark_and_no_letter()
    {
        var picture = XDocument.Parse(View).Descendants("svg").First().Element("svg")!;
        Assert.Empty(picture.Descendants("text").Concat(picture.Descendants("circle")));
    }

    [Fact]
    public void A_compositions_drawings_leave_most_of_its_page_to_words()
    {
        using var packed = new MemoryStream();
        using (var brotli = new System.IO.Compression.BrotliStream(packed, System.IO.Compression.CompressionLevel.Optimal, leaveOpen: true))
            brotli.Write(System.Text.Encoding.UTF8.GetBytes(Ruler + View + Season + Path));
        Assert.InRange(packed.Length, 1000, 10_000);
    }

    [Fact]
    public void The_ruler_is_drawn_as_it_was() => Snapshot.Match(Ruler);

    [Fact]
    public void The_frame_is_drawn_as_it_was() => Snapshot.Match(View);
}
