namespace Foreshore.Almanac.Checks;

public class ChecksTests
{
    public static TheoryData<string> Names => [.. ChecksPage.Checks.Select(Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Quantity_stays_within_its_bound(string name)
    {
        var check = ChecksPage.Checks.Single(check => Name(check) == name);

        Assert.True(check.Outcome.Cases > 0, "The check compared nothing.");
        Assert.True(check.Outcome.Broken.Count == 0, string.Join("\n", check.Outcome.Broken));
    }

    [Fact]
    public void Page_of_checks_tells_what_the_checks_find()
    {
        if (Environment.GetEnvironmentVariable("FORESHORE_WRITE_CHECKS") == "1")
            File.WriteAllText(ChecksPage.FilePath, ChecksPage.Write());

        var faults = ChecksPage.Faults(File.ReadAllText(ChecksPage.FilePath));

        Assert.True(faults.Count == 0, string.Join("\n", faults.Prepend("docs/checks.md is out of date; look why, then run ./test --write-checks.")));
    }

    [Fact]
    public void Every_published_table_is_complete_and_listed()
    {
        var list = File.ReadAllText(Path.Combine(PublishedTable.Folder, "README.md"));
        foreach (var path in Directory.EnumerateFiles(PublishedTable.Folder, "*.csv", SearchOption.AllDirectories))
        {
            var name = Path.GetRelativePath(PublishedTable.Folder, path).Replace('\\', '/');
            var table = PublishedTable.Read(name);
            Assert.All([table.Source, table.Licence, table.Unit, table.Tolerance, table.Why], text => Assert.NotEmpty(text));
            Assert.NotEmpty(table.Rows);
            Assert.Contains(name, list, StringComparison.Ordinal);
        }
    }

    private static string Name(Check check) => $"{check.Quantity} | {check.Source}";
}
