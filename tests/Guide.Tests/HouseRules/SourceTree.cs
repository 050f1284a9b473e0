namespace Foreshore.Guide.HouseRules;

/// <summary>The checkout these tests were built from: some rules are about words in files, not about types.</summary>
internal static class SourceTree
{
    public static readonly string Root = FindRoot();

    /// <summary>Written by hand: without build output, generated migrations and vendor copies.</summary>
    public static IEnumerable<string> Files(string folder, params string[] extensions) =>
        Directory.EnumerateFiles(Path.Combine(Root, folder), "*", SearchOption.AllDirectories)
            .Where(file => extensions.Contains(Path.GetExtension(file)))
            .Where(file => !Relative(file).Split('/').Any(part => part is "bin" or "obj" or "lib" or "node_modules" or "__snapshots__"))
            .Order(StringComparer.Ordinal);

    public static string Relative(string file) => Path.GetRelativePath(Root, file).Replace('\\', '/');

    private static string FindRoot()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "Foreshore.slnx")))
                return at.FullName;
        }

        throw new InvalidOperationException("The tests run from their checkout: Foreshore.slnx was not found above them.");
    }
}
