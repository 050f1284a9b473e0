using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Access;

/// <summary>Permission is a dated letter: who, what for, until.</summary>
public sealed class PermissionLetter
{
    private PermissionLetter() { }

    public PermissionLetter(string grantedBy, string purpose, LocalDate dated, LocalDate? until, Leg? leg = null, string? link = null)
    {
        GrantedBy = Require.Text(grantedBy, 160, "Who gave permission");
        Purpose = Require.Text(purpose, 400, "What the permission is for");
        Require.That(until is null || until >= dated, "The letter ends before it was written. Check the two dates.");
        (Dated, Until, Leg) = (dated, until, leg);
        Link = Require.LinkOrNull(link, "The link to the letter");
    }

    public int Id { get; private set; }

    public int LocationId { get; private set; }

    public int? LegId { get; private set; }

    /// <summary>The leg it opens, where it is about one.</summary>
    public Leg? Leg { get; private set; }

    public string GrantedBy { get; private set; } = "";

    public string Purpose { get; private set; } = "";

    public LocalDate Dated { get; private set; }

    /// <summary>Null: until withdrawn.</summary>
    public LocalDate? Until { get; private set; }

    public string? Link { get; private set; }

    public uint Version { get; private set; }

    public bool HoldsOn(LocalDate on) => on >= Dated && (Until is null || on <= Until);
}
