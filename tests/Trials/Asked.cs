using System.Globalization;

namespace Foreshore.Trials;

/// <summary>What was asked for on the line, and the folder it all happens in.</summary>
internal sealed record Asked(string Trial, int Seed, int Writers, int Site, int Database, string Folder, bool Keeps) : IDisposable
{
    public static Asked? Read(string[] line)
    {
        if (line.Length == 0 || line[0].StartsWith('-'))
            return null;
        var options = new Dictionary<string, string>();
        var keeps = false;
        for (var at = 1; at < line.Length; at++)
        {
            if (line[at] == "--keep")
                keeps = true;
            else if (line[at].StartsWith("--", StringComparison.Ordinal) && at + 1 < line.Length)
                options[line[at][2..]] = line[++at];
            else
                return null;
        }

        var folder = options.TryGetValue("folder", out var given) ? Path.GetFullPath(given) : Directory.CreateTempSubdirectory("foreshore-trial-").FullName;
        Directory.CreateDirectory(folder);
        // The embedded server runs under an account without rights where this runs as root.
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(folder, (UnixFileMode)0b111_101_101);
        return new(line[0], Number("seed", 1), Number("writers", 16), Number("site", 20), Number("database", 10), folder, keeps);

        int Number(string name, int usual) => options.TryGetValue(name, out var text) ? int.Parse(text, CultureInfo.InvariantCulture) : usual;
    }

    public string In(string name) => Path.Combine(Folder, name);

    public void Dispose()
    {
        if (!Keeps && Directory.Exists(Folder))
            Directory.Delete(Folder, recursive: true);
    }
}
