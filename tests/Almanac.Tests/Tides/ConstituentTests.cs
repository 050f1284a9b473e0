using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Tides;

public class ConstituentTests
{
    [Fact]
    public void Every_constituent_of_the_stations_is_known()
    {
        Assert.All(StationTides.ConstituentNames, name => Assert.True(Constituents.TryFind(name, out _), name));
        Assert.Equal(161, StationTides.ConstituentNames.Count());
    }

    [Theory]
    [InlineData("XYZ9")]
    [InlineData("")]
    public void Unknown_name_is_an_error_that_names_it(string name)
    {
        var thrown = Assert.Throws<UnknownConstituentException>(() => Constituents.Of(name));
        Assert.Equal(name, thrown.ConstituentName);
        Assert.Contains($"\"{name}\"", thrown.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("LAM2", "lambda2")]
    [InlineData("RHO", "rho1")]
    [InlineData("mtm", "MFM")]
    [InlineData(" m2 ", "M2")]
    [InlineData("R3", "SK3")]
    public void One_constituent_goes_by_several_names(string one, string other) => Assert.Same(Constituents.Of(one), Constituents.Of(other));

    [Fact]
    public void Wave_2MN2_has_the_speed_of_L2_and_not_its_half_turn()
    {
        DoodsonNumbers shallow = Constituents.Of("2MN2").Doodson, l2 = Constituents.Of("L2").Doodson;
        Assert.Equal(2 * Constituents.Of("M2").Doodson + -1 * Constituents.Of("N2").Doodson, shallow);
        Assert.Equal(l2.SpeedDegreesPerHour, shallow.SpeedDegreesPerHour);
        Assert.Equal(2, Math.Abs(l2.QuarterTurns - shallow.QuarterTurns));
    }

    // Schureman (SP 98), M1 by hand: f = f(O1)/Qa with 1/Qa² = 1/4 + 3/2·cos I·cos 2P/cos²(I/2) + 9/4·cos² I/cos⁴(I/2);
    // u = ξ − ν + Q, tan Q = (5 cos I − 1)/(7 cos I + 1)·tan P with Q in the quadrant of P (equations 197 to 204). Our argument
    // holds p where the book's holds p with Q from P, so that P − Q stays small: it never comes near half a turn.
    [Fact]
    public void M1_keeps_to_the_quadrant_of_the_perigee_through_a_whole_round()
    {
        double? before = null;
        for (var day = 0; day < 3300; day += 10)
        {
            var arguments = AstronomicalArguments.At(JulianDay.DaysFromJ2000(Instant.FromUtc(2020, 1, 1, 0, 0)) + day);
            var node = new SchuremanFactors(arguments).Of(Constituents.Of("M1"));
            var whole = arguments.Perigee + node.UDegrees;
            Assert.True(before is null || Math.Abs(Math.IEEERemainder(whole - before.Value, 360)) < 4, $"day {day}");
            Assert.True(Math.Abs(Math.IEEERemainder(node.UDegrees, 360)) < 40, $"day {day}: {node.UDegrees}");
            before = whole;
        }
    }

    [Theory]
    [InlineData(NodalModel.Schureman)]
    [InlineData(NodalModel.Iho)]
    public void Nothing_jumps_at_a_mark_nor_at_new_year(NodalModel model)
    {
        var tide = (HarmonicTide)StationTides.Of("noaa/8410140", model, []);
        var from = Instant.FromUtc(2025, 12, 20, 0, 0);
        var curve = tide.Between(from, from + Duration.FromDays(25));
        for (var time = from; time + Duration.FromSeconds(2) < curve.To; time += Duration.FromMinutes(10))
            Assert.InRange(Math.Abs(curve.MetresAt(time + Duration.FromSeconds(2)) - curve.MetresAt(time)), 0, 0.0015);
    }

    [Fact]
    public void Plain_loop_gives_what_the_wide_one_gives()
    {
        var random = new Random(7);
        const int waves = 37;
        double[] cosines = Fill(waves * TideKernel.BlockKnots), sines = Fill(waves * TideKernel.BlockKnots), arrows = Fill(waves * TideKernel.ArrowLength);
        double[] metres = new double[TideKernel.BlockKnots], slopes = new double[TideKernel.BlockKnots], plain = new double[TideKernel.BlockKnots], plainSlopes = new double[TideKernel.BlockKnots];
        TideKernel.SumWide(cosines, sines, arrows, 2, metres, slopes);
        TideKernel.SumPlain(cosines, sines, arrows, 2, plain, plainSlopes);
        for (var i = 0; i < TideKernel.BlockKnots; i++)
        {
            Assert.Equal(plain[i], metres[i], 1e-12);
            Assert.Equal(plainSlopes[i], slopes[i], 1e-12);
        }

        double[] Fill(int count) => [.. Enumerable.Range(0, count).Select(_ => random.NextDouble() - 0.5)];
    }
}
