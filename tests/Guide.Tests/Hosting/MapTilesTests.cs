using Microsoft.Extensions.Configuration;
using Xunit;

namespace Foreshore.Guide.Hosting;

public class MapTilesTests
{
    [Theory]
    [InlineData("https://tile.example.org/{z}/{x}/{y}.png", "https://tile.example.org")]
    [InlineData("https://{s}.tile.example.org/{z}/{x}/{y}.png?key=1", "https://*.tile.example.org")]
    [InlineData("http://localhost:8080/{z}/{x}/{y}.png", "http://localhost:8080")]
    [InlineData("", null)]
    public void The_policy_names_the_tile_host(string template, string? host) => Assert.Equal(host, From(template).Host);

    [Theory]
    [InlineData("https://tile.example.org/map.png")]
    [InlineData("tile.example.org/{z}/{x}/{y}.png")]
    [InlineData("javascript:{z}{x}{y}")]
    [InlineData("https://a.example; script-src *//{z}/{x}/{y}")]
    public void What_is_no_tile_address_is_refused_in_words(string template)
    {
        var refusal = Assert.Throws<SettingException>(() => From(template));

        Assert.Contains("Map:TileUrl", refusal.What, StringComparison.Ordinal);
        Assert.Contains("{z}", refusal.Todo, StringComparison.Ordinal);
    }

    private static MapTiles From(string template) => MapTiles.From(new ConfigurationBuilder()
        .AddInMemoryCollection([new("Map:TileUrl", template)]).Build());
}
