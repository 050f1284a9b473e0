using System.Globalization;
using Foreshore.Guide.Hosting;
using NodaTime;

namespace Foreshore.Guide.Running;

/// <summary>The first entry of a backup: what is in it, so that a restore can refuse before it unpacks anything.</summary>
/// <param name="Format">How the file is built.</param>
/// <param name="TakenAt">When it was begun.</param>
/// <param name="Postgres">The server's version; the same major one is needed to open it.</param>
/// <param name="Changes">The changes of tables that the data have gone through.</param>
internal sealed record BackupHead(int Format, Instant TakenAt, string Postgres, IReadOnlyList<string> Changes)
{
    public const string Name = "foreshore-backup.json";
    public const int CurrentFormat = 1;

    public int Major => int.Parse(Postgres.Split('.')[0], CultureInfo.InvariantCulture);

    public void RefuseNewer(IEnumerable<string> known)
    {
        if (Format > CurrentFormat)
            throw Newer(string.Create(CultureInfo.InvariantCulture, $"its format is {Format}, this version reads up to {CurrentFormat}"));
        if (Changes.Except(known).ToList() is [.., var unknown])
            throw Newer($"it holds the change {unknown}");
    }

    private static OperatorException Newer(string why) =>
        new($"The backup was made by a newer version of Foreshore ({why}).", "Restore it with that version or a later one. Nothing was changed.");
}

/// <summary>The last entry: every file before it with its length and SHA-256. Where it is missing the backup is cut short.</summary>
internal sealed record BackupSum(long Length, string Sha256)
{
    public const string Name = "sums.json";
}
