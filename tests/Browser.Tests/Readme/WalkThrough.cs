using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Xunit;

namespace Foreshore.Guide.Browser.Readme;

/// <summary>A numbered walk-through of README.md, as a newcomer reads it.</summary>
public sealed partial record WalkThrough(string Name, IReadOnlyList<string> Steps)
{
    public static readonly string Root = FindRoot();

    public static string Readme => File.ReadAllText(Path.Combine(Root, "README.md"));

    public static WalkThrough Named(string name)
    {
        var text = Readme;
        var heading = text.IndexOf($"\n### {name}\n", StringComparison.Ordinal);
        if (heading < 0)
            throw new InvalidOperationException($"README.md has no walk-through \"{name}\".");
        var lines = text[(heading + 1)..].Split('\n').Skip(1).TakeWhile(line => !line.StartsWith('#'));
        List<string> steps = [];
        foreach (var line in lines.Where(line => line.Trim().Length > 0))
        {
            if (Numbered().Match(line) is { Success: true } step)
                steps.Add(step.Groups[1].Value.Trim());
            else if (steps.Count > 0)
                steps[^1] += $" {line.Trim()}";
        }

        return new(name, steps);
    }

    /// <summary>Takes each step as it is written; a sentence that nothing is known of, or that does not do what it says, fails by its number.</summary>
    public async Task WalkAsync(IPage page, IReadOnlyDictionary<string, Func<IPage, Task>> known)
    {
        foreach (var (step, number) in Steps.Select((step, i) => (step, i + 1)))
        {
            Assert.True(known.TryGetValue(step, out var take), $"\"{Name}\", step {number}: nothing is known of \"{step}\".");
            try
            {
                await take(page);
            }
            catch (Exception fault) when (fault is PlaywrightException or TimeoutException or Xunit.Sdk.XunitException)
            {
                Assert.Fail($"\"{Name}\", step {number}, \"{step}\", at {page.Url}: {fault.Message}");
            }
        }
    }

    private static string FindRoot()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "Foreshore.slnx")))
                return at.FullName;
        }

        throw new InvalidOperationException("The tests run from their checkout: Foreshore.slnx was not found above them.");
    }

    [GeneratedRegex(@"^\d+\. (.+)$")]
    private static partial Regex Numbered();
}
