using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Tides;

public class ConstituentTests
{
    [Fact]
    public void Every_constituent_of_the_stations_is_known()
    {
        Assert.All(StationTides.ConstituentNames, name => Assert.True(Constituents.TryFind(name, out _), name));
        Assert.Equal(163, StationTides.ConstituentNames.Count());
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

    // Schureman (SP 98), Table 2: M3 is 3T − 3s + 3h, T the hour angle of the mean sun, 180 degrees at midnight. By hand for
    // 2000 January 1, 0 h, s = 211.728 and h = 279.974 (Meeus): 540 − 635.184 + 839.922 = 744.738, that is 24.74.
    // The United States' own program and Foreman's table (−0.50 with T nought at midnight) give the same half turn.
    [Fact]
    public void M3_is_highest_under_the_moon_and_S3_under_the_sun()
    {
        var midnight = AstronomicalArguments.At(JulianDay.DaysFromJ2000(Instant.FromUtc(2000, 1, 1, 0, 0)));
        Assert.Equal(24.74, Folded(midnight.Of(Constituents.Of("M3").Doodson)), 0.05);
        Assert.Equal(180, Folded(midnight.Of(Constituents.Of("S3").Doodson)), 0.0001);

        var noon = AstronomicalArguments.At(JulianDay.DaysFromJ2000(Instant.FromUtc(2000, 1, 1, 12, 0)));
        Assert.Equal(0, Math.IEEERemainder(noon.Of(Constituents.Of("S3").Doodson), 360), 0.0001);
        // The mean moon crosses the meridian when τ is nought: then M2 and M3 are both at their crest.
        var transit = JulianDay.DaysFromJ2000(Instant.FromUtc(2026, 11, 25, 0, 0));
        for (var turn = 0; turn < 3; turn++)
            transit -= Math.IEEERemainder(AstronomicalArguments.At(transit).LunarTime, 360) / AstronomicalArguments.LunarTimePerHour / 24;
        Assert.Equal(0, Math.IEEERemainder(AstronomicalArguments.At(transit).Of(Constituents.Of("M3").Doodson), 360), 0.0001);
        Assert.Equal(0, Math.IEEERemainder(AstronomicalArguments.At(transit).Of(Constituents.Of("M2").Doodson), 360), 0.0001);

        static double Folded(double degrees) => degrees - 360 * Math.Floor(degrees / 360);
    }

    // The book's own steps for M1, with Q set into the quadrant of P by hand (equations 197, 202, 204): held against the sum
    // of two arrows through a round of the perigee.
    [Fact]
    public void M1_has_the_factor_and_the_angle_of_the_books_equations()
    {
        for (var day = 0; day < 3300; day += 37)
        {
            var arguments = AstronomicalArguments.At(9000 + day);
            var factors = new SchuremanFactors(arguments);
            var i = factors.InclinationDegrees * Math.PI / 180;
            NodeFactor o1 = factors.Of(Constituents.Of("O1")), m2 = factors.Of(Constituents.Of("M2")), m1 = factors.Of(Constituents.Of("M1"));
            // From u(O1) = 2ξ − ν and u(M2) = 2ξ − 2ν.
            double nu = o1.U - m2.U, xi = (o1.U + nu) / 2, p = arguments.Perigee * Math.PI / 180 - xi, half = Math.Pow(Math.Cos(i / 2), 2);
            var inverseQa = Math.Sqrt(0.25 + 1.5 * Math.Cos(i) * Math.Cos(2 * p) / half + 2.25 * Math.Pow(Math.Cos(i) / half, 2));
            var q = Math.Atan((5 * Math.Cos(i) - 1) / (7 * Math.Cos(i) + 1) * Math.Tan(p)) + (Math.Cos(p) < 0 ? Math.PI : 0);
            Assert.Equal(o1.F * inverseQa, m1.F, 1e-9);
            Assert.Equal(0, Math.IEEERemainder(arguments.Perigee + m1.UDegrees - (xi - nu + q) * 180 / Math.PI, 360), 1e-6);
        }
    }

    // Schureman (SP 98), equations 213 to 215 for L2, by hand: f = f(M2)·√(1 − 12 tan²(I/2) cos 2P + 36 tan⁴(I/2)),
    // u = u(M2) − R, tan R = sin 2P / (cot²(I/2)/6 − cos 2P).
    [Fact]
    public void L2_has_the_factor_and_the_angle_of_the_books_equations()
    {
        for (var day = 0; day < 3300; day += 37)
        {
            var arguments = AstronomicalArguments.At(9000 + day);
            var factors = new SchuremanFactors(arguments);
            NodeFactor o1 = factors.Of(Constituents.Of("O1")), m2 = factors.Of(Constituents.Of("M2")), l2 = factors.Of(Constituents.Of("L2"));
            double nu = o1.U - m2.U, xi = (o1.U + nu) / 2, twoP = 2 * (arguments.Perigee * Math.PI / 180 - xi);
            var square = Math.Pow(Math.Tan(factors.InclinationDegrees * Math.PI / 360), 2);
            Assert.Equal(m2.F * Math.Sqrt(1 - 12 * square * Math.Cos(twoP) + 36 * square * square), l2.F, 1e-9);
            Assert.Equal(0, Math.IEEERemainder(l2.U - m2.U + Math.Atan2(Math.Sin(twoP), 1 / (6 * square) - Math.Cos(twoP)), 2 * Math.PI), 1e-9);
        }
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
