using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Almanac.Checks;

/// <summary>
/// A checked-in table of values from outside the project: comment lines "# key: text" with source, licence, unit,
/// tolerance and why, then a line of column names, then the rows.
/// </summary>
public sealed class PublishedTable
{
    private readonly Dictionary<string, string> header = [];

    private PublishedTable(string path)
    {
        string[]? columns = null;
        var rows = new List<PublishedRow>();
        string key = "";
        foreach (var line in File.ReadLines(path))
        {
            if (line.StartsWith('#'))
            {
                var text = line[1..].Trim();
                var colon = text.IndexOf(": ", StringComparison.Ordinal);
                if (colon > 0 && !text[..colon].Contains(' ', StringComparison.Ordinal)) header[key = text[..colon]] = text[(colon + 2)..];
                else if (key.Length > 0) header[key] += " " + text;
            }
            else if (columns is null)
            {
                columns = line.Split(',');
            }
            else if (line.Length > 0)
            {
                rows.Add(new PublishedRow(columns, line));
            }
        }

        Rows = rows;
    }

    /// <summary>Full source.</summary>
    public string Source => header["source"];

    /// <summary>Terms it may be used under.</summary>
    public string Licence => header["licence"];

    /// <summary>Unit of the errors.</summary>
    public string Unit => header["unit"];

    /// <summary>The bound, in words and numbers.</summary>
    public string Tolerance => header["tolerance"];

    /// <summary>Why that bound.</summary>
    public string Why => header["why"];

    /// <summary>The rows.</summary>
    public IReadOnlyList<PublishedRow> Rows { get; }

    /// <summary>The folder that holds all tables.</summary>
    public static string Folder => Path.Combine(Repository.Root, "tests", "Almanac.Tests", "Published");

    /// <summary>Reads a table, for instance "Sun/nrel-spa-steps.csv".</summary>
    public static PublishedTable Read(string name) => new(Path.Combine(Folder, name));
}

/// <summary>One row of a table, read by column name.</summary>
public sealed class PublishedRow(string[] columns, string text)
{
    private readonly string[] fields = text.Split(',');

    /// <summary>The row as it stands.</summary>
    public string Text => text;

    /// <summary>A field as text; empty where the row has none.</summary>
    public string this[string column]
    {
        get
        {
            var index = Array.IndexOf(columns, column);
            if (index < 0) throw new KeyNotFoundException($"No column {column} among {string.Join(", ", columns)}.");
            return index < fields.Length ? fields[index] : "";
        }
    }

    /// <summary>A field as a number.</summary>
    public double Number(string column) => double.Parse(this[column], CultureInfo.InvariantCulture);

    /// <summary>A field as a number; null where it is empty.</summary>
    public double? NumberOrNone(string column) => this[column].Length == 0 ? null : Number(column);

    /// <summary>A field as an instant, ISO 8601 with Z.</summary>
    public Instant Time(string column) => InstantPattern.ExtendedIso.Parse(this[column]).Value;
}

/// <summary>Where the repository lies on this machine.</summary>
public static class Repository
{
    /// <summary>The folder with the solution file.</summary>
    public static string Root { get; } = Find();

    private static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Foreshore.slnx"))) folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException("No Foreshore.slnx above " + AppContext.BaseDirectory);
    }
}
