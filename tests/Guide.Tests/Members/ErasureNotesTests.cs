using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Members;

/// <summary>Class fixture: a site on a server of one's own that is told where erasures are noted.</summary>
public sealed class GuideWithNotes(TestCluster cluster) : GuideHost(cluster, withDemo: false)
{
    public string Folder { get; } = Directory.CreateTempSubdirectory("foreshore-").FullName;

    protected override IEnumerable<(string Name, string Value)> Settings => [("Database:Erasures", Folder)];

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        Directory.Delete(Folder, recursive: true);
    }
}

public sealed class ErasureNotesTests(GuideWithNotes guide) : IClassFixture<GuideWithNotes>
{
    private static readonly Instant Then = GuideHost.UsualNow;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Whoever_erases_their_account_is_noted_by_number_alone_and_erased_again_from_an_older_copy()
    {
        await using var db = guide.Open();
        var member = new Member("leaving@example.org", "Ute Weiss", Role.Member, Then);
        db.Add(member);
        await db.SaveChangesAsync(Stop);
        await guide.Services.GetRequiredService<Erasure>().EraseAsync(new SignedIn(Guid.NewGuid(), member.Id, member.Name, member.Email, Role.Member, 2, true, Then), isMeant: true, Stop);

        Assert.Equal([(member.Id, Then)], ErasureNotes.Read(guide.Folder));
        Assert.DoesNotContain("Ute", await File.ReadAllTextAsync(Path.Combine(guide.Folder, ErasureNotes.FileName), Stop), StringComparison.Ordinal);

        // As an older copy would have it: the row is there again.
        await using var copy = guide.Open();
        var again = new Member("leaving@example.org", "Ute Weiss", Role.Member, Then);
        copy.Entry(again).Property(each => each.Id).CurrentValue = member.Id;
        copy.Add(again);
        await copy.SaveChangesAsync(Stop);
        Assert.Equal(1, await Erasure.EraseNotedAsync(copy, ErasureNotes.Read(guide.Folder), Stop));
        Assert.Equal(0, await Erasure.EraseNotedAsync(copy, ErasureNotes.Read(guide.Folder), Stop));
        Assert.False(await copy.Set<Member>().AnyAsync(each => each.Id == member.Id, Stop));
    }

    [Fact]
    public void A_line_that_was_cut_off_takes_no_other_with_it()
    {
        var folder = Directory.CreateTempSubdirectory("foreshore-").FullName;
        Guid one = Guid.NewGuid(), two = Guid.NewGuid();
        var notes = new ErasureNotes(folder);
        notes.Add(one, Then);
        var file = Path.Combine(folder, ErasureNotes.FileName);
        File.WriteAllText(file, File.ReadAllText(file) + "2026-11-25T12:00:00Z 3f25");

        notes.Add(two, Then);
        notes.Add(two, Then);

        Assert.Equal([(one, Then), (two, Then)], ErasureNotes.Read(folder));
        Directory.Delete(folder, recursive: true);
    }
}
