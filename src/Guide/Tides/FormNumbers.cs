using Foreshore.Guide.Shell;

namespace Foreshore.Guide.Tides;

/// <summary>Numbers as people type them into the forms of this feature: a decimal comma is taken for a point.</summary>
internal static class FormNumbers
{
    public static double? Read(string? typed) => TypedValue.Number(typed);

    /// <summary>The number, or <paramref name="otherwise"/> where nothing was typed; a fault where what was typed is none in the range.</summary>
    public static double Read(string? typed, double otherwise, double least, double most, string field, string what, List<FieldFault> faults)
    {
        if (string.IsNullOrWhiteSpace(typed))
            return otherwise;
        if (Read(typed) is { } value && value >= least && value <= most)
            return value;
        faults.Add(new(field, FormattableString.Invariant($"{what} \"{StationTable.Short(typed)}\" is not a number from {least} to {most}. Enter one, or leave the field empty.")));
        return otherwise;
    }
}
