using System.Text.RegularExpressions;
using Foreshore.Guide.Support;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace Foreshore.Guide.Elevation;

/// <summary>Class fixture: the demo guide on a real port of this machine, where limits and addresses are real, seen by an admin.</summary>
public sealed partial class LocalDemo(TestCluster cluster) : GuideHost(cluster, withDemo: true, onRealPort: true)
{
    public override async ValueTask InitializeAsync()
    {
        await base.InitializeAsync();
        await this.SignInAsync(Client, Members.Role.Admin);
    }

    /// <summary>The latest job of a stance once it has ended.</summary>
    public async Task<SkylineJob> EndedAsync(string slug)
    {
        await using var db = Open();
        var stance = await db.VantagePoints.AsNoTracking().SingleAsync(v => v.Slug == slug, TestContext.Current.CancellationToken);
        SkylineJob? job;
        do job = await db.LatestSkylineJobAsync(stance.Id, TestContext.Current.CancellationToken);
        while (job is null or { IsOpen: true });
        return job;
    }

    public async Task<HttpResponseMessage> UploadAsync(string name, byte[] bytes)
    {
        using var form = new MultipartFormDataContent
        {
            { new StringContent("add-elevation"), "_handler" },
            { new StringContent(await TokenAsync("/admin/elevation")), "__RequestVerificationToken" },
            { new ByteArrayContent(bytes), "file", name },
        };
        using var post = new HttpRequestMessage(HttpMethod.Post, "/admin/elevation") { Content = form };
        // What is too large is refused by its announced length, before all of it is sent.
        post.Headers.ExpectContinue = true;
        return await Client.SendAsync(post);
    }

    public async Task<HttpResponseMessage> PostAsync(string address, string handler, Dictionary<string, string> fields)
    {
        fields["_handler"] = handler;
        fields["__RequestVerificationToken"] = await TokenAsync(address);
        return await Client.PostAsync(address, new FormUrlEncodedContent(fields));
    }

    public async Task<string> TokenAsync(string address) =>
        Token().Match(await Client.GetStringAsync(address)).Groups[1].Value;

    [GeneratedRegex("name=\"__RequestVerificationToken\"[^>]*value=\"([^\"]+)\"")]
    private static partial Regex Token();
}
