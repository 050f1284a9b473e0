using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;

namespace Foreshore.Guide.Hazards;

/// <summary>
/// How many near misses somebody told of today. A near miss keeps no name; what counts them is a keyed hash of member and day, in a
/// table of its own, deleted a day later together with its key. It holds nothing that leads from a near miss to a member.
/// </summary>
public sealed class NearMissTally
{
    public const int MostADay = 2;

    private NearMissTally() { }

    private NearMissTally(byte[] hash, LocalDate day) => (Hash, Day) = (hash, day);

    public byte[] Hash { get; private set; } = [];

    public LocalDate Day { get; private set; }

    public int Count { get; private set; }

    public uint Version { get; private set; }

    /// <summary>Counts one more, unless two are counted already; clears what is older than a day.</summary>
    public static async Task<bool> CountAsync(GuideDb db, Guid member, Instant now, CancellationToken cancel)
    {
        var day = now.InUtc().Date;
        var yesterday = day.PlusDays(-1);
        await db.Set<NearMissTally>().Where(t => t.Day < yesterday).ExecuteDeleteAsync(cancel);
        await db.Set<NearMissKey>().Where(k => k.Day < yesterday).ExecuteDeleteAsync(cancel);
        var key = await db.Set<NearMissKey>().FindAsync([day], cancel) ?? db.Add(new NearMissKey(day)).Entity;
        var hash = HMACSHA256.HashData(key.Key, Encoding.UTF8.GetBytes($"{member:N}"));
        var tally = await db.Set<NearMissTally>().FindAsync([hash], cancel) ?? db.Add(new NearMissTally(hash, day)).Entity;
        if (tally.Count >= MostADay)
            return false;
        tally.Count++;
        return true;
    }
}

/// <summary>The key of one day's tallies.</summary>
public sealed class NearMissKey
{
    private NearMissKey() { }

    internal NearMissKey(LocalDate day) => (Day, Key) = (day, RandomNumberGenerator.GetBytes(32));

    public LocalDate Day { get; private set; }

    public byte[] Key { get; private set; } = [];
}

internal sealed class NearMissTallyMapping : IEntityTypeConfiguration<NearMissTally>
{
    public void Configure(EntityTypeBuilder<NearMissTally> tally)
    {
        tally.ToTable("near_miss_tallies");
        tally.HasKey(t => t.Hash);
        tally.Property(t => t.Hash).HasMaxLength(32);
        tally.Property(t => t.Version).IsRowVersion();
        tally.ToTable(table => table.HasCheckConstraint("ck_near_miss_tallies_count", $"count BETWEEN 0 AND {NearMissTally.MostADay}"));
    }
}

internal sealed class NearMissKeyMapping : IEntityTypeConfiguration<NearMissKey>
{
    public void Configure(EntityTypeBuilder<NearMissKey> key)
    {
        key.ToTable("near_miss_keys");
        key.HasKey(k => k.Day);
        key.Property(k => k.Key).HasMaxLength(32);
    }
}
