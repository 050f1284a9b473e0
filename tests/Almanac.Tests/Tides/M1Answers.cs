using System.Numerics;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Tides;

/// <summary>
/// M1 as a station's own O1 and K1 ask for it: the sea answers waves of nearly one speed alike (W. Munk, D. Cartwright 1966), and M1 lies
/// between the two. True of open coasts; rivers make an M1 of their own.
/// </summary>
internal static class M1Answers
{
    // A. T. Doodson (1921), coefficients of the tide-raising potential, from memory: O1, K1, and of M1 the line 155.655 over the
    // 1.5 that it has in the formula of f and u.
    private const double PullOfO1 = 0.37689, PullOfK1 = 0.53050, PullOfM1 = 0.02964 / 1.5;

    private const double LeastMetres = 0.05, Radian = Math.PI / 180;

    private static readonly AstronomicalArguments[] NineteenYears =
        [.. Enumerable.Range(0, 2000).Select(step => AstronomicalArguments.At(JulianDay.DaysFromJ2000(Instant.FromUtc(2020, 1, 1, 0, 0)) + 3.47 * step))];

    private static readonly Dictionary<string, Complex[]> Turns = [];

    internal static IEnumerable<string> Stations(string gauges = "") => StationTides.HarmonicIds("ticon/").Where(id => id.EndsWith(gauges, StringComparison.Ordinal));

    /// <summary>The station's M1 as stored; null where it has none.</summary>
    internal static HarmonicConstant? M1(string id)
    {
        var wave = StationTides.Waves(id).FirstOrDefault(one => one.Constituent.Name.StartsWith("M1_TICON", StringComparison.Ordinal));
        return wave.Constituent is null ? null : wave;
    }

    /// <summary>M1 expected, as amplitude and phase of a wave that counts from number 155.555 like O1 and K1; null where they are small or out of step.</summary>
    internal static Complex? Expected(string id)
    {
        var waves = StationTides.Waves(id).ToDictionary(one => one.Constituent.Name);
        if (!waves.TryGetValue("O1", out var first) || !waves.TryGetValue("K1", out var second) || Math.Min(first.AmplitudeMetres, second.AmplitudeMetres) < LeastMetres) return null;
        Complex o1 = Arrow(first) / PullOfO1, k1 = Arrow(second) / PullOfK1;
        if (Math.Abs((o1 / k1).Phase) > 60 * Radian || (o1 / k1).Magnitude is < 1 / 1.6 or > 1.6) return null;
        var speed = Constituents.Of("O1").SpeedDegreesPerHour;
        var share = (Constituents.Of("NO1").SpeedDegreesPerHour - speed) / (Constituents.Of("K1").SpeedDegreesPerHour - speed);
        return PullOfM1 * ((1 - share) * o1 + share * k1);
    }

    /// <summary>How far the wave, read by some name of ours, comes from the one expected in 19 years, metres.</summary>
    internal static double WorstMetres(HarmonicConstant wave, Complex expected, string name)
    {
        // The pull is highest with its M1 at τ − 90°; M1_TICON has the same f and u, and counts from τ − 180°.
        var quarter = Complex.FromPolarCoordinates(1, 90 * Radian);
        return Of(name).Zip(Of("M1_TICON")).Max(pair => (pair.First * Arrow(wave) - pair.Second * quarter * expected).Magnitude);
    }

    internal static Complex Arrow(HarmonicConstant one) => Complex.FromPolarCoordinates(one.AmplitudeMetres, -one.PhaseDegrees * Radian);

    private static Complex[] Of(string name)
    {
        lock (Turns)
        {
            if (Turns.TryGetValue(name, out var turns)) return turns;
            return Turns[name] = [.. NineteenYears.Select(at =>
            {
                var node = NodeFactors.At(NodalModel.Iho, at).Of(Constituents.Of(name));
                return Complex.FromPolarCoordinates(node.F, at.Of(Constituents.Of(name).Doodson) * Radian + node.U);
            })];
        }
    }
}
