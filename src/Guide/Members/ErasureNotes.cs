using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Guide.Members;

/// <summary>
/// Who was erased and when, by number alone, kept beside the database and beside its backups: a backup from before still knows them,
/// and what is restored from it must forget them again. Folders without room or no longer there are caught up with at the next backup.
/// </summary>
public sealed class ErasureNotes(string? data)
{
    public const string FileName = "erasures.txt";
    private const string Folders = "backup-folders.txt";

    /// <summary>A site whose database is a server of one's own keeps none.</summary>
    public static readonly ErasureNotes Nowhere = new(null);

    private readonly Lock writing = new();

    public void Add(Guid member, Instant at)
    {
        if (data is null)
            return;
        lock (writing)
        {
            foreach (var folder in KnownFolders().Prepend(data).Where(Directory.Exists))
            {
                try
                {
                    Append(Path.Combine(folder, FileName), [(member, at)]);
                }
                catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
                {
                    // The account is erased all the same; the log of acts tells it to the next backup.
                }
            }
        }
    }

    /// <summary>Beside a new backup: all that is known, and from now on each that comes.</summary>
    public void KeepBeside(string folder, IEnumerable<(Guid Member, Instant At)> known)
    {
        if (data is null)
            return;
        lock (writing)
        {
            var all = known.Concat(Read(data)).ToList();
            Append(Path.Combine(data, FileName), all);
            foreach (var beside in KnownFolders().Append(folder).Distinct().Where(Directory.Exists))
                Append(Path.Combine(beside, FileName), all);
            if (!KnownFolders().Contains(folder))
                File.AppendAllLines(Path.Combine(data, Folders), [folder]);
        }
    }

    /// <summary>Those noted in a folder; a line that was cut off in writing counts for nothing.</summary>
    public static IReadOnlyList<(Guid Member, Instant At)> Read(string folder)
    {
        var file = Path.Combine(folder, FileName);
        return !File.Exists(file) ? [] :
        [
            .. File.ReadLines(file).Select(line => line.Split(' '))
                .Where(parts => parts.Length == 2)
                .Select(parts => (At: InstantPattern.General.Parse(parts[0]), IsNumber: Guid.TryParse(parts[1], CultureInfo.InvariantCulture, out var member), Member: member))
                .Where(note => note.At.Success && note.IsNumber)
                .Select(note => (note.Member, note.At.Value)),
        ];
    }

    private static void Append(string file, IEnumerable<(Guid Member, Instant At)> notes)
    {
        var known = Read(Path.GetDirectoryName(file)!).Select(note => note.Member).ToHashSet();
        var lines = notes.Where(note => known.Add(note.Member)).Select(note => $"{InstantPattern.General.Format(note.At)} {note.Member}").ToList();
        if (lines.Count == 0)
            return;
        // A line cut off before would swallow the next one.
        File.AppendAllText(file, (File.Exists(file) && !File.ReadAllText(file).EndsWith('\n') ? "\n" : "") + string.Join('\n', lines) + "\n");
    }

    private IEnumerable<string> KnownFolders()
    {
        var list = Path.Combine(data!, Folders);
        return File.Exists(list) ? File.ReadAllLines(list).Where(line => line.Length > 0) : [];
    }
}
