using System.Net;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Xunit;
using static Foreshore.Guide.Photos.PhotoSender;

namespace Foreshore.Guide.Photos;

/// <summary>Sensitive places and hazards: their photos go where they go.</summary>
public sealed class PhotoSeenTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Photos_of_a_sensitive_place_are_for_those_who_see_it_exactly()
    {
        var (owner, plain, warden) = (await guide.SomebodyAsync(Role.Member), await guide.SomebodyAsync(Role.Member), await guide.SomebodyAsync(Role.Warden));
        await using var db = guide.Open();
        var place = await db.Locations.Include(l => l.Grants).FirstAsync(l => l.Visibility == Visibility.Sensitive, Stop);
        place.Grant(owner.Id);
        await db.SaveChangesAsync(Stop);
        var id = Guid.NewGuid();
        await SendAsync(owner, $"/contribute/stance/{id}", "stance", Typed("Hidden shelf", "send", place.Slug), [MadePicture.Jpeg(12)]);
        Assert.Equal(HttpStatusCode.Found, (await SendAsync(warden, $"/queue/{id}", "decide", [("then", "accept")])).StatusCode);
        var hazard = await SendAsync(owner, $"/contribute/hazard?place={place.Slug}", "hazard", Hazard(place.Slug, 4, "Loose blocks above the shelf."), [MadePicture.Jpeg(13)]);
        Assert.Equal(HttpStatusCode.Found, hazard.StatusCode);

        var photos = await db.Photos.AsNoTracking().Where(p => p.MemberId == owner.Id).ToListAsync(Stop);
        Assert.Equal(2, photos.Count);
        foreach (var photo in photos)
            await AssertSeenAsync(photo.Address, (owner, true), (warden, true), (plain, false), (guide.Client, false));
        foreach (var reader in new[] { plain, guide.Client })
            Assert.DoesNotContain("/photos/", await reader.GetStringAsync($"/coast/{place.Slug}", Stop), StringComparison.Ordinal);
        Assert.Contains("Loose blocks", await plain.GetStringAsync($"/coast/{place.Slug}", Stop), StringComparison.Ordinal);
        Assert.Contains("/photos/", await owner.GetStringAsync($"/coast/{place.Slug}", Stop), StringComparison.Ordinal);

        // A photo that everybody could see goes with its place when that becomes sensitive.
        place.ShowTo(Visibility.Public);
        await db.SaveChangesAsync(Stop);
        await AssertSeenAsync(photos[0].Address, (plain, true), (guide.Client, true));
        place.ShowTo(Visibility.Members);
        await db.SaveChangesAsync(Stop);
        await AssertSeenAsync(photos[0].Address, (plain, true), (guide.Client, false));
    }

    [Fact]
    public async Task A_hazards_photo_shows_as_long_as_its_note_does()
    {
        var (owner, other, warden) = (await guide.SomebodyAsync(Role.Member), await guide.SomebodyAsync(Role.Member), await guide.SomebodyAsync(Role.Warden));
        var (slight, severe, refused) = ("Weed on the lower steps.", "The rail is gone at the end.", "Nothing much, a joke.");
        foreach (var (text, severity) in new[] { (slight, 2), (severe, 4), (refused, 4) })
            Assert.Equal(HttpStatusCode.Found, (await SendAsync(owner, "/contribute/hazard?place=tern-bank", "hazard", Hazard("tern-bank", severity, text), [MadePicture.Jpeg(14 + severity + text.Length)])).StatusCode);
        await using var db = guide.Open();
        var notes = await db.HazardNotes.AsNoTracking().Include(n => n.Photo).Where(n => n.ReportedBy == owner.Id).ToDictionaryAsync(n => n.Text, Stop);

        await AssertSeenAsync(notes[slight].Photo!.Address, (owner, true), (warden, true), (other, false), (guide.Client, false));
        await AssertSeenAsync(notes[severe].Photo!.Address, (owner, true), (warden, true), (other, true), (guide.Client, true));
        Assert.Contains(notes[severe].Photo!.SmallAddress, await guide.Client.GetStringAsync("/coast/tern-bank", Stop), StringComparison.Ordinal);
        Assert.Contains(notes[slight].Photo!.SmallAddress, await warden.GetStringAsync($"/queue/hazard/{notes[slight].Id}", Stop), StringComparison.Ordinal);

        await SendAsync(warden, $"/queue/hazard/{notes[slight].Id}", "decide", [("then", "confirm")]);
        await SendAsync(warden, $"/queue/hazard/{notes[severe].Id}", "decide", [("then", "end"), ("words", "Mended")]);
        await SendAsync(warden, $"/queue/hazard/{notes[refused].Id}", "decide", [("then", "reject"), ("words", "Not so")]);
        await AssertSeenAsync(notes[slight].Photo!.Address, (guide.Client, true));
        await AssertSeenAsync(notes[severe].Photo!.Address, (owner, true), (warden, true), (other, false), (guide.Client, false));
        Assert.False(await db.Photos.AnyAsync(p => p.Id == notes[refused].Photo!.Id, Stop));
    }

    [Fact]
    public async Task A_hazard_with_a_refused_photo_says_so_and_keeps_the_words()
    {
        var owner = await guide.SomebodyAsync(Role.Member);

        var answer = await SendAsync(owner, "/contribute/hazard?place=tern-bank", "hazard", Hazard("tern-bank", 4, "Wall undercut."), ["GIF89a and more"u8.ToArray()]);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var page = await Person.DocumentAsync(answer);
        Assert.Contains("This is a GIF", page.QuerySelector(".field:has(#photo) .fault-words")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("Wall undercut.", page.QuerySelector("#text")!.TextContent);
        await using var db = guide.Open();
        Assert.False(await db.HazardNotes.AnyAsync(n => n.ReportedBy == owner.Id, Stop));
    }
}
