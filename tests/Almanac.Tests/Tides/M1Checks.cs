using System.Numerics;
using Foreshore.Almanac.Checks;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Tides;

/// <summary>Which wave the M1 of TICON is: held against NOAA's M1 in the same water.</summary>
internal sealed class M1Checks : IChecks
{
    private const int RoundOfPerigeeYears = 9;
    private const double Radian = Math.PI / 180;

    private static readonly AstronomicalArguments[] NineteenYears =
        [.. Enumerable.Range(0, 2000).Select(step => AstronomicalArguments.At(JulianDay.DaysFromJ2000(Instant.FromUtc(2020, 1, 1, 0, 0)) + 3.47 * step))];

    public IEnumerable<Check> All()
    {
        yield return Check.Against(PublishedTable.Read("Tides/m1-pairs.csv"), "Tide: M1 of TICON beside NOAA's M1", (log, row) =>
            log.Compare(0, Error(row, NameOf(row)), IsShort(row) ? 1.1 : 0.7));
    }

    /// <summary>The name that tools/tides/make.mjs gives the wave.</summary>
    internal static string NameOf(PublishedRow row) => IsShort(row) ? "M1_TICON_SHORT" : "M1_TICON";

    internal static bool IsShort(PublishedRow row) => row.Number("lastYear") - row.Number("firstYear") < RoundOfPerigeeYears;

    /// <summary>Rms of TICON's wave, read as one of ours, less NOAA's, over the rms of NOAA's.</summary>
    internal static double Error(PublishedRow row, string name)
    {
        double difference = 0, whole = 0;
        foreach (var at in NineteenYears)
        {
            var noaa = Arrow("M1", NodalModel.Schureman, at, row.Number("noaaMetres"), row.Number("noaaPhase"));
            var ticon = Arrow(name, NodalModel.Iho, at, row.Number("ticonMetres"), row.Number("ticonPhase"));
            difference += Square(ticon - noaa);
            whole += Square(noaa);
        }

        return Math.Sqrt(difference / whole);

        static double Square(Complex arrow) => arrow.Real * arrow.Real + arrow.Imaginary * arrow.Imaginary;
    }

    private static Complex Arrow(string name, NodalModel model, AstronomicalArguments at, double metres, double phase)
    {
        var node = NodeFactors.At(model, at).Of(Constituents.Of(name));
        return Complex.FromPolarCoordinates(node.F * metres, (at.Of(Constituents.Of(name).Doodson) + node.UDegrees - phase) * Radian);
    }
}
