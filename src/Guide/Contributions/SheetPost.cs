namespace Foreshore.Guide.Contributions;

/// <summary>A sheet's fields as they come with a post. Several choices of one field are joined; fields of no sheet are left out later.</summary>
internal static class SheetPost
{
    public const string Prefix = "f.";

    public const string NoNumber = "The form came without its number, so it could not be told from one sent before. Nothing was stored. Load the page again, then send it.";

    public static IReadOnlyDictionary<string, string> Read(IFormCollection form) => form
        .Where(pair => pair.Key.StartsWith(Prefix, StringComparison.Ordinal))
        .ToDictionary(pair => pair.Key[Prefix.Length..], pair => string.Join(' ', pair.Value.Where(text => !string.IsNullOrEmpty(text))));

    /// <summary>What a form shows: what was just typed, else what the draft holds, else what the guide says.</summary>
    public static IReadOnlyDictionary<string, string> Over(IReadOnlyDictionary<string, string> held, IReadOnlyDictionary<string, string>? draft, IFormCollection? form)
    {
        var shown = new Dictionary<string, string>(held);
        foreach (var (name, text) in (form is not null ? Read(form) : draft) ?? new Dictionary<string, string>())
            shown[name] = text;
        return shown;
    }

    /// <summary>A form was sent. It must be on the page to be answered, even where the page would no longer offer it.</summary>
    public static bool IsPosted(this HttpContext http) => HttpMethods.IsPost(http.Request.Method);

    /// <summary>The name of the form that was sent.</summary>
    public static string? PostedTo(this HttpContext http) => http.IsPosted() && http.Request.HasFormContentType ? http.Request.Form["_handler"].ToString() : null;

    /// <summary>The number that the form was given when it was first shown, so that sending it twice makes one.</summary>
    public static Guid FormId(IFormCollection form) => Guid.TryParse(form["form-id"], out var id) ? id : Guid.Empty;
}

/// <summary>Ids of parts of a page, made of their headings.</summary>
internal static class Ids
{
    public static string Of(string heading) => Locations.SearchWords.Fold(heading).Replace(' ', '-');
}
