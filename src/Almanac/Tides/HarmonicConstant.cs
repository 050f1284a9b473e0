namespace Foreshore.Almanac.Tides;

/// <summary>What one constituent amounts to at one place.</summary>
/// <param name="Constituent">Which.</param>
/// <param name="AmplitudeMetres">Half its range, metres; zero or above.</param>
/// <param name="PhaseDegrees">Phase lag G on the Greenwich meridian and the clock of UTC, degrees.</param>
public readonly record struct HarmonicConstant(Constituent Constituent, double AmplitudeMetres, double PhaseDegrees)
{
    /// <summary>By name, in any of the spellings that <see cref="Constituents"/> knows.</summary>
    /// <exception cref="UnknownConstituentException">The name is not known.</exception>
    public HarmonicConstant(string name, double amplitudeMetres, double phaseDegrees)
        : this(Constituents.Of(name), amplitudeMetres, phaseDegrees) { }
}
