using System.Net;
using System.Net.Http.Headers;
using System.Text.RegularExpressions;
using Foreshore.Guide.Members;

namespace Foreshore.Trials;

/// <summary>One member after another who keeps drafts through the page, as the form in a browser does.</summary>
internal sealed partial class Writer(SiteProcess site, People people, Journal journal, int number, int seed)
{
    /// <summary>A member may have fifty drafts; then the next one writes.</summary>
    private const int DraftsOfOne = 48;
    private const string Kept = "Kept as a draft.";
    private readonly Random random = new(seed * 1000 + number);

    /// <summary>How long the longest answer took.</summary>
    public TimeSpan Longest { get; private set; }

    public HashSet<int> Answers { get; } = [];

    public async Task WriteAsync(CancellationToken enough, byte[]? photo = null, int most = int.MaxValue)
    {
        var written = 0;
        while (!enough.IsCancellationRequested && written < most)
        {
            if (await people.CookieAsync(Role.Member, enough) is not { } cookie)
                return;
            using var browser = Browser(cookie);
            string? token = null;
            for (var draft = 0; draft < DraftsOfOne && !enough.IsCancellationRequested && written < most;)
            {
                try
                {
                    token ??= await TokenAsync(browser, enough);
                    if (await KeepAsync(browser, token, photo, enough))
                        (draft, written) = (draft + 1, written + 1);
                    else
                        await Task.Delay(random.Next(100, 300), enough);
                }
                catch (Exception fault) when (fault is HttpRequestException or IOException or TaskCanceledException or InvalidOperationException)
                {
                    if (enough.IsCancellationRequested)
                        return;
                    journal.Refuse();
                    await Task.Delay(random.Next(50, 250), CancellationToken.None);
                }
            }
        }
    }

    private HttpClient Browser(string session)
    {
        var cookies = new CookieContainer();
        cookies.Add(site.Address, new Cookie("foreshore-member", session));
        var browser = new HttpClient(new SocketsHttpHandler { CookieContainer = cookies, AllowAutoRedirect = false }) { BaseAddress = site.Address, Timeout = TimeSpan.FromMinutes(2) };
        // Each a client of its own, as if through a proxy: limits are for each of them.
        browser.DefaultRequestHeaders.Add("X-Forwarded-For", $"192.0.2.{number + 1}");
        return browser;
    }

    private async Task<string> TokenAsync(HttpClient browser, CancellationToken enough)
    {
        var page = await browser.GetStringAsync($"/contribute/stance/{NewNumber()}", enough);
        return Token().Match(page) is { Success: true } found ? WebUtility.HtmlDecode(found.Groups[1].Value) : throw new InvalidOperationException("The page has no form.");
    }

    private async Task<bool> KeepAsync(HttpClient browser, string token, byte[]? photo, CancellationToken enough)
    {
        var (draft, text) = (NewNumber(), $"writer {number} writes {random.NextInt64():x16}");
        using var form = new MultipartFormDataContent
        {
            { new StringContent("stance"), "_handler" }, { new StringContent(token), "__RequestVerificationToken" },
            { new StringContent(text), "f.summary" }, { new StringContent("keep"), "then" },
        };
        if (photo is not null)
        {
            var file = new ByteArrayContent(photo);
            file.Headers.ContentType = new MediaTypeHeaderValue("image/jpeg");
            form.Add(file, "photo", "photo.jpg");
        }

        var since = System.Diagnostics.Stopwatch.StartNew();
        // Not cut off at the end: what the site has stored it shall be able to say.
        using var answer = await browser.PostAsync(new Uri($"/contribute/stance/{draft}", UriKind.Relative), form, CancellationToken.None);
        var page = await answer.Content.ReadAsStringAsync(CancellationToken.None);
        Longest = since.Elapsed > Longest ? since.Elapsed : Longest;
        Answers.Add((int)answer.StatusCode);
        if (answer.StatusCode == HttpStatusCode.OK && page.Contains(Kept, StringComparison.Ordinal))
        {
            journal.Keep(draft, text);
            return true;
        }

        journal.Refuse();
        return false;
    }

    private Guid NewNumber()
    {
        var bytes = new byte[16];
        random.NextBytes(bytes);
        return new Guid(bytes);
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex Token();
}
