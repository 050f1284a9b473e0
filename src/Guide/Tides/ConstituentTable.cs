using System.Globalization;
using Foreshore.Almanac.Tides;

namespace Foreshore.Guide.Tides;

/// <summary>Constituents of a station as a club brings them: name, amplitude in metres, Greenwich phase lag in degrees.</summary>
internal static class ConstituentTable
{
    /// <summary>The head the table must have.</summary>
    public const string Head = "constituent, amplitude, phase";

    /// <summary>Over this it is centimetres or feet: the greatest M2 on Earth, in the Bay of Fundy, is under 6 m; from memory.</summary>
    private const double MostMetres = 10;

    private static readonly string[][] Columns =
        [["constituent", "name"], ["amplitude", "amplitude_m", "amplitude (m)", "h"], ["phase", "phase_deg", "phase (deg)", "g"]];

    /// <returns>Constants in the order given; meaningful only where there is no fault.</returns>
    public static (IReadOnlyList<HarmonicConstant> Constants, IReadOnlyList<string> Faults) Read(string text)
    {
        var table = StationTable.Read(text, Columns, optional: 0, mostRows: 400);
        var lines = new Dictionary<Constituent, int>();
        var constants = new List<HarmonicConstant>();
        foreach (var row in table.Rows)
        {
            var name = row.Fields[0];
            if (!Constituents.TryFind(name, out var constituent))
                table.Fault(row.Line, name.Length == 0 ? "The constituent has no name. Give one such as M2, or take the line out."
                    : $"\"{StationTable.Short(name)}\" is no constituent that is known here. Leaving it out would falsify every height: look whether it is misspelt, or ask its source what it is.");
            else if (lines.TryGetValue(constituent, out var before))
                table.Fault(row.Line, $"{name} stands in line {before.ToString(CultureInfo.InvariantCulture)} already{(constituent.Name == name ? "" : $", as {constituent.Name}")}. Its share would be counted twice: keep one of the two.");
            else
                lines[constituent] = row.Line;

            var amplitude = table.Number(row, 1, "The amplitude", "metres");
            if (amplitude < 0)
                table.Fault(row.Line, "The amplitude is below zero, which no amplitude is. If the sign is meant, leave it off and add 180 to the phase.");
            else if (amplitude > MostMetres)
                table.Fault(row.Line, $"An amplitude of {amplitude.ToString(CultureInfo.InvariantCulture)} m is larger than any. Metres are meant, not centimetres or feet: turn the whole column.");
            var phase = table.Number(row, 2, "The phase", "degrees on Greenwich and UTC");
            if (phase is < -360 or > 360)
                table.Fault(row.Line, $"A phase of {phase.ToString(CultureInfo.InvariantCulture)} degrees lies outside a circle. Give it from 0 to 360.");
            if (constituent is not null && amplitude > 0 && double.IsFinite(phase))
                constants.Add(new(constituent, amplitude, phase switch { < 0 => phase + 360, 360 => 0, _ => phase }));
        }
        if (table.Faults.Count == 0 && constants.Count == 0)
            table.Fault(null, "Every amplitude is zero, which is no tide. Look whether the columns are in their places.");
        return (constants, table.Faults);
    }
}
