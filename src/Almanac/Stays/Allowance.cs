namespace Foreshore.Almanac.Stays;

/// <summary>
/// What is taken off the tide limit of a ledge and off every cut-off and crossing, since the tide that comes is not the tide
/// that was computed.
/// </summary>
/// <param name="TideMetres">On still water, 0.3 or more.</param>
/// <param name="WaveMetres">On top of that at a crossing that waves can reach; null: nothing is known of the sea.</param>
public readonly record struct Allowance(double TideMetres, double? WaveMetres)
{
    /// <summary>The least on still water, metres: a judgement, no source.</summary>
    public const double LeastMetres = 0.3;

    /// <summary>With a strong wind onshore, metres: a judgement, no source.</summary>
    public const double OnshoreWindMetres = 0.5;

    /// <summary>A wind is strong above this, m/s: a judgement, no source.</summary>
    public const double StrongWindMetresPerSecond = 15;

    /// <summary>
    /// Sea level rises so much for each hPa the air presses less: 100 Pa over sea water's weight, 0.99 cm, taken as 1 (National
    /// Oceanography Centre: about 1 cm for 1 mb).
    /// </summary>
    public const double MetresPerHectopascal = 0.01;

    /// <summary>The usual one, where neither weather nor sea is known: 0.3 m, and no word on waves.</summary>
    public static readonly Allowance Usual = new(LeastMetres, null);

    /// <summary>The largest of what is known; what is not known adds nothing.</summary>
    /// <param name="hectopascalsBelowMean">Air pressure below the local long-term mean; null: unknown.</param>
    /// <param name="surgeMetres">An official surge forecast as entered; null: none.</param>
    /// <param name="onshoreWindMetresPerSecond">Wind onto the shore; null: unknown.</param>
    /// <param name="significantWaveMetres">Significant wave height; null: unknown. Half of it counts.</param>
    public static Allowance From(double? hectopascalsBelowMean, double? surgeMetres, double? onshoreWindMetresPerSecond, double? significantWaveMetres)
    {
        var tide = Math.Max(LeastMetres, Math.Max(hectopascalsBelowMean * MetresPerHectopascal ?? 0, surgeMetres ?? 0));
        if (onshoreWindMetresPerSecond > StrongWindMetresPerSecond) tide = Math.Max(tide, OnshoreWindMetres);
        return new Allowance(tide, significantWaveMetres / 2);
    }
}
