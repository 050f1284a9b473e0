namespace Foreshore.Guide.Hosting;

/// <summary><c>foreshore healthy</c>: the container asks itself, since its image holds no other program that could.</summary>
internal static class SelfCheck
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(4);

    public static async Task<bool> IsHealthyAsync(IConfiguration settings)
    {
        var address = settings["urls"]?.Split(';')[0] ?? $"http://127.0.0.1:{settings["http_ports"]?.Split(';')[0] ?? "5080"}";
        using var visitor = new HttpClient { Timeout = Patience };
        using var question = new HttpRequestMessage(HttpMethod.Get, new Uri(new Uri(address.Replace("*", "127.0.0.1", StringComparison.Ordinal)), "/health"));
        // The site answers to its own names only.
        var name = settings["AllowedHosts"]?.Split(';')[0];
        question.Headers.Host = name is null or "*" ? "localhost" : name.Replace("*", "www", StringComparison.Ordinal);
        try
        {
            using var answer = await visitor.SendAsync(question);
            return answer.IsSuccessStatusCode;
        }
        catch (Exception fault) when (fault is HttpRequestException or TaskCanceledException)
        {
            Console.Error.WriteLine($"foreshore: {fault.Message}");
            return false;
        }
    }
}
