using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Hazards;

public enum HazardKind { Waves, BoatWash, Slip, Fall, Rockfall, CutOff, SoftGround, ColdWater, Path, Animals, Traffic, Firing, Other }

/// <summary>How bad one kind of hazard is at a place or a vantage point; last confirmed by whom and when is in <see cref="Check"/>.</summary>
public sealed class HazardRating
{
    private HazardRating() { }

    public HazardRating(HazardKind kind, int? severity, FactCheck check, VantagePoint? vantagePoint = null)
    {
        (Kind, VantagePoint) = (kind, vantagePoint);
        Confirm(severity, check);
    }

    public int Id { get; private set; }

    public int LocationId { get; private set; }

    public int? VantagePointId { get; private set; }

    /// <summary>Null: the whole place.</summary>
    public VantagePoint? VantagePoint { get; private set; }

    public HazardKind Kind { get; private set; }

    /// <summary>Null: not rated. 0: none known on the day it was checked. 4: severe.</summary>
    public int? Severity { get; private set; }

    public FactCheck Check { get; private set; } = null!;

    public uint Version { get; private set; }

    public void Confirm(int? severity, FactCheck check)
    {
        Require.That(severity is null or (>= 0 and <= 4), $"The rating is {severity}; use 0 (none known) to 4 (severe), or leave it unrated.");
        (Severity, Check) = (severity, check);
    }

    public bool NeedsChecking(LocalDate on) => Check.NeedsChecking(on, FactCheck.HazardPeriod);
}
