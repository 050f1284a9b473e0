using Foreshore.Almanac.Moon;

namespace Foreshore.Almanac.Tides;

/// <summary>
/// 3N2 and 3L2, which no published list at hand holds both of. That 3L2 is 265.555 at 29.5331208 degrees an hour is what the
/// manual of TICON says (as openwatersio/neaps quotes it, pull request 253, 6 March 2026); of 3N2 it says there 257.555, the
/// number of MKS2. So both are looked for in the moon's own pull.
/// </summary>
public class ThirdDegreeTests
{
    private const double Radian = Math.PI / 180;

    // The third degree of the attraction, twice a day: (c/r)⁴ · cos²δ · sin δ · cos 2H at Greenwich, from the moon's place after
    // Meeus. A constituent of that family is a line in it, and the two greatest lines are 2τ − s and 2τ + s.
    [Fact]
    public void The_moons_pull_has_its_greatest_lines_where_3N2_and_3L2_stand()
    {
        const double stepDays = 5 / 24.0;
        const int count = 19 * 1752;
        var pull = new double[count];
        for (var i = 0; i < count; i++)
        {
            var moon = MoonPosition.At(-3500 + i * stepDays, 64);
            var (sin, cos) = Math.SinCos(moon.DeclinationDegrees * Radian);
            pull[i] = Math.Pow(MoonBrightness.MeanDistanceKm / moon.DistanceKm, 4) * cos * cos * sin
                * Math.Cos(2 * (moon.SiderealDegrees - moon.RightAscensionDegrees) * Radian) * (1 - Math.Cos(2 * Math.PI * i / count));
        }

        var lines = Constituents.All.Where(wave => wave.Doodson.LunarTime == 2)
            .Select(wave => (wave.Name, Size: Size(wave.SpeedDegreesPerHour * 5 * Radian))).OrderByDescending(line => line.Size).ToList();

        Assert.Equal(["3L2", "3N2"], lines.Take(2).Select(line => line.Name).Order());
        // sin δ is sin 23.4° · sin s at most, 0.397, halved among the two and lessened by cos²δ: about 0.18 each, by hand.
        Assert.All(lines.Take(2), line => Assert.Equal(0.18, line.Size, 0.02));
        Assert.All(lines.Skip(2), line => Assert.True(line.Size < 0.06, $"{line}"));
        Assert.Equal(29.5331208, Constituents.Of("3L2").SpeedDegreesPerHour, 2e-7);

        double Size(double turn)
        {
            double x = 0, y = 0;
            for (var i = 0; i < count; i++)
            {
                var (sin, cos) = Math.SinCos(turn * i);
                (x, y) = (x + pull[i] * cos, y + pull[i] * sin);
            }

            return 2 * Math.Sqrt(x * x + y * y) / count;
        }
    }

    // A fit can't hold two waves of one speed apart. Thousands of stations have 3N2 beside MKS2, of other sizes and phases.
    [Fact]
    public void Wave_3N2_of_the_stations_is_not_the_one_that_the_manual_numbers()
    {
        var both = StationTides.Constants().Where(constants => constants.ContainsKey("3N2") && constants.ContainsKey("MKS2")).ToList();

        Assert.True(both.Count > 2000, $"{both.Count} stations");
        Assert.All(both, constants => Assert.NotEqual(constants["MKS2"], constants["3N2"]));
    }
}
