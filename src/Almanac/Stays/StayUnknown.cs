namespace Foreshore.Almanac.Stays;

/// <summary>What nobody has recorded, or no value is there for: while one is missing a stance is not judged.</summary>
public enum StayUnknown
{
    /// <summary>The tide: no station, or one that does not answer for the time.</summary>
    Tide,

    /// <summary>Water comes to the stance, and nobody has recorded the highest tide at which it can be used.</summary>
    LedgeLimit,

    /// <summary>Water comes to the stance, and nobody has recorded whether the way back is cut off.</summary>
    CutOff,

    /// <summary>Nobody has timed the way in.</summary>
    WalkIn,

    /// <summary>Nobody has timed the way back.</summary>
    WalkOut,

    /// <summary>Waves can come to a crossing, and nothing is known of the sea: it closes earlier than the still water says.</summary>
    WavesAtCrossing,

    /// <summary>Springs or neaps are wished for, and the station's yearly ranges are not known.</summary>
    Ranges,

    /// <summary>The ground's height is not recorded.</summary>
    GroundHeight,
}
