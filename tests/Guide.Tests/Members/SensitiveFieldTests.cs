using System.Text;
using System.Text.RegularExpressions;
using Foreshore.Guide.Support;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace Foreshore.Guide.Members;

/// <summary>
/// The sensitive place of the demo, field by field: every address that can be read is asked for it, and every answer searched for what
/// only those may know who see it exactly.
/// </summary>
public partial class SensitiveFieldTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    private const string Place = "skerrin-hollow";

    /// <summary>Position in each notation, stance, composition, subject, ways, parking, emergency, hazard, as the demo has them.</summary>
    private static readonly string[] Hidden =
    [
        "44.4716", "44.47160", "67.5779", "44.4718", "67.5783", "28.296", "28.30\u2032", "34.67", "Rim of the bowl", "Pink bowl", "The skerry", "Two-bog path", "Duck Road", "second bog", "Gravel pocket", "Lip of the bowl", "Bridge lights",
    ];

    [Theory]
    [InlineData(Role.Visitor)]
    [InlineData(Role.Member)]
    public async Task No_answer_holds_what_is_not_for_everybody(Role role)
    {
        var found =
            from answer in await AskAllAsync(role)
            from word in Hidden
            where answer.Text.Contains(word, StringComparison.Ordinal)
            select $"{answer.Address}: {word}";

        Assert.Empty(found);
    }

    /// <summary>The search above finds what is there: to a warden the same addresses tell most of it.</summary>
    [Fact]
    public async Task A_warden_is_told()
    {
        var all = string.Concat((await AskAllAsync(Role.Warden)).Select(answer => answer.Text));

        foreach (var word in new[] { "44.4716", "Rim of the bowl", "Pink bowl", "Two-bog path", "Duck Road", "second bog", "Gravel pocket", "Lip of the bowl", "Bridge lights" })
            Assert.Contains(word, all, StringComparison.Ordinal);
    }

    private async Task<List<(string Address, string Text)>> AskAllAsync(Role role)
    {
        using var browser = guide.CreateClient(new() { AllowAutoRedirect = false });
        if (role > Role.Visitor)
            await guide.SignInAsync(browser, role);
        List<(string, string)> answers = [];
        var patterns = guide.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(endpoint => endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods.Contains("GET") != false && endpoint.Metadata.GetMetadata<Microsoft.AspNetCore.StaticAssets.StaticAssetDescriptor>() is null)
            .Select(endpoint => "/" + endpoint.RoutePattern.RawText!.TrimStart('/')).Where(pattern => !pattern.StartsWith("/_", StringComparison.Ordinal)).Distinct();
        foreach (var address in patterns.SelectMany(Addresses).Concat(["/?q=bowl", "/?within=5000", $"/contribute/hazard?place={Place}", $"/contribute/near-miss?place={Place}", $"/sketches/{Place}-rim-of-the-bowl.svg", "/contribute/sky?at=44.47,-67.57&zone=America/New_York"]).Distinct())
            answers.Add((address, Encoding.UTF8.GetString(await (await browser.GetAsync(address)).Content.ReadAsByteArrayAsync())));
        return answers;
    }

    /// <summary>With the place's own slugs, and numbers up to those the demo's things have.</summary>
    private static IEnumerable<string> Addresses(string pattern)
    {
        var numbers = pattern.Contains(":int", StringComparison.Ordinal) ? Enumerable.Range(1, 40) : [1];
        foreach (var number in numbers)
        {
            foreach (var kind in pattern.Contains("{kind", StringComparison.OrdinalIgnoreCase) ? Enum.GetValues<Contributions.Matter>().Select(Contributions.ProposalWords.Address).ToArray() : [""])
            {
                yield return Parameter().Replace(pattern, match => match.Groups[1].Value.ToLowerInvariant() switch
                {
                    "slug" or "location" => Place,
                    "stanceslug" or "vantage" => "rim-of-the-bowl",
                    "pictureslug" or "composition" => "pink-bowl",
                    "kind" => kind,
                    "documentname" => "v1",
                    _ => FormattableString.Invariant($"{number}"),
                });
            }
        }
    }

    [GeneratedRegex(@"\{\*{0,2}(\w+)[^}]*\}")]
    private static partial Regex Parameter();
}
