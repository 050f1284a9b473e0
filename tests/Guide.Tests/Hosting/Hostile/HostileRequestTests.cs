using System.Globalization;
using Xunit;

namespace Foreshore.Guide.Hosting.Hostile;

/// <summary>
/// Thousands of requests that mean no good, to every address of the route table, by visitors, members, wardens and admins: whatever comes is
/// taken or refused, and never breaks the site. <c>tests/Trials/hostile-requests</c> sends more, and writes down what it sent.
/// </summary>
public class HostileRequestTests(HostileSite site) : IClassFixture<HostileSite>
{
    private static readonly int Count = Number("FORESHORE_HOSTILE_REQUESTS", 5_000);
    private static readonly int Seed = Number("FORESHORE_HOSTILE_SEED", 20261125);

    [Fact]
    public async Task Nothing_that_is_sent_breaks_the_site()
    {
        using var requests = new HostileRequests(site, Seed);
        var answers = await requests.SendAsync(Count);
        if (Environment.GetEnvironmentVariable("FORESHORE_HOSTILE_JOURNAL") is { Length: > 0 } journal)
            await File.WriteAllLinesAsync(journal, answers.Select(Line));

        Assert.Empty(answers.Where(answer => answer.Status >= 500).Select(Line));
        // It is a test of the pages, not of the door: a fair part of what was sent was taken.
        Assert.InRange(answers.Count(answer => answer.Status is >= 200 and < 400), Count / 5, Count);
        Assert.InRange(answers.Count(answer => answer.Status == 0), 0, Count / 50);
        Assert.Empty(site.Log.Errors.Select(line => line.Length > 600 ? line[..600] : line).Take(20));
    }

    private static string Line(HostileAnswer answer) => string.Create(CultureInfo.InvariantCulture,
        $"{answer.Number} {answer.By} {answer.Method} {Short(answer.Address, 300)} {answer.Status} {Short(answer.Sent, 500)}");

    private static string Short(string text, int most) => new([.. text.Take(most).Select(letter => char.IsControl(letter) || char.IsSurrogate(letter) ? '·' : letter)]);

    private static int Number(string variable, int usual) =>
        int.TryParse(Environment.GetEnvironmentVariable(variable), NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : usual;
}
