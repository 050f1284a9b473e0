using Foreshore.Guide.Locations;

namespace Foreshore.Guide.Access;

/// <summary>What one sleeps in.</summary>
public enum Sleeper { Vehicle, Motorhome, Tent }

/// <summary>NoRuleFound is not permission, and the page says so.</summary>
public enum OvernightStanding { Unknown, Allowed, NoRuleFound, Forbidden }

/// <summary>Whether one may stay overnight; date checked and link are in <see cref="Check"/>.</summary>
public sealed class OvernightRule
{
    private OvernightRule() { }

    public OvernightRule(Sleeper sleeper, OvernightStanding standing, FactCheck check, string? grantedBy = null, ParkingArea? parkingArea = null)
    {
        (Sleeper, ParkingArea) = (sleeper, parkingArea);
        Stand(standing, check, grantedBy);
    }

    public int Id { get; private set; }

    public int LocationId { get; private set; }

    public int? ParkingAreaId { get; private set; }

    /// <summary>The parking area it is about; null: the whole place.</summary>
    public ParkingArea? ParkingArea { get; private set; }

    public Sleeper Sleeper { get; private set; }

    public OvernightStanding Standing { get; private set; }

    /// <summary>By whom, in writing or on a sign.</summary>
    public string? GrantedBy { get; private set; }

    public FactCheck Check { get; private set; } = null!;

    public uint Version { get; private set; }

    public OvernightRule Stand(OvernightStanding standing, FactCheck check, string? grantedBy)
    {
        Require.That(standing != OvernightStanding.Allowed || !string.IsNullOrWhiteSpace(grantedBy),
            "Allowed by whom? Name the sign or the letter that allows it; without one choose \"no rule found\".");
        (Standing, Check) = (standing, check);
        GrantedBy = Require.TextOrNull(grantedBy, 200, "Who allows it");
        return this;
    }
}
