using System.Text.RegularExpressions;

namespace Foreshore.Guide.Members;

internal static partial class ActWords
{
    /// <summary>The acts are named so that their names read as words: <c>RoleChanged</c>, role changed.</summary>
    public static string Of(Act act) => Capital().Replace(act.ToString(), " $0").Trim().ToLowerInvariant();

    [GeneratedRegex("[A-Z]")]
    private static partial Regex Capital();
}
