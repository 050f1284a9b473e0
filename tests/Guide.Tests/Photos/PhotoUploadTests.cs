using System.Net;
using System.Net.Http.Headers;
using System.Net.Sockets;
using System.Text;
using Foreshore.Guide.Contributions;
using Foreshore.Guide.Elevation;
using Foreshore.Guide.Members;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Foreshore.Guide.Photos;

/// <summary>Uploads at the real server, where its limits hold.</summary>
public sealed class PhotoUploadTests(LocalDemo site) : IClassFixture<LocalDemo>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_photo_that_is_too_large_is_told_beside_its_field_and_other_forms_stay_small()
    {
        var id = Guid.NewGuid();
        byte[] large = [.. MadePicture.Jpeg(), .. new byte[Developing.MostBytes]];

        var answer = await PostAsync($"/contribute/stance/{id}", "stance", large);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("larger than 25 MB", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, (await PostAsync("/contribute/near-miss", "near-miss", large[..(2 << 20)])).StatusCode);
        await using var db = site.Open();
        Assert.Equal("Kept all the same", (await db.Proposals.SingleAsync(p => p.Id == id, Stop)).Given["name"]);
    }

    [Fact]
    public async Task A_connection_that_breaks_in_mid_upload_leaves_nothing_and_the_next_try_succeeds_once()
    {
        var id = Guid.NewGuid();
        using var content = await FormAsync($"/contribute/stance/{id}", "stance", MadePicture.Jpeg(7, 1200, 800));
        var body = await content.ReadAsByteArrayAsync(Stop);
        for (var percent = 5; percent < 100; percent += 10)
        {
            using var socket = new TcpClient();
            await socket.ConnectAsync(site.Client.BaseAddress!.Host, site.Client.BaseAddress.Port, Stop);
            var head = $"POST /contribute/stance/{id} HTTP/1.1\r\nHost: {site.Client.BaseAddress.Authority}\r\nContent-Length: {body.Length}\r\nContent-Type: {content.Headers.ContentType}\r\nCookie: {string.Join("; ", site.Client.DefaultRequestHeaders.GetValues("Cookie"))}\r\n\r\n";
            await socket.GetStream().WriteAsync(Encoding.ASCII.GetBytes(head), Stop);
            await socket.GetStream().WriteAsync(body.AsMemory(0, body.Length * percent / 100), Stop);
            socket.Client.Shutdown(SocketShutdown.Both);
        }

        await using var db = site.Open();
        Assert.False(await db.Photos.AnyAsync(p => p.ProposalId == id, Stop));
        Assert.Equal(HttpStatusCode.OK, (await PostAsync($"/contribute/stance/{id}", "stance", MadePicture.Jpeg(7, 1200, 800))).StatusCode);
        Assert.Equal(1, await db.Photos.CountAsync(p => p.ProposalId == id, Stop));
        Assert.Equal(ProposalState.Draft, (await db.Proposals.SingleAsync(p => p.Id == id, Stop)).State);
    }

    private async Task<HttpResponseMessage> PostAsync(string address, string form, byte[] photo)
    {
        using var content = await FormAsync(address, form, photo);
        return await site.Client.PostAsync(address, content, Stop);
    }

    private async Task<MultipartFormDataContent> FormAsync(string address, string form, byte[] photo)
    {
        var page = await Person.DocumentAsync(await site.Client.GetAsync(address, Stop));
        var content = new MultipartFormDataContent();
        foreach (var hidden in page.QuerySelector($"input[name=_handler][value={form}]")!.Closest("form")!.QuerySelectorAll("input[type=hidden]"))
            content.Add(new StringContent(hidden.GetAttribute("value") ?? ""), hidden.GetAttribute("name")!);
        content.Add(new StringContent("Kept all the same"), "f.name");
        content.Add(new StringContent("keep"), "then");
        var file = new ByteArrayContent(photo);
        file.Headers.ContentType = new MediaTypeHeaderValue("image/jpeg");
        content.Add(file, "photo", "shot.jpg");
        return content;
    }
}
