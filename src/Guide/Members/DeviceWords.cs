namespace Foreshore.Guide.Members;

/// <summary>Browser and system as people call them, from what the browser says of itself; enough to know one's own devices by.</summary>
internal static class DeviceWords
{
    private static readonly (string Mark, string Word)[] Browsers =
        [("Edg", "Edge"), ("OPR/", "Opera"), ("Firefox/", "Firefox"), ("FxiOS", "Firefox"), ("Chromium", "Chromium"), ("Chrome/", "Chrome"), ("CriOS", "Chrome"), ("Safari/", "Safari")];

    private static readonly (string Mark, string Word)[] Systems =
        [("iPhone", "iPhone"), ("iPad", "iPad"), ("Android", "Android"), ("Windows", "Windows"), ("Mac OS X", "Mac"), ("CrOS", "Chromebook"), ("Linux", "Linux")];

    public static string Of(string? userAgent) => $"{Found(Browsers, userAgent) ?? "A browser"} on {Found(Systems, userAgent) ?? "an unknown system"}";

    private static string? Found((string Mark, string Word)[] known, string? text) =>
        known.FirstOrDefault(one => text?.Contains(one.Mark, StringComparison.Ordinal) == true).Word;
}
