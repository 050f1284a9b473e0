namespace Foreshore.Guide.Hosting;

/// <summary><c>foreshore healthy</c>: the container asks itself, since its image holds no other program that could.</summary>
internal static class SelfCheck
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(4);

    public static async Task<bool> IsHealthyAsync(IConfiguration settings)
    {
        var address = settings["urls"]?.Split(';')[0] ?? $"http://127.0.0.1:{settings["http_ports"]?.Split(';')[0] ?? "5080"}";
        using var visitor = new HttpClient { Timeout = Patience };
        using var question = new HttpRequestMessage(HttpMethod.Get, new Uri(new Uri(Reachable(address)), "/health"));
        question.Headers.Host = OwnName(settings);
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

    /// <summary>An address that the site listens at, as this machine reaches it.</summary>
    internal static string Reachable(string address) =>
        address.Replace("*", "127.0.0.1", StringComparison.Ordinal).Replace("+", "127.0.0.1", StringComparison.Ordinal)
            .Replace("[::]", "127.0.0.1", StringComparison.Ordinal).Replace("0.0.0.0", "127.0.0.1", StringComparison.Ordinal);

    /// <summary>The site answers to its own names only.</summary>
    internal static string OwnName(IConfiguration settings)
    {
        var name = settings["AllowedHosts"]?.Split(';')[0];
        return name is null or "*" ? "localhost" : name.Replace("*", "www", StringComparison.Ordinal);
    }
}
