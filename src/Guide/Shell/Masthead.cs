using Foreshore.Almanac.Light;

namespace Foreshore.Guide.Shell;

/// <summary>What stands at the head of every page: whose guide it is and, first of all, whether it is a demo.</summary>
/// <param name="ClubName">The club's name, as it signs.</param>
/// <param name="DemoLine">Printed before anything else; <c>null</c> for a club's own guide.</param>
public sealed record Masthead(string ClubName, string? DemoLine)
{
    /// <summary>The hours the club's members go out unless a reader says otherwise.</summary>
    public HoursOut Hours { get; init; } = HoursOut.Unrestricted;

    /// <summary>What this guide is and who keeps it, in the club's words; empty where it has said nothing.</summary>
    public string Introduction { get; init; } = "";

    /// <summary>False closes the guide to whoever is not signed in.</summary>
    public bool VisitorsMayRead { get; init; } = true;

    public static readonly Masthead Unnamed = new("Coast guide", null);
}
