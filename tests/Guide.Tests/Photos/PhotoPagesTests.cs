using System.Net;
using Foreshore.Guide.Contributions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Xunit;
using static Foreshore.Guide.Photos.PhotoSender;

namespace Foreshore.Guide.Photos;

/// <summary>Photos from a member's form to the guide, and who may look at them on the way.</summary>
public sealed class PhotoPagesTests(DemoGuideSite guide) : IClassFixture<DemoGuideSite>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task From_a_draft_to_the_guide_each_sees_it_when_it_is_theirs_to_see()
    {
        var (owner, other, warden, visitor) = (await guide.SomebodyAsync(Role.Member, "Ana Reed"), await guide.SomebodyAsync(Role.Member), await guide.SomebodyAsync(Role.Warden), guide.Client);
        var address = $"/contribute/stance/{Guid.NewGuid()}";
        Assert.Equal(HttpStatusCode.OK, (await SendAsync(owner, address, "stance", Typed("Gull rock", "keep"), [MadePicture.Tagged(6, salt: 1)])).StatusCode);

        var draft = await ReadAsync(owner, address);
        Assert.Equal("Gull rock", draft.QuerySelector("#name")!.GetAttribute("value"));
        var photo = Assert.Single(draft.QuerySelectorAll(".photos img")).GetAttribute("src")!.Replace("/small", "", StringComparison.Ordinal);
        await AssertSeenAsync(photo, (owner, true), (other, false), (warden, false), (visitor, false));

        Assert.Equal(HttpStatusCode.Found, (await SendAsync(owner, address, "stance", Typed("Gull rock", "send"))).StatusCode);
        await AssertSeenAsync(photo, (owner, true), (other, false), (warden, true), (visitor, false));
        var review = await ReadAsync(warden, address.Replace("/contribute/stance", "/queue", StringComparison.Ordinal));
        Assert.Contains("Photo by Ana Reed", review.QuerySelector(".photos")!.TextContent, StringComparison.Ordinal);

        var accepted = await SendAsync(warden, address.Replace("/contribute/stance", "/queue", StringComparison.Ordinal), "decide", [("then", "accept")]);
        Assert.Equal("/coast/long-slip/gull-rock/gull-rock?accepted", Person.Next(accepted));
        await AssertSeenAsync(photo, (owner, true), (other, true), (warden, true), (visitor, true));
        foreach (var page in (string[])["/coast/long-slip/gull-rock/gull-rock", "/coast/long-slip/gull-rock"])
        {
            Assert.Equal("Photo by a member of the club", (await ReadAsync(visitor, page)).QuerySelector(".photos figcaption")!.TextContent.Trim());
            Assert.DoesNotContain("Ana Reed", await visitor.GetStringAsync(page, Stop), StringComparison.Ordinal);
            Assert.Equal("Photo by Ana Reed", (await ReadAsync(other, page)).QuerySelector(".photos figcaption")!.TextContent.Trim());
        }
    }

    [Fact]
    public async Task It_is_sent_out_as_a_picture_and_nothing_else()
    {
        var owner = await guide.SomebodyAsync(Role.Member);
        var address = $"/contribute/stance/{Guid.NewGuid()}";
        await SendAsync(owner, address, "stance", Typed("Kelp pool", "keep"), [MadePicture.Tagged(3, salt: 2)]);
        var photo = (await ReadAsync(owner, address)).QuerySelector(".photos img")!.GetAttribute("src")!;

        var answer = await owner.GetAsync(photo, Stop);

        Assert.Equal("image/jpeg", answer.Content.Headers.ContentType!.ToString());
        Assert.Equal("inline", answer.Content.Headers.ContentDisposition!.ToString());
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.Equal("sandbox; default-src 'none'", Assert.Single(answer.Headers.GetValues("Content-Security-Policy")));
        Assert.Equal("no-store, private", answer.Headers.CacheControl!.ToString());
        Assert.Equal(["E0 JFIF", "DB", "C0", "C4"], MadePicture.Markers(await answer.Content.ReadAsByteArrayAsync(Stop)).Distinct());
        Assert.Equal(HttpStatusCode.NotFound, (await guide.Client.GetAsync("/photos/not-a-number", Stop)).StatusCode);
    }

    [Fact]
    public async Task A_refused_photo_stands_beside_its_field_and_no_word_is_lost()
    {
        var owner = await guide.SomebodyAsync(Role.Member);
        var address = $"/contribute/stance/{Guid.NewGuid()}";

        var answer = await SendAsync(owner, address, "stance", Typed("Sea stack", "send"), [MadePicture.Jpeg(3), "<svg/>"u8.ToArray()]);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var page = await Person.DocumentAsync(answer);
        Assert.Contains("shot-2.jpg: This file is no photo", page.QuerySelector(".field:has(#photo) .fault-words")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("/contribute/stance/" + address.Split('/')[^1] + "#photo", page.QuerySelector(".error-summary a")!.GetAttribute("href"));
        Assert.Equal("Sea stack", page.QuerySelector("#name")!.GetAttribute("value"));
        await using var db = guide.Open();
        var id = Guid.Parse(address.Split('/')[^1]);
        Assert.Equal(("Sea stack", ProposalState.Draft), await db.Proposals.Where(p => p.Id == id).Select(p => new ValueTuple<string, ProposalState>(p.Given["name"], p.State)).SingleAsync(Stop));
        Assert.False(await db.Photos.AnyAsync(p => p.ProposalId == id, Stop));
    }

    [Fact]
    public async Task The_same_file_twice_is_one_photo_and_a_fifth_is_refused()
    {
        var owner = await guide.SomebodyAsync(Role.Member);
        var (id, other) = (Guid.NewGuid(), Guid.NewGuid());
        await SendAsync(owner, $"/contribute/stance/{id}", "stance", Typed("Twin ledge", "keep"), [MadePicture.Jpeg(4), MadePicture.Jpeg(4)]);
        await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => SendAsync(owner, $"/contribute/stance/{id}", "stance", Typed("Twin ledge", "keep"), [MadePicture.Jpeg(4)])));
        await SendAsync(owner, $"/contribute/stance/{other}", "stance", Typed("Twin slab", "keep"), [MadePicture.Jpeg(4)]);
        await using var db = guide.Open();
        Assert.Equal((1, 1), (await db.Photos.CountAsync(p => p.ProposalId == id, Stop), await db.Photos.CountAsync(p => p.ProposalId == other, Stop)));

        var fifth = await SendAsync(owner, $"/contribute/stance/{id}", "stance", Typed("Twin ledge", "keep"), [.. Enumerable.Range(5, 4).Select(salt => MadePicture.Jpeg(salt))]);

        Assert.Equal(HttpStatusCode.BadRequest, fifth.StatusCode);
        Assert.Contains("4 photos go with this at most, and 1 are here already", await fifth.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.Equal(1, await db.Photos.CountAsync(p => p.ProposalId == id, Stop));
    }

    [Fact]
    public async Task One_takes_out_ones_own_and_nobody_elses()
    {
        var (owner, other) = (await guide.SomebodyAsync(Role.Member), await guide.SomebodyAsync(Role.Member));
        var (id, others) = (Guid.NewGuid(), Guid.NewGuid());
        await SendAsync(owner, $"/contribute/stance/{id}", "stance", Typed("Cormorant step", "keep"), [MadePicture.Jpeg(9), MadePicture.Jpeg(10)]);
        await using var db = guide.Open();
        var photos = await db.Photos.Where(p => p.ProposalId == id).Select(p => p.Id).ToListAsync(Stop);

        await SendAsync(other, $"/contribute/stance/{others}", "stance", Typed("Elsewhere", $"remove-{photos[0]}"));
        Assert.Equal(2, await db.Photos.CountAsync(p => p.ProposalId == id, Stop));
        var page = await Person.DocumentAsync(await SendAsync(owner, $"/contribute/stance/{id}", "stance", Typed("Cormorant steps", $"remove-{photos[0]}")));

        Assert.Equal($"/photos/{photos[1]}/small", Assert.Single(page.QuerySelectorAll(".photos img")).GetAttribute("src"));
        Assert.Equal("Cormorant steps", page.QuerySelector("#name")!.GetAttribute("value"));
        Assert.Equal(1, await db.Photos.CountAsync(p => p.ProposalId == id, Stop));
    }

    [Fact]
    public async Task A_correction_with_a_photo_shows_it_at_the_stance_and_a_declined_or_withdrawn_one_keeps_nothing()
    {
        var (owner, warden) = (await guide.SomebodyAsync(Role.Member), await guide.SomebodyAsync(Role.Warden));
        await using var db = guide.Open();
        var stance = await db.VantagePoints.SingleAsync(v => v.Slug == "heath-bench", Stop);
        var (shown, declined, withdrawn) = (Guid.NewGuid(), Guid.NewGuid(), Guid.NewGuid());
        foreach (var (id, tripods) in new[] { (shown, "7"), (declined, "8"), (withdrawn, "9") })
            Assert.Equal(HttpStatusCode.Found, (await SendAsync(owner, $"/contribute/change/stance/{stance.Id}", "change", [("form-id", $"{id}"), ("f.tripods", tripods), ("then", "send")], [MadePicture.Jpeg(11)])).StatusCode);
        Assert.Equal(3, await db.Photos.CountAsync(p => p.MemberId == owner.Id && p.State == PhotoState.Sent, Stop));

        await SendAsync(warden, $"/queue/{shown}", "decide", [("then", "accept")]);
        await SendAsync(warden, $"/queue/{declined}", "decide", [("then", "decline"), ("words", "Not so many")]);
        await SendAsync(owner, $"/contribute/change/stance/{stance.Id}?proposal={withdrawn}", "withdraw", []);

        var left = await db.Photos.AsNoTracking().SingleAsync(p => p.MemberId == owner.Id, Stop);
        Assert.Equal((PhotoState.Shown, (int?)stance.Id, (Guid?)shown), (left.State, left.VantagePointId, left.ProposalId));
        Assert.Equal(1, await db.Set<PhotoFile>().CountAsync(f => f.PhotoId == left.Id, Stop));
    }

    [Fact]
    public async Task A_warden_or_its_owner_takes_a_photo_down_and_it_is_logged()
    {
        var (owner, other, warden) = (await guide.SomebodyAsync(Role.Member), await guide.SomebodyAsync(Role.Member), await guide.SomebodyAsync(Role.Warden));
        var id = Guid.NewGuid();
        await SendAsync(owner, $"/contribute/stance/{id}", "stance", Typed("Two pools", "send"), [MadePicture.Jpeg(70), MadePicture.Jpeg(71)]);
        await SendAsync(warden, $"/queue/{id}", "decide", [("then", "accept")]);
        const string Page = "/coast/long-slip/two-pools";
        Assert.Empty((await ReadAsync(other, Page)).QuerySelectorAll(".photos form"));

        foreach (var who in new[] { owner, warden })
        {
            // Pressed four times at once it is taken down once.
            var form = (await ReadAsync(who, Page)).QuerySelector(".photos form")!;
            using var content = new FormUrlEncodedContent(form.QuerySelectorAll("input").Select(input => KeyValuePair.Create(input.GetAttribute("name")!, input.GetAttribute("value")!)));
            Assert.Equal(HttpStatusCode.BadRequest, (await who.PostAsync(form.GetAttribute("action"), null, Stop)).StatusCode);
            var fields = await content.ReadAsStringAsync(Stop);
            var answers = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => who.PostAsync(form.GetAttribute("action"), new StringContent(fields, null, "application/x-www-form-urlencoded"), Stop)));
            Assert.Contains(answers, answer => Person.Next(answer) == Page);
            Assert.All(answers, answer => Assert.True(answer.StatusCode is HttpStatusCode.Found or HttpStatusCode.NotFound));
        }

        await using var db = guide.Open();
        Assert.False(await db.Photos.AnyAsync(p => p.ProposalId == id, Stop));
        Assert.Equal([owner.Id, warden.Id], await db.AuditEntries.Where(e => e.Act == Act.PhotoTakenDown).OrderBy(e => e.Id).Select(e => e.By!.Value).ToListAsync(Stop));
        Assert.False(await guide.Services.GetRequiredService<Album>().TakeDownAsync(new SignedIn(Guid.NewGuid(), other.Id, "Ina", "ina@example.org", Role.Member, 2, true, guide.Clock.GetCurrentInstant()), Guid.NewGuid(), Stop));
    }

    [Fact]
    public async Task An_erased_account_leaves_its_published_photos_without_a_name_and_no_others()
    {
        var (owner, warden) = (await guide.SomebodyAsync(Role.Member), await guide.SomebodyAsync(Role.Warden));
        var (draft, published) = (Guid.NewGuid(), Guid.NewGuid());
        await SendAsync(owner, $"/contribute/stance/{draft}", "stance", Typed("Never sent", "keep"), [MadePicture.Jpeg(60)]);
        await SendAsync(owner, $"/contribute/stance/{published}", "stance", Typed("Sent and taken", "send"), [MadePicture.Jpeg(61)]);
        await SendAsync(warden, $"/queue/{published}", "decide", [("then", "accept")]);
        foreach (var (severity, salt) in new[] { (4, 62), (1, 63) })
            await SendAsync(owner, "/contribute/hazard?place=long-slip", "hazard", Hazard("long-slip", severity, $"Of severity {severity}."), [MadePicture.Jpeg(salt)]);
        await using var db = guide.Open();
        var before = await db.Photos.AsNoTracking().Where(p => p.MemberId == owner.Id).ToListAsync(Stop);
        Assert.Equal([PhotoState.Kept, PhotoState.Sent, PhotoState.Sent, PhotoState.Shown], before.Select(each => each.State).Order());
        var copy = await ExportAsync(owner);
        Assert.All(before, each => Assert.Contains($"\"{each.Id}\"", copy, StringComparison.Ordinal));
        Assert.Contains("\"kept_at\"", copy, StringComparison.Ordinal);

        var erasure = guide.Services.GetRequiredService<Erasure>();
        await erasure.EraseAsync(new SignedIn(Guid.NewGuid(), owner.Id, "Ina", "ina@example.org", Role.Member, 2, true, guide.Clock.GetCurrentInstant()), isMeant: true, Stop);

        var left = await db.Photos.AsNoTracking().Where(p => before.Select(each => each.Id).Contains(p.Id)).ToListAsync(Stop);
        Assert.Equal([PhotoState.Sent, PhotoState.Shown], left.Select(photo => photo.State).Order());
        Assert.All(left, photo => Assert.Null(photo.MemberId));
        foreach (var photo in left)
            await AssertSeenAsync(photo.Address, (guide.Client, true));
        Assert.Equal(HttpStatusCode.NotFound, (await warden.GetAsync(before.First(each => each.State == PhotoState.Kept).Address, Stop)).StatusCode);
    }

    [Fact]
    public async Task Sixty_an_hour_and_two_hundred_in_all()
    {
        var owner = await guide.SomebodyAsync(Role.Member);
        var album = guide.Services.GetRequiredService<Album>();
        var reader = new Reader(Role.Member, owner.Id);
        for (var i = 0; i < Album.MostAnHour; i++)
            await Assert.ThrowsAsync<NotAcceptedException>(() => album.DevelopAsync(reader, [1], Stop));
        Assert.Contains("within the hour", (await Assert.ThrowsAsync<NotAcceptedException>(() => album.DevelopAsync(reader, [1], Stop))).Message, StringComparison.Ordinal);
        Assert.Contains("Sign in", (await Assert.ThrowsAsync<NotAcceptedException>(() => album.DevelopAsync(Reader.Visitor, [1], Stop))).Message, StringComparison.Ordinal);

        var developed = new DevelopedPhoto(new byte[32], 1, 1, [1], [1]);
        await using var db = guide.Open();
        var proposals = Enumerable.Range(0, Album.MostOfMember).Select(_ => new Proposal(Guid.NewGuid(), Matter.NewStance, null, null, owner.Id, guide.Clock.GetCurrentInstant())).ToList();
        db.AddRange(proposals);
        db.AddRange(proposals.Select(proposal => Photo.OfProposal(developed, owner.Id, proposal.Id, guide.Clock.GetCurrentInstant())));
        await db.SaveChangesAsync(Stop);
        Assert.Contains("200 photos of yours", (await Assert.ThrowsAsync<NotAcceptedException>(() => album.AddAsync(owner.Id, proposals[0].Id, [developed with { Sha256 = [1, .. new byte[31]] }], Stop))).Message, StringComparison.Ordinal);
    }
}
