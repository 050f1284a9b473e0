namespace Foreshore.Almanac.Tides;

/// <summary>
/// How amplitude and phase of a constituent are corrected for the moon's node and perigee, which go round in 18.6 and
/// 8.85 years. Constants fitted with one model are predicted with the same: the two differ by 4 to 27 mm.
/// </summary>
public enum NodalModel
{
    /// <summary>
    /// P. Schureman, Manual of Harmonic Analysis and Prediction of Tides, US Coast and Geodetic Survey SP 98 (1940, rev. 1958):
    /// closed formulas of the obliquity of the moon's orbit. The model of the American tables.
    /// </summary>
    Schureman,

    /// <summary>
    /// Series in the node and perigee of the International Hydrographic Organization's Tides, Water Level and Currents
    /// Working Group, Standard Constituent List. The model of most other offices.
    /// </summary>
    Iho,
}
