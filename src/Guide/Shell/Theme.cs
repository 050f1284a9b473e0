namespace Foreshore.Guide.Shell;

/// <summary>
/// How the pages are coloured. Without a choice they follow the device, between paper and slate; lamp is only ever chosen.
/// </summary>
/// <param name="Name">As in the style sheet and the cookie.</param>
/// <param name="Label">As on the button.</param>
/// <param name="Meaning">What it is for.</param>
/// <param name="Ground">The style sheet's ground, for the browser's own bars: a white bar would undo lamp.</param>
public sealed record Theme(string Name, string Label, string Meaning, string Ground)
{
    public const string CookieName = "foreshore-theme";
    public const string LampNotice = "For reading, not walking – use white light on rock and near edges.";

    /// <summary>Not a theme but the wish to have none: the cookie goes.</summary>
    public const string AsDevice = "device";

    public static readonly Theme Paper = new("paper", "Paper", "Ink on a light ground, for daylight.", "#F7F5EF");
    public static readonly Theme Slate = new("slate", "Slate", "Light ink on a dark ground, for indoors in the evening.", "#171F22");
    public static readonly Theme Lamp = new("lamp", "Lamp", "Red alone on black, so that eyes used to the dark stay used to it.", "#000000");

    public static readonly IReadOnlyList<Theme> All = [Paper, Slate, Lamp];

    public static Theme? Named(string? name) => All.FirstOrDefault(theme => theme.Name == name);

    public static Theme? From(HttpRequest request) => Named(request.Cookies[CookieName]);
}
