using System.Security.Cryptography;
using Foreshore.Guide.Hosting;

namespace Foreshore.Guide.Database;

/// <summary>
/// The site's own key, in a file that is not in the database: who has a copy of the database alone has nothing that is sealed with it. Made at
/// the first start, readable by the site's account alone. A backup of the database needs it beside, in another place.
/// </summary>
public sealed class SiteKey(byte[] key)
{
    private const string Setting = "Site:KeyFile";
    private const string FileName = "site.key";
    private const int Bytes = 32;

    /// <summary>A key for one purpose: what is found out of one opens no other (RFC 5869).</summary>
    public byte[] For(string purpose) => HKDF.DeriveKey(HashAlgorithmName.SHA256, key, Bytes, info: System.Text.Encoding.UTF8.GetBytes(purpose));

    /// <param name="configuration">May name the file.</param>
    /// <param name="data">The embedded database's folder; null with a server of one's own.</param>
    public static SiteKey From(IConfiguration configuration, string? data)
    {
        var file = configuration["Site:KeyFile"] is { Length: > 0 } given ? Path.GetFullPath(given) : Path.Combine(data ?? HomeOfState(), FileName);
        try
        {
            if (!File.Exists(file))
                Make(file);
            var kept = new byte[Bytes];
            return Convert.TryFromBase64String(File.ReadAllText(file).Trim(), kept, out var length) && length == Bytes
                ? new SiteKey(kept)
                : throw new SettingException(Setting, $"{file} holds no key", "Put the file of the last backup back. Where there is none, take the file away: a new one is made, and whoever has an authenticator signs in with a recovery code.");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new SettingException(Setting, $"{file} cannot be read or made ({fault.Message})", "Give a file in a folder that the site's account may write to, like Site:KeyFile=/var/lib/foreshore/site.key.");
        }
    }

    /// <summary>Whole or not at all, and never over one that is there: two starts at once go by the same.</summary>
    private static void Make(string file)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        var beside = $"{file}.{Guid.NewGuid():N}";
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        using (var made = new FileStream(beside, options))
        {
            made.Write(System.Text.Encoding.ASCII.GetBytes(Convert.ToBase64String(RandomNumberGenerator.GetBytes(Bytes)) + "\n"));
            made.Flush(flushToDisk: true);
        }

        try
        {
            File.Move(beside, file, overwrite: false);
        }
        catch (IOException) when (File.Exists(file))
        {
            // The other start was first.
        }
        finally
        {
            File.Delete(beside);
        }
    }

    private static string HomeOfState() => Environment.IsPrivilegedProcess ? "/var/lib/foreshore"
        : Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData), "foreshore");
}
