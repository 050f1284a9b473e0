using Microsoft.Playwright;
using Xunit;

namespace Foreshore.Guide.Browser.Readme;

/// <summary>
/// README's two walk-throughs, word for word: the sentence of a step is the key under which its action and what must be seen
/// are found, so that neither a changed sentence nor a changed page goes unnoticed.
/// </summary>
public sealed class WalkThroughTests(BrowserSite site) : IClassFixture<BrowserSite>
{
    private const int MostSteps = 8;

    private static readonly Dictionary<string, IReadOnlyDictionary<string, Func<IPage, Task>>> Known = new()
    {
        [Browse.Name] = Browse.Steps,
        [CheckTheWeekend.Name] = CheckTheWeekend.Steps,
    };

    [Theory]
    [InlineData(Browse.Name)]
    [InlineData(CheckTheWeekend.Name)]
    public void A_walk_through_is_short_and_every_sentence_of_it_is_known(string name)
    {
        var walk = WalkThrough.Named(name);

        Assert.InRange(walk.Steps.Count, 2, MostSteps);
        Assert.Equal(Known[name].Keys, walk.Steps);
    }

    [Theory]
    [InlineData(Browse.Name, 390, true)]
    [InlineData(Browse.Name, 1280, true)]
    [InlineData(Browse.Name, 390, false)]
    [InlineData(CheckTheWeekend.Name, 390, true)]
    [InlineData(CheckTheWeekend.Name, 1280, true)]
    [InlineData(CheckTheWeekend.Name, 1280, false)]
    public async Task It_can_be_walked_as_it_is_written(string name, int width, bool javaScript)
    {
        await using var visit = await site.VisitAsync(width == Device.Phone.Width ? Device.Phone : Device.Desktop, javaScript);
        await WalkThrough.Named(name).WalkAsync(visit.Page, Known[name]);

        Assert.Empty(visit.Complaints);
        Assert.Empty(visit.Elsewhere);
    }
}
