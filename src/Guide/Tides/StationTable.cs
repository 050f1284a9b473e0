using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;

namespace Foreshore.Guide.Tides;

/// <summary>A row of an uploaded table, with the line it stands in.</summary>
internal sealed record StationRow(int Line, string[] Fields);

/// <summary>
/// An uploaded table as text in rows: bytes to text, text to rows under a known head. Whatever is wrong is said with its line,
/// what, why and what to do; all of it at once, so that nobody mends a file line by line.
/// </summary>
internal sealed class StationTable
{
    public const int MostBytes = 512 * 1024;

    /// <summary>A file and a pasted table beside it, whose lines a browser ends by two signs.</summary>
    public const int MostBytesPosted = 4 * MostBytes;

    private const int MostFaults = 12;

    private readonly List<string> faults = [];

    public List<StationRow> Rows { get; } = [];

    /// <summary>Decimal commas can only be meant where commas do not part the columns.</summary>
    public bool HasDecimalCommas { get; private set; }

    /// <summary>What to mend; empty when the table was read.</summary>
    public IReadOnlyList<string> Faults => faults.Count <= MostFaults ? faults : [.. faults.Take(MostFaults), $"… and {faults.Count - MostFaults} more."];

    /// <summary>UTF-8, or UTF-16 with its mark; anything else would turn letters into others without telling.</summary>
    public static (string? Text, string? Fault) Decode(byte[] bytes)
    {
        if (bytes.Length == 0)
            return (null, "The file is empty. Choose the table, with a head line and a row for each entry.");
        if (bytes.Length > MostBytes)
            return (null, $"The file is larger than {MostBytes / 1024} kB, and no station's table is. Look whether it is the right file.");
        Encoding encoding = bytes switch
        {
            [0xFF, 0xFE, ..] => new UnicodeEncoding(bigEndian: false, byteOrderMark: true, throwOnInvalidBytes: true),
            [0xFE, 0xFF, ..] => new UnicodeEncoding(bigEndian: true, byteOrderMark: true, throwOnInvalidBytes: true),
            _ => new UTF8Encoding(encoderShouldEmitUTF8Identifier: true, throwOnInvalidBytes: true),
        };
        try
        {
            var text = encoding.GetString(bytes).TrimStart('\uFEFF');
            return text.Contains('\0', StringComparison.Ordinal) ? (null, NoText) : (text, null);
        }
        catch (DecoderFallbackException)
        {
            return (null, NoText);
        }
    }

    private const string NoText = "The file is no text in UTF-8, so letters and signs in it cannot be told apart. Save the table as \"CSV UTF-8\" and choose it again.";

    /// <param name="text">The table.</param>
    /// <param name="columns">For each column the heads it may bear, lower case; the first is the usual one.</param>
    /// <param name="optional">How many of the last columns may be missing.</param>
    /// <param name="mostRows">More than that is not a station's table.</param>
    public static StationTable Read(string text, string[][] columns, int optional, int mostRows)
    {
        var table = new StationTable();
        if (string.IsNullOrWhiteSpace(text))
        {
            table.Fault(null, "The table is empty. Paste it or choose a file, with a head line and a row for each entry.");
            return table;
        }

        using var reader = new StringReader(text);
        using var csv = new CsvReader(reader, new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            DetectDelimiter = true,
            DetectDelimiterValues = [";", "\t", ","],
            TrimOptions = TrimOptions.Trim,
            IgnoreBlankLines = true,
            BadDataFound = bad => table.Fault(bad.Context.Parser?.RawRow, "A quotation mark stands inside a field, so its end is not known. Take it out, or put the whole field in quotation marks."),
            MaxFieldSize = 1000,
        });
        try
        {
            table.ReadRows(csv, columns, optional, mostRows);
        }
        catch (CsvHelperException broken)
        {
            table.Fault(broken.Context?.Parser?.RawRow, "This line cannot be read as fields. Look for a quotation mark that is not closed, or a field longer than a thousand letters.");
        }
        return table;
    }

    public void Fault(int? line, string words) => faults.Add(line is { } at ? string.Create(CultureInfo.InvariantCulture, $"Line {at}: {words}") : words);

    /// <summary>A number with a decimal point, or a comma where commas part no columns; a fault and NaN otherwise.</summary>
    public double Number(StationRow row, int column, string what, string unit)
    {
        var typed = row.Fields[column].Replace('−', '-');
        if (HasDecimalCommas && typed.Count(c => c == ',') == 1 && !typed.Contains('.', StringComparison.Ordinal))
            typed = typed.Replace(',', '.');
        if (double.TryParse(typed, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value))
            return value;
        Fault(row.Line, typed.Length == 0 ? $"{what} is missing. Give {unit}, or take the line out."
            : $"{what} \"{Short(typed)}\" is not a number. Give {unit} as figures with a decimal point.");
        return double.NaN;
    }

    public static string Short(string text) => text.Length <= 30 ? text : text[..30] + "…";

    private void ReadRows(CsvReader csv, string[][] columns, int optional, int mostRows)
    {
        csv.Read();
        csv.ReadHeader();
        HasDecimalCommas = csv.Parser.Delimiter != ",";
        var head = csv.HeaderRecord!.Select(name => name.ToLowerInvariant()).ToArray();
        var places = columns.Select(names => Array.FindIndex(head, names.Contains)).ToArray();
        foreach (var (names, place) in columns.Zip(places).SkipLast(optional))
        {
            if (place < 0)
                Fault(1, $"No column is headed \"{names[0]}\". The first line must name the columns: {string.Join(", ", columns.SkipLast(optional).Select(c => c[0]))}.");
        }
        if (faults.Count > 0)
            return;

        while (csv.Read())
        {
            if (csv.Parser.Count != head.Length)
            {
                Fault(csv.Parser.RawRow, $"It has {csv.Parser.Count} fields and the head has {head.Length}.{(csv.Parser.Delimiter == "," && csv.Parser.Count > head.Length ? " Commas in numbers part fields too: write decimal points, or part the columns by semicolons." : " Give each column its field, empty ones too.")}");
            }
            else if (Rows.Count == mostRows)
            {
                Fault(csv.Parser.RawRow, $"A station's table has at most {mostRows} rows, and here are more. Look whether it is the right file, or cut it.");
                return;
            }
            else
            {
                Rows.Add(new(csv.Parser.RawRow, [.. places.Select(place => place < 0 ? "" : csv.GetField(place)!.Trim())]));
            }
        }
        if (Rows.Count == 0 && faults.Count == 0)
            Fault(null, "There is a head but no row under it. Add a row for each entry.");
    }
}
