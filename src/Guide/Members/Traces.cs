using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace Foreshore.Guide.Members;

/// <summary>A table in whose rows somebody's number can stand, and its columns that nobody takes along: secrets, and hashes of them.</summary>
/// <param name="Deed">Null: the row is the member's own. Else what is told of a row that is somebody else's and that they acted on: which, what and when.</param>
public sealed record Trace(string Table, string Column, IReadOnlyList<string> Secrets, IReadOnlyList<string>? Deed);

/// <summary>
/// Where in the database a member is known by their number. Taken from the model, so that what is added later is found without being
/// named here: every number of that kind but a table's own, and but keys of other things.
/// </summary>
public static class Traces
{
    /// <summary>By whom a row was made, or about whom it is. What stands in any other column of people was decided by them over others' words: those stay behind.</summary>
    private static readonly string[] Authors = ["Id", "MemberId", "ProposerId", "ProposedBy", "ReportedBy", "MadeBy", "By", "About"];

    /// <summary>The member's own row first.</summary>
    public static IReadOnlyList<Trace> Of(IModel model) =>
    [
        .. from entity in model.GetEntityTypes()
           from property in entity.GetProperties()
           where property.ClrType == typeof(Guid) || property.ClrType == typeof(Guid?)
           where entity.ClrType == typeof(Member) ? property.IsPrimaryKey() : !IsOwnNumber(property) && MayBeMember(property)
           orderby entity.ClrType == typeof(Member) ? 0 : 1, entity.GetTableName(), property.Name
           select new Trace(entity.GetTableName()!, property.GetColumnName(), [.. entity.GetProperties().Where(IsSecret).Select(p => p.GetColumnName())],
               Authors.Contains(property.Name) ? null : [.. entity.GetProperties().Where(other => other == property || IsOfDeed(other)).Select(p => p.GetColumnName())]),
    ];

    private static bool IsOwnNumber(IProperty property) => property.DeclaringType is IEntityType entity && entity.FindPrimaryKey()?.Properties is [var only] && only == property;

    private static bool MayBeMember(IProperty property) =>
        !property.IsForeignKey() || property.GetContainingForeignKeys().Any(key => key.PrincipalEntityType.ClrType == typeof(Member));

    /// <summary>Which row, its kind and state, and when: no words.</summary>
    private static bool IsOfDeed(IProperty property) => property.IsPrimaryKey()
        || (Nullable.GetUnderlyingType(property.ClrType) ?? property.ClrType) is var type && (type.IsEnum || type == typeof(NodaTime.Instant) || type == typeof(NodaTime.LocalDate));

    private static bool IsSecret(IProperty property) => property.ClrType == typeof(byte[]) || property.Name == nameof(Member.PasswordHash);
}
