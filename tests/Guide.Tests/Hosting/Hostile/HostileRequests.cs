using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.RegularExpressions;
using Foreshore.Guide.Members;

namespace Foreshore.Guide.Hosting.Hostile;

/// <summary>What became of one request. Status 0: the site closed the connection.</summary>
internal sealed record HostileAnswer(int Number, Role By, string Method, string Address, int Status, string Sent);

/// <summary>
/// Sends what nobody should: addresses of the route table with values that are none, forms of the pages with fields spoiled, left out, doubled
/// and made up, headers that are no headers. The same seed asks the same; what a page offers meanwhile may differ by what was sent before.
/// </summary>
internal sealed partial class HostileRequests(HostileSite site, int seed) : IDisposable
{
    private const int RenewEvery = 400;
    private const int NeverAnswered = 599;
    private static readonly string[] OtherMethods = ["PUT", "DELETE", "PATCH", "HEAD", "OPTIONS", "TRACE", "PROPFIND", "GET", "POST"];
    private static readonly string[] ContentTypes = ["multipart/form-data", "multipart/form-data; boundary=", "application/json", "text/plain; charset=none", "application/x-www-form-urlencoded; charset=utf-7", "x", "application/x-www-form-urlencoded"];
    private static readonly string[] HeaderNames = ["Referer", "Cookie", "If-None-Match", "If-Modified-Since", "Range", "Accept", "Accept-Language", "Accept-Encoding", "X-Forwarded-For", "X-Forwarded-Proto", "Origin", "Sec-Fetch-Site", "User-Agent", "Authorization", "Expect"];

    private readonly Random random = new(seed);
    private readonly HttpClient client = new(new SocketsHttpHandler { UseCookies = false, AllowAutoRedirect = false, RequestHeaderEncodingSelector = (_, _) => Encoding.UTF8 })
    {
        BaseAddress = site.ClientOptions.BaseAddress,
        Timeout = TimeSpan.FromSeconds(30),
    };

    public async Task<IReadOnlyList<HostileAnswer>> SendAsync(int count)
    {
        List<HostileAnswer> answers = [];
        for (var number = 0; number < count; number++)
        {
            if (number % RenewEvery == 0)
                foreach (var each in site.Senders)
                    await site.RenewAsync(each);
            var who = site.Senders[random.Next(site.Senders.Length)];
            answers.Add(await (random.Next(10) switch
            {
                < 5 => AskAsync(number, who),
                < 9 => FillInAsync(number, who),
                _ => OddAsync(number, who),
            }));
        }

        return answers;
    }

    public void Dispose() => client.Dispose();

    /// <summary>An address to read, with values in its path and query.</summary>
    private Task<HostileAnswer> AskAsync(int number, Sender who)
    {
        var route = Pick<(string Pattern, string[] Methods)>([.. site.Routes.Where(route => route.Methods.Contains("GET"))]);
        return SendAsync(number, who, "GET", Address(route.Pattern, spoiled: random.Next(2) == 0) + Query(random.Next(4)), null, random.Next(4) == 0);
    }

    private Task<HostileAnswer> OddAsync(int number, Sender who) =>
        SendAsync(number, who, Pick(OtherMethods), (random.Next(3) == 0 ? "/" + HostileWords.Encoded(random) : Address(Pick(site.Routes).Pattern, spoiled: true)) + Query(random.Next(3)), null, true);

    /// <summary>A form that a page offers, or one made up for an address that takes posts.</summary>
    private async Task<HostileAnswer> FillInAsync(int number, Sender who)
    {
        var route = Pick<(string Pattern, string[] Methods)>([.. site.Routes.Where(route => route.Methods.Contains("POST"))]);
        var address = Address(route.Pattern, spoiled: random.Next(20) == 0);
        if (!who.Forms.TryGetValue(address, out var forms))
        {
            forms = [];
            if (route.Methods.Contains("GET") && !address.StartsWith("/sign-out", StringComparison.Ordinal))
            {
                using var asked = Request(who, "GET", address);
                using var page = await client.SendAsync(asked);
                Keep(who, page);
                if (page.StatusCode == HttpStatusCode.OK && page.Content.Headers.ContentType?.MediaType == "text/html")
                    forms = site.FormsOf(address, await page.Content.ReadAsStringAsync());
            }

            who.Forms[address] = forms;
        }

        var form = forms.Count > 0 && random.Next(12) > 0 ? Pick(forms) : new OfferedForm(address, false, [("Form.Id", ""), ("form-id", ""), ("f.place", ""), ("_handler", "form")]);
        return await SendAsync(number, who, "POST", form.Action.Contains('?', StringComparison.Ordinal) ? form.Action : form.Action + (random.Next(10) == 0 ? Query(1) : ""), Body(form), random.Next(10) == 0);
    }

    private HttpContent Body(OfferedForm form)
    {
        var fields = form.Fields.Select(field => (field.Name, Value: HostileWords.Encode(field.Value))).ToList();
        for (var spoiled = random.Next(1, 4); spoiled > 0; spoiled--)
        {
            var at = fields.Count == 0 ? -1 : random.Next(fields.Count);
            // A form without its token is refused before anything else is read: the others are after more.
            var isToken = at >= 0 && fields[at].Name is "__RequestVerificationToken" or "_handler" && random.Next(15) > 0;
            switch (random.Next(12))
            {
                case 0 when at >= 0 && !isToken: fields.RemoveAt(at); break;
                case 1: fields.Add((random.Next(2) == 0 ? $"f.{HostileWords.Encoded(random)}" : $"Form.{HostileWords.Encoded(random)}", HostileWords.Encoded(random))); break;
                case 2 when at >= 0: fields.Add((fields[at].Name, HostileWords.Encoded(random))); break;
                case 3 when random.Next(20) == 0: fields.AddRange(Enumerable.Range(0, 1_100).Select(n => (string.Create(CultureInfo.InvariantCulture, $"f.{n}"), "x"))); break;
                case 4 when random.Next(6) == 0: fields.Add((new string('n', 3_000), "x")); break;
                default: if (at >= 0 && !isToken) fields[at] = (fields[at].Name, HostileWords.Encoded(random)); break;
            }
        }

        if (random.Next(30) == 0)
            return new ByteArrayContent([.. Enumerable.Range(0, random.Next(200)).Select(_ => (byte)random.Next(256))]) { Headers = { { "Content-Type", Pick(ContentTypes) is { Length: > 1 } type && MediaTypeHeaderValue.TryParse(type, out _) ? type : "text/plain" } } };
        if (!form.IsMultipart && random.Next(5) > 0)
            return new StringContent(string.Join('&', fields.Select(field => $"{field.Name}={field.Value}")), Encoding.ASCII, "application/x-www-form-urlencoded");

        var parts = new MultipartFormDataContent("hostile");
        foreach (var (name, value) in fields)
            parts.Add(new ByteArrayContent(Encoding.UTF8.GetBytes(WebUtility.UrlDecode(value))), Quotable(name));
        if (random.Next(3) == 0)
            parts.Add(new ByteArrayContent([.. Enumerable.Range(0, 64).Select(_ => (byte)random.Next(256))]), "photos", Quotable(HostileWords.Text(random)) is { Length: > 0 } file ? file : "x");
        return parts;
    }

    private async Task<HostileAnswer> SendAsync(int number, Sender who, string method, string address, HttpContent? body, bool withHeaders)
    {
        using var request = Request(who, method, address);
        request.Content = body;
        if (withHeaders)
            for (var count = random.Next(1, 4); count > 0; count--)
                AddHeader(request);
        var sent = body is null ? "" : Encoding.Latin1.GetString(await body.ReadAsByteArrayAsync());
        try
        {
            using var answer = await client.SendAsync(request);
            Keep(who, answer);
            return new(number, who.Role, method, address, (int)answer.StatusCode, sent);
        }
        catch (HttpRequestException)
        {
            return new(number, who.Role, method, address, 0, sent);
        }
        catch (TaskCanceledException)
        {
            return new(number, who.Role, method, address, NeverAnswered, sent);
        }
    }

    private void AddHeader(HttpRequestMessage request)
    {
        if (random.Next(3) == 0)
        {
            request.Headers.TryAddWithoutValidation("Host", Pick(HostileWords.Hosts));
            return;
        }

        var name = Pick(HeaderNames);
        var value = name is "Referer" or "Origin" && random.Next(3) > 0 ? Pick(HostileWords.Addresses)
            : name == "Cookie" ? string.Join("; ", request.Headers.NonValidated["Cookie"], $"{Pick<string>(["foreshore-yours", "foreshore-theme", "foreshore-half-way", "foreshore-known", "foreshore-member"])}={HostileWords.Encoded(random)}")
            : HostileWords.Text(random);
        if (request.Headers.Contains(name))
            request.Headers.Remove(name);
        request.Headers.TryAddWithoutValidation(name, new string([.. value.Where(letter => letter is not ('\r' or '\n' or '\0') && !char.IsSurrogate(letter)).Take(3_000)]));
    }

    private HttpRequestMessage Request(Sender who, string method, string address)
    {
        var whole = new Uri(client.BaseAddress!.GetLeftPart(UriPartial.Authority) + address, new UriCreationOptions { DangerousDisablePathAndQueryCanonicalization = true });
        var request = new HttpRequestMessage(new HttpMethod(method), whole);
        request.Headers.TryAddWithoutValidation("Cookie", string.Join("; ", who.Cookies.Select(cookie => $"{cookie.Key}={cookie.Value}").DefaultIfEmpty("none=1")));
        return request;
    }

    /// <summary>Cookies as a browser would keep them; without its session somebody begins a new one.</summary>
    private static void Keep(Sender who, HttpResponseMessage answer)
    {
        foreach (var cookie in answer.Headers.TryGetValues("Set-Cookie", out var set) ? set : [])
        {
            var parts = cookie.Split(';')[0].Split('=', 2);
            if (parts[0] == "foreshore-form" && parts[1].Length > 0)
                who.Cookies[parts[0]] = parts[1];
        }
    }

    private string Address(string pattern, bool spoiled) => Parameter().Replace(pattern, match =>
    {
        var name = match.Groups["name"].Value.ToLowerInvariant();
        if ((spoiled && random.Next(2) == 0) || !site.Known.TryGetValue(name, out var known))
            return HostileWords.Encoded(random) is { Length: > 0 } word ? word : "x";
        // A number where the route wants one.
        string[] fitting = name != "id" ? known : match.Value.Contains(":int", StringComparison.Ordinal) ? [.. known.Where(id => id.Length < 4)] : match.Value.Contains(":guid", StringComparison.Ordinal) ? [.. known.Where(id => id.Length > 4)] : known;
        return Pick(fitting);
    });

    private string Query(int count) => count == 0 ? "" : "?" + string.Join('&', Enumerable.Range(0, count).Select(_ => $"{Pick<string>([.. site.QueryNames])}={HostileWords.Encoded(random)}"));

    private T Pick<T>(IReadOnlyList<T> of) => of[random.Next(of.Count)];

    private static string Quotable(string text)
    {
        var plain = string.Concat(WebUtility.UrlDecode(text).Where(letter => letter is > ' ' and < (char)127 and not '"'));
        return plain.Length > 0 ? plain : "x";
    }

    [GeneratedRegex(@"\{\*{0,2}(?<name>\w+)[^}]*\}")]
    private static partial Regex Parameter();
}
