using System.Net;
using System.Net.Http.Headers;
using AngleSharp.Dom;
using Foreshore.Guide.Contributions;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Members;
using Foreshore.Guide.Support;
using Microsoft.AspNetCore.Mvc.Testing.Handlers;
using Xunit;

namespace Foreshore.Guide.Photos;

/// <summary>Somebody signed in, with a browser that keeps cookies.</summary>
internal sealed class SignedInClient(HttpMessageHandler handler, Guid id) : HttpClient(handler)
{
    public Guid Id { get; } = id;
}

/// <summary>Sends forms with photos as a browser without scripts does.</summary>
internal static class PhotoSender
{
    public static (string, string)[] Typed(string name, string then, string place = "long-slip") =>
        [.. NewStanceTests.Typed.Where(pair => pair.Key is not ("name" or "place")).SelectMany(pair => pair.Key == "picture-wanted" ? pair.Value.Split(' ').Select(light => ("f." + pair.Key, light)) : [("f." + pair.Key, pair.Value)]), ("f.name", name), ("f.place", place), ("then", then)];

    public static (string, string)[] Hazard(string place, int severity, string text) =>
        [("f.place", place), ("f.kind", nameof(HazardKind.Rockfall)), ("f.severity", $"{severity}"), ("f.text", text)];

    public static async Task AssertSeenAsync(string photo, params (HttpClient Reader, bool Sees)[] readers)
    {
        foreach (var (reader, sees) in readers)
            foreach (var address in (string[])[photo, photo + "/small"])
                Assert.Equal(sees ? HttpStatusCode.OK : HttpStatusCode.NotFound, (await reader.GetAsync(address, TestContext.Current.CancellationToken)).StatusCode);
    }

    public static async Task<IDocument> ReadAsync(HttpClient client, string address) => await Person.DocumentAsync(await client.GetAsync(address, TestContext.Current.CancellationToken));

    /// <summary>A form with files, sent as a browser without scripts does.</summary>
    public static async Task<HttpResponseMessage> SendAsync(HttpClient client, string address, string form, (string Name, string Value)[] typed, byte[][]? photos = null)
    {
        var page = await ReadAsync(client, address);
        var element = page.QuerySelector($"input[name=_handler][value={form}]")?.Closest("form");
        Assert.True(element is not null, $"{address} has no form {form}: {page.QuerySelector("h1")?.TextContent}");
        using var content = new MultipartFormDataContent();
        foreach (var hidden in element.QuerySelectorAll("input[type=hidden]").Where(input => typed.All(each => each.Name != input.GetAttribute("name"))))
            content.Add(new StringContent(hidden.GetAttribute("value") ?? ""), hidden.GetAttribute("name")!);
        foreach (var (name, value) in typed)
            content.Add(new StringContent(value), name);
        foreach (var (photo, number) in (photos ?? []).Select((photo, i) => (photo, i + 1)))
        {
            Assert.Equal("multipart/form-data", element.GetAttribute("enctype"));
            var file = new ByteArrayContent(photo);
            file.Headers.ContentType = new MediaTypeHeaderValue("image/jpeg");
            content.Add(file, "photo", $"shot-{number}.jpg");
        }
        return await client.PostAsync(address, content, TestContext.Current.CancellationToken);
    }

    public static async Task<string> ExportAsync(HttpClient client)
    {
        var form = (await ReadAsync(client, "/account")).QuerySelector($"form[action='{OwnExport.Address}']")!;
        using var content = new FormUrlEncodedContent(form.QuerySelectorAll("input[type=hidden]").Select(input => KeyValuePair.Create(input.GetAttribute("name")!, input.GetAttribute("value") ?? "")));
        return await (await client.PostAsync(OwnExport.Address, content, TestContext.Current.CancellationToken)).Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
    }

    public static async Task<SignedInClient> SomebodyAsync(this GuideHost guide, Role role, string name = "Ina Ruiz")
    {
        var (id, cookie, value) = await guide.SignInAsync(role, name);
        var client = new SignedInClient(new CookieContainerHandler { InnerHandler = guide.Server.CreateHandler() }, id) { BaseAddress = new Uri("http://localhost") };
        client.DefaultRequestHeaders.Add("Cookie", $"{cookie}={value}");
        return client;
    }
}
