using System.Globalization;
using System.Linq.Expressions;
using Foreshore.Almanac.Stays;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace Foreshore.Guide.Database;

/// <summary>Pieces that several mappings share: enums as text, checks with readable names, values used in many tables.</summary>
internal static class MappingParts
{
    /// <summary>The enum as text, held to its names by the database.</summary>
    public static void EnumText<TEntity, TEnum>(this EntityTypeBuilder<TEntity> entity, Expression<Func<TEntity, TEnum>> property, string column)
        where TEntity : class where TEnum : struct, Enum
    {
        entity.Property(property).HasConversion<string>().HasMaxLength(40);
        entity.Check(column, $"{column} IN ({Names<TEnum>()})");
    }

    /// <summary>Holds an enum column of a part (mapped with its own conversion) to the enum's names.</summary>
    public static void OneOf<TEnum>(this EntityTypeBuilder entity, string column) where TEnum : struct, Enum =>
        entity.ToTable(table => table.HasCheckConstraint($"ck_{entity.Metadata.GetTableName()}_{column}", $"{column} IN ({Names<TEnum>()})"));

    public static string Names<TEnum>() where TEnum : struct, Enum => string.Join(", ", Enum.GetNames<TEnum>().Select(n => $"'{n}'"));

    public static void Check<TEntity>(this EntityTypeBuilder<TEntity> entity, string name, string sql) where TEntity : class =>
        entity.ToTable(table => table.HasCheckConstraint($"ck_{entity.Metadata.GetTableName()}_{name}", sql));

    /// <summary>Refuses NaN too: PostgreSQL counts it greater than every number.</summary>
    public static void Between<TEntity>(this EntityTypeBuilder<TEntity> entity, string column, double least, double most) where TEntity : class =>
        entity.Check(column, string.Create(CultureInfo.InvariantCulture, $"{column} BETWEEN {least} AND {most}"));

    public static void Degrees<TEntity>(this EntityTypeBuilder<TEntity> entity, string column) where TEntity : class =>
        entity.Check(column, $"{column} >= 0 AND {column} < 360");

    public static void OnEarth<TEntity>(this EntityTypeBuilder<TEntity> entity, string prefix = "") where TEntity : class
    {
        entity.Between($"{prefix}latitude_degrees", -90, 90);
        entity.Check($"{prefix}longitude_degrees", $"{prefix}longitude_degrees >= -180 AND {prefix}longitude_degrees < 180");
    }

    public static void SlugShape<TEntity>(this EntityTypeBuilder<TEntity> entity) where TEntity : class =>
        entity.Check("slug", "slug ~ '^[a-z0-9]+(-[a-z0-9]+)*$' AND length(slug) <= 60");

    public static void Map(this ComplexPropertyBuilder<FactCheck> check)
    {
        check.Property(c => c.SaysWho).HasMaxLength(160);
        check.Property(c => c.CheckedBy).HasMaxLength(80);
        check.Property(c => c.Link).HasMaxLength(400);
    }

    public static void Map(this ComplexPropertyBuilder<TideHeight> height)
    {
        height.Property(h => h.StationId).HasMaxLength(StationIds.Longest);
        height.Property(h => h.Datum).HasConversion<string>().HasMaxLength(40);
    }

    public static void Map(this ComplexPropertyBuilder<NearbyPlace> place)
    {
        place.Property(p => p.Text).HasMaxLength(200);
        place.Ignore(p => p.Position);
    }

    /// <summary>Hours as their one line of text, held to its grammar by the database.</summary>
    public static void HoursText<TEntity>(this EntityTypeBuilder<TEntity> entity, Expression<Func<TEntity, OpeningHours?>> property) where TEntity : class
    {
        entity.Property(property).HasConversion(hours => HoursNotation.Write(hours!), text => HoursNotation.Read(text)).HasMaxLength(RuleNotation.Longest);
        entity.Check("hours", HoursNotation.Check("hours"));
    }

    public static string AnnualText(AnnualDate date) => string.Create(CultureInfo.InvariantCulture, $"{date.Month:00}-{date.Day:00}");

    public static AnnualDate AnnualOf(string text) =>
        new(int.Parse(text[..2], CultureInfo.InvariantCulture), int.Parse(text[3..], CultureInfo.InvariantCulture));
}
