using Foreshore.Guide.Database;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Foreshore.Guide.HouseRules;

public class MappingTests
{
    [Fact]
    public void Every_entity_has_a_mapping_of_its_own()
    {
        var mapped = typeof(GuideDb).Assembly.GetTypes()
            .SelectMany(type => type.GetInterfaces())
            .Where(type => type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IEntityTypeConfiguration<>))
            .Select(type => type.GetGenericArguments()[0])
            .ToHashSet();
        using var db = GuideConnection.Open("Host=/nowhere;Database=none");
        var entities = db.Model.GetEntityTypes().Where(entity => !entity.IsOwned()).ToList();

        Assert.NotEmpty(entities);
        Assert.Empty(entities.Where(entity => !mapped.Contains(entity.ClrType) && !mapped.Contains(entity.ClrType.BaseType!)).Select(entity => entity.Name));
    }

    [Fact]
    public void Names_in_the_database_are_lower_case_with_underscores()
    {
        using var db = GuideConnection.Open("Host=/nowhere;Database=none");
        var names = db.Model.GetEntityTypes()
            .SelectMany(entity => entity.GetProperties().Select(property => property.GetColumnName()).Append(entity.GetTableName() ?? "in_json"));

        Assert.DoesNotContain(names, name => name is not null && name.Any(char.IsUpper));
    }
}
