using System.Text.RegularExpressions;
using Foreshore.Guide.Contributions;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Members;
using Foreshore.Guide.Photos;
using Xunit;

namespace Foreshore.Guide.HouseRules;

/// <summary>docs/limits.md and docs/logs.md say what the code holds (OWASP ASVS 5.0, 2.1.1 to 2.1.3, 16.1.1).</summary>
public sealed partial class LimitsPageTests
{
    private static readonly string Limits = File.ReadAllText(Path.Combine(SourceTree.Root, "docs/limits.md"));

    public static TheoryData<string, string> Rows => new()
    {
        { "reports of hazards", $"{Warding.MostReportsADay} a day" },
        { "near misses", $"{NearMissTally.MostADay} a day" },
        { "drafts and open proposals", $"{Contributing.MostOpen}" },
        { "letters of a proposal", $"{Proposal.MostLetters:#,0}" },
        { "photos", $"{Album.MostAnHour} an hour, {Album.MostOfMember} kept" },
        { "photos of a proposal", $"{Album.MostOfProposal}" },
        { "characters of a password", $"{Passwords.Shortest} to {Passwords.Longest}" },
    };

    [Theory]
    [MemberData(nameof(Rows))]
    public void Each_limit_is_the_code_s(string what, string limit) => Assert.Contains($"| {what} | {limit} |", Limits, StringComparison.Ordinal);

    [Fact]
    public void Every_kind_of_field_has_its_rule() =>
        Assert.Empty(Enum.GetNames<FieldKind>().Except(Kinds().Matches(Limits).SelectMany(row => row.Groups[1].Value.Split(", "))));

    [Fact]
    public void Every_act_is_in_the_list_of_what_is_logged()
    {
        var logs = File.ReadAllText(Path.Combine(SourceTree.Root, "docs/logs.md"));
        Assert.Equal(Enum.GetNames<Act>().Order(), Names().Match(logs).Groups[1].Value.Split([',', '.', ' ', '\n'], StringSplitOptions.RemoveEmptyEntries).Order());
    }

    [GeneratedRegex(@"^\| ([A-Z][A-Za-z, ]+) \| ", RegexOptions.Multiline)]
    private static partial Regex Kinds();

    [GeneratedRegex(@"^Acts: ([^.]*)\.", RegexOptions.Multiline)]
    private static partial Regex Names();
}
