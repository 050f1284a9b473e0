using System.Globalization;
using CsCheck;
using Foreshore.Almanac.Earth;
using Xunit;

namespace Foreshore.Guide.Locations;

public class TypedPositionTests
{
    private static readonly string Table = Path.Combine(AppContext.BaseDirectory, "Published/typed-positions.csv");

    public static TheoryData<string, double, double, double> Printed()
    {
        var rows = new TheoryData<string, double, double, double>();
        foreach (var line in File.ReadLines(Table).Where(line => !line.StartsWith('#')).Skip(1))
        {
            var parts = line.Split('|');
            rows.Add(parts[0], Number(parts[1]), Number(parts[2]), Number(parts[3]));
        }

        return rows;
    }

    [Theory]
    [MemberData(nameof(Printed))]
    public void Printed_positions_are_read_as_their_sources_have_them(string text, double latitude, double longitude, double tolerance)
    {
        var (position, fault) = TypedPosition.Read(text);

        Assert.Null(fault);
        Assert.Equal(latitude, position!.Value.LatitudeDegrees, tolerance);
        Assert.Equal(longitude, position.Value.LongitudeDegrees, tolerance);
    }

    [Theory]
    [InlineData("44.65, -67.25")]
    [InlineData("44.65,-67.25")]
    [InlineData("44.65 -67.25")]
    [InlineData(" +44.65 ; −67.25 ")]
    [InlineData("44,65 -67,25")]
    [InlineData("44,65; -67,25")]
    [InlineData("44.65° N 67.25° W")]
    [InlineData("N 44.65 W 67.25")]
    [InlineData("67.25w, 44.65n")]
    [InlineData("44° 39.0' N, 67° 15.0' W")]
    [InlineData("N44 39.0 W067 15.0")]
    [InlineData("44 39 00 -67 15 00")]
    [InlineData("44º 39’ 00” N 67º 15’ 00” W")]
    [InlineData("44°39'00''N 67°15'00''W")]
    [InlineData("44:39:00 -67:15:00")]
    [InlineData("GEO:44.65,-67.25;u=12")]
    [InlineData("+4439-06715/")]
    public void One_place_is_read_in_every_usual_notation(string text)
    {
        var (position, fault) = TypedPosition.Read(text);

        Assert.Null(fault);
        Assert.Equal(44.65, position!.Value.LatitudeDegrees, 1e-9);
        Assert.Equal(-67.25, position.Value.LongitudeDegrees, 1e-9);
    }

    [Theory]
    [InlineData("112.5, 44.65", "Swap the two")]
    [InlineData("44.65, 200", "no longitude")]
    [InlineData("44.65", "not a notation")]
    [InlineData("44° 75' N, 67° W", "not a notation")]
    [InlineData("44.5° 30' N, 67° W", "not a notation")]
    [InlineData("-44 S, 67 W", "not a notation")]
    [InlineData("44 N, 67 N", "not a notation")]
    [InlineData("geo:44.65,-67.25;crs=moon", "not a notation")]
    [InlineData("NaN, Infinity", "not a notation")]
    [InlineData("1e1, 2e1", "not a notation")]
    [InlineData("Herring Slip", "not a notation")]
    [InlineData("", "no position")]
    [InlineData(null, "no position")]
    public void What_is_no_position_is_refused_with_what_to_do(string? text, string words)
    {
        var (position, fault) = TypedPosition.Read(text);

        Assert.Null(position);
        Assert.Contains(words, fault, StringComparison.Ordinal);
        Assert.EndsWith(".", fault, StringComparison.Ordinal);
    }

    [Fact]
    public void What_the_site_prints_to_read_out_is_read_back_within_half_of_its_last_digit() =>
        Gen.Select(Gen.Double[-90, 90], Gen.Double[-180, 179.999]).Sample((latitude, longitude) =>
        {
            var (position, fault) = TypedPosition.Read(EmergencyBlock.DegreesAndMinutes(new Position(latitude, longitude)));

            Assert.Null(fault);
            Assert.Equal(latitude, position!.Value.LatitudeDegrees, 0.005 / 60 + 1e-9);
            Assert.InRange(Math.Abs(Math.IEEERemainder(position.Value.LongitudeDegrees - longitude, 360)), 0, 0.005 / 60 + 1e-9);
        });

    [Fact]
    public void No_text_at_all_breaks_it() =>
        Gen.String.Sample(text =>
        {
            var (position, fault) = TypedPosition.Read(text);
            Assert.True(position is null != fault is null, text);
        });

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
