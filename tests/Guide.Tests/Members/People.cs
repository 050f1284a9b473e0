using System.Net;
using AngleSharp;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using Foreshore.Guide.Support;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace Foreshore.Guide.Members;

/// <summary>One person's browser at the real site: keeps cookies, sends forms as the page wrote them.</summary>
/// <param name="guide">The site.</param>
/// <param name="from">The address they come from, for an <see cref="AddressedGuide"/>.</param>
public sealed class Person(GuideHost guide, string? from = null) : IDisposable
{
    public const string Password = "four grey seals asleep";

    private readonly HttpClient client = From(guide.CreateClient(new() { AllowAutoRedirect = false, HandleCookies = true }), from);

    /// <summary>The same browser, with its cookies, at another address.</summary>
    public Person MovedTo(string address)
    {
        From(client, address);
        return this;
    }

    private static HttpClient From(HttpClient client, string? from)
    {
        client.DefaultRequestHeaders.Remove(AddressedHost.Header);
        if (from is not null)
            client.DefaultRequestHeaders.Add(AddressedHost.Header, from);
        return client;
    }

    public Task<HttpResponseMessage> GetAsync(string address) => client.GetAsync(address);

    public Task<HttpResponseMessage> PostAsync(string address) => client.PostAsync(address, new FormUrlEncodedContent([]));

    public async Task<IDocument> ReadAsync(string address) => await DocumentAsync(await client.GetAsync(address));

    /// <summary>Fills in one form of a page, known by its name or by where it goes, and sends it with all its hidden fields.</summary>
    public async Task<HttpResponseMessage> SendAsync(string address, string form, params (string Name, string Value)[] typed)
    {
        return await AnswerAsync(address, await ReadAsync(address), form, typed);
    }

    /// <summary>Sends a form of a page that was opened before.</summary>
    public async Task<HttpResponseMessage> AnswerAsync(string address, IDocument page, string form, params (string Name, string Value)[] typed)
    {
        var sent = page.QuerySelector($"input[name=_handler][value='{form}']")?.Closest("form") ?? page.QuerySelector($"form[action='{form}']");
        Assert.True(sent is not null, $"{address} has no form {form}: {page.QuerySelector("h1")?.TextContent}");
        var fields = Successful(sent).Where(field => typed.All(each => each.Name != field.Key)).ToList();
        fields.AddRange(typed.Select(each => new KeyValuePair<string, string>(each.Name, each.Value)));
        return await client.PostAsync(form.StartsWith('/') ? form : address, new FormUrlEncodedContent(fields));
    }

    /// <summary>What a browser would send of a form that nobody has touched.</summary>
    private static IEnumerable<KeyValuePair<string, string>> Successful(IElement form)
    {
        foreach (var control in form.QuerySelectorAll("input[name], select[name], textarea[name]"))
        {
            var name = control.GetAttribute("name")!;
            if (control is IHtmlSelectElement select)
                yield return new(name, select.Value ?? "");
            else if (control is IHtmlTextAreaElement text)
                yield return new(name, text.Value ?? "");
            else if (control.GetAttribute("type") is not ("checkbox" or "radio" or "file") || control.HasAttribute("checked"))
                yield return new(name, control.GetAttribute("value") ?? "");
        }
    }

    public Task<HttpResponseMessage> SignInAsync(string email, string password = Password, string? back = null) =>
        SendAsync(back is null ? "/sign-in" : SignInAddress.For(back), "sign-in", ("Form.Email", email), ("Form.Password", password));

    /// <summary>Somebody of that role, signed in without the way there: its limits count by machine, and all tests share one.</summary>
    public Task BecomeAsync(Role role) => guide.SignInAsync(client, role);

    /// <summary>By an invitation, as everybody comes in.</summary>
    public async Task JoinAsync(string email, Role role = Role.Member, string name = "Ana Reed")
    {
        var token = await guide.Services.GetRequiredService<Invitations>().PrintAsync(role);
        var answer = await SendAsync(Invitations.PathOf(token), "join", ("Form.Email", email), ("Form.Name", name), ("Form.Password", Password));
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    /// <summary>Joins, signs in and sets up an authenticator; returns the recovery codes.</summary>
    public async Task<IReadOnlyList<string>> JoinWithCodeAsync(string email, Role role, string name = "Ana Reed")
    {
        await JoinAsync(email, role, name);
        await SignInAsync(email);
        return await SetUpCodeAsync();
    }

    public async Task<IReadOnlyList<string>> SetUpCodeAsync()
    {
        var key = (await ReadAsync(Admission.SecondStepPage)).QuerySelector("input[name='Form.Key']")!.GetAttribute("value")!;
        var set = await SendAsync(Admission.SecondStepPage, "authenticator", ("Form.Key", key), ("Form.Code", OneTimeCode.At(Base32.Bytes(key)!, guide.Clock.GetCurrentInstant())));
        return [.. (await DocumentAsync(set)).QuerySelectorAll("li code").Select(code => code.TextContent)];
    }

    /// <summary>Where an answer leads on this site; another site's whole address where it leads away.</summary>
    public static string? Next(HttpResponseMessage answer) => answer.Headers.Location is not { } next ? null
        : !next.IsAbsoluteUri ? next.ToString() : next.Authority == "localhost" ? next.PathAndQuery : next.ToString();

    public static async Task<IDocument> DocumentAsync(HttpResponseMessage answer) =>
        await BrowsingContext.New().OpenAsync(async response => response.Content(await answer.Content.ReadAsStringAsync()));

    public void Dispose() => client.Dispose();
}
