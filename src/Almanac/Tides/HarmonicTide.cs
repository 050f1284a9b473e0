using System.Globalization;
using NodaTime;

namespace Foreshore.Almanac.Tides;

/// <summary>
/// The tide of a station from its harmonic constants: h(t) = z0 + Σ f·H·cos(V + u − G). f and u are taken afresh every ten
/// days and blended between, so that nothing jumps at a new year.
/// </summary>
public sealed class HarmonicTide : TideSource
{
    private static readonly Interval Argued = new(Instant.FromUtc(1900, 1, 1, 0, 0), Instant.FromUtc(2101, 1, 1, 0, 0));

    /// <summary>Takes the constants of one station.</summary>
    /// <param name="constants">Its constituents, each once; amplitudes of zero may stand there.</param>
    /// <param name="meanSeaLevelMetres">z0: mean sea level above the datum that heights shall be counted from, chart datum as a rule.</param>
    /// <param name="model">The nodal model the constants were fitted with.</param>
    /// <exception cref="TideInputException">No constants, one twice, or a value that is none.</exception>
    public HarmonicTide(IReadOnlyList<HarmonicConstant> constants, double meanSeaLevelMetres, NodalModel model)
    {
        ArgumentNullException.ThrowIfNull(constants);
        Check(constants, meanSeaLevelMetres);
        Constants = [.. constants];
        (MeanSeaLevelMetres, Model) = (meanSeaLevelMetres, model);
    }

    /// <summary>The constants as given.</summary>
    public IReadOnlyList<HarmonicConstant> Constants { get; }

    /// <summary>z0, metres above the datum heights are counted from.</summary>
    public double MeanSeaLevelMetres { get; }

    /// <inheritdoc/>
    public override NodalModel? Model { get; }

    /// <inheritdoc/>
    public override string Method => string.Create(CultureInfo.InvariantCulture, $"{Constants.Count} harmonic constituents, node corrections after {(Model == NodalModel.Iho ? "the IHO" : "Schureman")}");

    /// <summary>1900 to 2100: the years for which the mean longitudes hold.</summary>
    public override Interval Valid => Argued;

    private protected override TideCurve Curve(Instant from, Instant to) => HarmonicKnots.Over(this, from, to);

    private static void Check(IReadOnlyList<HarmonicConstant> constants, double meanSeaLevel)
    {
        if (constants.Count == 0)
            throw new TideInputException("A harmonic station needs at least one constituent, and none was given. Give a row for each: name, amplitude, phase.");
        if (!double.IsFinite(meanSeaLevel))
            throw new TideInputException("Mean sea level above chart datum is not a number, so no height can be counted from chart datum. Give metres.");

        var seen = new HashSet<Constituent>();
        foreach (var (constituent, amplitude, phase) in constants)
        {
            if (constituent is null)
                throw new TideInputException("A row has no constituent. Give its name, such as M2.");
            if (!double.IsFinite(amplitude) || !double.IsFinite(phase))
                throw new TideInputException($"{constituent.Name} has an amplitude or a phase that is not a number. Give metres and degrees, or leave the row out.");
            if (amplitude < 0)
                throw new TideInputException(string.Create(CultureInfo.InvariantCulture, $"{constituent.Name} has the amplitude {amplitude} m. An amplitude is never below zero: turn its sign and add 180 degrees to the phase if that is what is meant."));
            if (!seen.Add(constituent))
                throw new TideInputException($"{constituent.Name} stands there twice, perhaps under two names. Its share would be counted double: keep one of the rows.");
        }
    }
}
