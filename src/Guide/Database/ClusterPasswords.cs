using System.Security.Cryptography;
using System.Text.Json;

namespace Foreshore.Guide.Database;

/// <summary>Generated once per cluster, kept beside it in a file only we can read, never shown.</summary>
internal sealed record ClusterPasswords(string Admin, string Owner, string App)
{
    public static ClusterPasswords ReadOrMake(string file)
    {
        if (File.Exists(file))
        {
            return JsonSerializer.Deserialize<ClusterPasswords>(File.ReadAllText(file)) ?? throw new EmbeddedClusterException(
                $"The password file {file} is empty.", "Restore it from a backup, or begin anew with --reset.");
        }

        var made = new ClusterPasswords(New(), New(), New());
        var unfinished = file + ".new";
        File.Delete(unfinished);
        WritePrivate(unfinished, JsonSerializer.Serialize(made));
        File.Move(unfinished, file);
        return made;
    }

    public static void WritePrivate(string file, string text)
    {
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        using var stream = new FileStream(file, options);
        using var writer = new StreamWriter(stream);
        writer.Write(text);
    }

    private static string New() => RandomNumberGenerator.GetHexString(48, lowercase: true);
}
