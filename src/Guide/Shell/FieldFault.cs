namespace Foreshore.Guide.Shell;

/// <summary>What is to be mended in one field of a form, said so that one can do it.</summary>
/// <param name="FieldId">The id of the control.</param>
/// <param name="Words">For example "Enter a latitude between -90 and 90, like 44.65".</param>
public sealed record FieldFault(string FieldId, string Words);

public static class FieldFaults
{
    /// <summary>The words for one field, or null: what <see cref="Field"/> prints beside it.</summary>
    public static string? Of(this IReadOnlyList<FieldFault> faults, string fieldId) =>
        faults.FirstOrDefault(fault => fault.FieldId == fieldId)?.Words;
}
