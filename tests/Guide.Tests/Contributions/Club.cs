using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace Foreshore.Guide.Contributions;

/// <summary>People of a club as the verbs know them, without the way through sign-in.</summary>
public sealed class Club(GuideHost guide)
{
    public Contributing Contributing => guide.Services.GetRequiredService<Contributing>();

    public Reviewing Reviewing => guide.Services.GetRequiredService<Reviewing>();

    public Warding Warding => guide.Services.GetRequiredService<Warding>();

    public StillCorrect StillCorrect => guide.Services.GetRequiredService<StillCorrect>();

    public GuideDb Open() => guide.Open();

    public async Task<SignedIn> SomebodyAsync(Role role, string name = "Ruth Quill")
    {
        await using var db = guide.Open();
        var now = guide.Clock.GetCurrentInstant();
        var member = new Member($"{Guid.NewGuid():N}@example.org", name, role, now);
        db.Add(member);
        await db.SaveChangesAsync();
        return new SignedIn(Guid.NewGuid(), member.Id, member.Name, member.Email, role, 2, true, now);
    }

    /// <summary>Leaves none or some of the wardens in the club.</summary>
    public async Task KeepWardensAsync(params SignedIn[] kept)
    {
        await using var db = guide.Open();
        var ids = kept.Select(each => each.MemberId).ToList();
        foreach (var warden in await db.Members.Where(m => m.Role != Role.Member && m.RemovedAt == null && !ids.Contains(m.Id)).ToListAsync())
            warden.GiveRole(Role.Member);
        await db.SaveChangesAsync();
    }

    public async Task<(Location Place, Compositions.VantagePoint Stance)> StanceAsync(string slug)
    {
        await using var db = guide.Open();
        var stance = await db.VantagePoints.AsNoTracking().Include(v => v.Location).SingleAsync(v => v.Slug == slug);
        return (stance.Location!, stance);
    }

    public async Task<Guid> SentAsync(SignedIn by, Matter matter, int? target, IReadOnlyDictionary<string, string> typed)
    {
        var id = Guid.NewGuid();
        var sent = await Contributing.SendAsync(by.Reader, id, matter, target, typed, "seen today", null, default);
        Xunit.Assert.Empty(sent.Faults);
        Xunit.Assert.True(sent.IsSent);
        return id;
    }

    public Task<ReviewOutcome> AcceptAsync(SignedIn warden, Guid id, string? words = null, IReadOnlyDictionary<string, string>? edits = null, params string[] despite) =>
        Reviewing.AcceptAsync(warden, id, edits ?? new Dictionary<string, string>(), despite.ToHashSet(), words, default);
}
