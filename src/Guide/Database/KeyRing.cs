using System.Xml.Linq;
using Microsoft.AspNetCore.DataProtection.KeyManagement;
using Microsoft.AspNetCore.DataProtection.Repositories;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Microsoft.Extensions.Options;

namespace Foreshore.Guide.Database;

/// <summary>A key of the ring that seals cookies and form tokens, or word that one is revoked, as the framework writes it.</summary>
public sealed class RingKey
{
    private RingKey() { }

    public int Id { get; private set; }

    /// <summary>For a key <c>key-</c> and its id: the same name twice would be the same key twice.</summary>
    public string FriendlyName { get; private set; } = "";

    public string Xml { get; private set; } = "";
}

/// <summary>
/// The ring in the database: one for all nodes. The framework gives up the whole ring when it meets a key twice, and every sign-in and form
/// with it; so a key is stored once however often its insert is repeated, and a doubled one is read once.
/// </summary>
internal sealed class KeyRing(IDbContextFactory<GuideDb> database) : IXmlRepository
{
    public static void Describe(IServiceCollection services) => services.AddSingleton<IConfigureOptions<KeyManagementOptions>>(provider =>
        new ConfigureOptions<KeyManagementOptions>(options => options.XmlRepository = new KeyRing(provider.GetRequiredService<IDbContextFactory<GuideDb>>())));

    public IReadOnlyCollection<XElement> GetAllElements()
    {
        using var db = database.CreateDbContext();
        return [.. db.Set<RingKey>().AsNoTracking().OrderBy(key => key.Id).AsEnumerable()
            .Select(key => (key.FriendlyName, Element: XElement.Parse(key.Xml)))
            .DistinctBy(key => key.Element.Attribute("id")?.Value ?? key.FriendlyName)
            .Select(key => key.Element)];
    }

    public void StoreElement(XElement element, string friendlyName)
    {
        var xml = element.ToString(SaveOptions.DisableFormatting);
        using var db = database.CreateDbContext();
        db.Database.ExecuteSql($"INSERT INTO data_protection_keys (friendly_name, xml) VALUES ({friendlyName}, {xml}) ON CONFLICT (friendly_name) DO NOTHING");
    }
}

internal sealed class RingKeyMapping : IEntityTypeConfiguration<RingKey>
{
    public void Configure(EntityTypeBuilder<RingKey> key)
    {
        key.ToTable("data_protection_keys");
        key.Property(k => k.FriendlyName).HasMaxLength(200);
        key.Property(k => k.Xml).HasMaxLength(20_000);
        key.HasIndex(k => k.FriendlyName).IsUnique();
    }
}
