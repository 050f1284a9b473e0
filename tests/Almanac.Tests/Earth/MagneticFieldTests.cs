using CsCheck;
using NodaTime;

namespace Foreshore.Almanac.Earth;

public class MagneticFieldTests
{
    private static readonly Position Maine = new(44.7, -67.1);

    [Fact]
    public void Years_outside_the_model_have_no_answer()
    {
        Assert.Null(MagneticField.On(new LocalDate(2024, 12, 31), Maine));
        Assert.NotNull(MagneticField.On(MagneticField.FirstDate, Maine));
        Assert.NotNull(MagneticField.On(MagneticField.LastDate, Maine));
        Assert.Null(MagneticField.On(new LocalDate(2030, 1, 2), Maine));
        Assert.Null(MagneticField.At(double.NaN, Maine));
    }

    [Fact]
    public void A_date_and_its_decimal_year_say_the_same() =>
        Assert.Equal(MagneticField.At(2028 + 183.0 / 366, Maine), MagneticField.On(new LocalDate(2028, 7, 2), Maine));

    [Fact]
    public void Height_outside_the_report_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => MagneticField.At(2026, Maine, 900_000));

    [Theory]
    [InlineData(7000, CompassZone.Usual)]
    [InlineData(5999, CompassZone.Caution)]
    [InlineData(1999, CompassZone.Blackout)]
    public void Weak_horizontal_field_is_called_by_its_zone(double horizontal, CompassZone zone)
    {
        var field = new GeomagneticField(horizontal, 0, 55000);

        Assert.Equal(zone, field.Zone);
        Assert.Equal(Math.Sqrt(0.26 * 0.26 + Math.Pow(5417 / horizontal, 2)), field.DeclinationUncertaintyDegrees, 1e-12);
    }

    [Fact]
    public void Compass_and_true_bearings_undo_each_other() =>
        Gen.Select(Gen.Double[-80, 80], Gen.Double[-180, 179.9], Gen.Double[0, 359.9], Gen.Double[2025, 2030]).Sample((latitude, longitude, reading, year) =>
        {
            var field = MagneticField.At(year, new Position(latitude, longitude))!.Value;
            return field.CompassOf(field.TrueOf(Bearing.FromDegrees(reading))).AngleTo(Bearing.FromDegrees(reading)) < 1e-9;
        });

    [Fact]
    public void Field_is_the_same_from_either_side_of_the_date_line_and_continuous_over_the_pole()
    {
        var east = MagneticField.At(2027, new Position(10, 179.9999999))!.Value;
        var west = MagneticField.At(2027, new Position(10, -180))!.Value;
        Assert.Equal(east.NorthNanotesla, west.NorthNanotesla, 1e-3);

        var pole = MagneticField.At(2027, new Position(90, 0))!.Value;
        var beside = MagneticField.At(2027, new Position(89.99999, 0))!.Value;
        Assert.Equal(beside.NorthNanotesla, pole.NorthNanotesla, 0.1);
        Assert.Equal(beside.EastNanotesla, pole.EastNanotesla, 0.1);
    }
}
