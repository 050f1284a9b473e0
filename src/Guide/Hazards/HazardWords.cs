namespace Foreshore.Guide.Hazards;

/// <summary>How the pages name hazards and say how bad they are. Not rated is said, never taken for none.</summary>
public static class HazardWords
{
    public static string Words(this HazardKind kind) => kind switch
    {
        HazardKind.Waves => "waves",
        HazardKind.BoatWash => "boat wash",
        HazardKind.Slip => "slipping",
        HazardKind.Fall => "falling",
        HazardKind.Rockfall => "rockfall",
        HazardKind.CutOff => "cut off by the tide",
        HazardKind.SoftGround => "soft ground",
        HazardKind.ColdWater => "cold water, or no way out of it",
        HazardKind.Path => "the path",
        HazardKind.Animals => "animals",
        HazardKind.Traffic => "traffic",
        HazardKind.Firing => "firing or blasting",
        HazardKind.Other => "other",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such kind of hazard."),
    };

    public static string Words(this NearMissHarm harm) => harm switch
    {
        NearMissHarm.WaterReachedSomebody => "water reached somebody: closes the spot",
        NearMissHarm.SomebodyFell => "somebody fell: closes the spot",
        NearMissHarm.WayWasCut => "the way was cut: closes the spot",
        NearMissHarm.None => "none of these: a note, the spot stays open",
        _ => throw new ArgumentOutOfRangeException(nameof(harm), harm, "No such outcome."),
    };

    public static string SeverityWords(int? severity) => severity switch
    {
        null => "not rated",
        0 => "none known",
        1 => "slight",
        2 => "moderate",
        3 => "serious",
        4 => "severe",
        _ => throw new ArgumentOutOfRangeException(nameof(severity), severity, "Severity runs from 0 to 4."),
    };

    public static string Words(this HazardState state) => state switch
    {
        HazardState.Reported => "reported, not yet checked",
        HazardState.Confirmed => "confirmed",
        HazardState.Rejected => "rejected",
        HazardState.Ended => "ended",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, "No such state."),
    };
}
