using Foreshore.Almanac.Earth;
using Xunit;

namespace Foreshore.Guide.Locations;

public sealed class LocationTests
{
    [Theory]
    [InlineData("Somewhere/Else", "US", "US-ME", "IANA")]
    [InlineData("America/New_York", "USA", "US-ME", "ISO 3166")]
    [InlineData("America/New_York", "US", "CA-NB", "begin with their country")]
    public void Zone_country_and_subdivision_must_be_real_codes(string zone, string country, string subdivision, string says) =>
        Assert.Contains(says, Assert.Throws<NotAcceptedException>(
            () => new Location("a", "A", new Position(44, -67), zone, country, subdivision, 1)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("")]
    [InlineData("Long Slip")]
    [InlineData("-a")]
    [InlineData("a--b")]
    [InlineData("a/b")]
    [InlineData("tide")]
    [InlineData("é")]
    public void A_slug_that_does_not_work_in_an_address_is_refused(string slug) => Assert.Throws<NotAcceptedException>(() => Slug.Of(slug));

    [Fact]
    public void A_slug_of_a_megabyte_is_refused_in_few_words() =>
        Assert.InRange(Assert.Throws<NotAcceptedException>(() => Slug.Of(new string('a', 1 << 20))).Message.Length, 1, 300);

    /// <summary>Worked by hand: 44.9055 is 44° and 0.9055 × 60 = 54.33′; 59.999′ carries into the degree.</summary>
    [Theory]
    [InlineData(44.9055, -66.9842, "44° 54.33′ N, 066° 59.05′ W")]
    [InlineData(-0.5, 179.99999, "00° 30.00′ S, 180° 00.00′ E")]
    [InlineData(0, 0, "00° 00.00′ N, 000° 00.00′ E")]
    public void A_position_is_read_out_in_degrees_and_decimal_minutes(double latitude, double longitude, string words) =>
        Assert.Equal(words, EmergencyBlock.DegreesAndMinutes(new Position(latitude, longitude)));

    [Fact]
    public void Control_characters_overlong_texts_and_numbers_that_are_none_are_refused()
    {
        var place = new Location("a", "A", new Position(44, -67), "UTC", "US", null, 1);
        Assert.Throws<NotAcceptedException>(() => place.Describe("a\0b", "Text"));
        Assert.Contains("at most 200", Assert.Throws<NotAcceptedException>(() => place.Describe(new string('x', 201), "Text")).Message, StringComparison.Ordinal);
        Assert.Throws<NotAcceptedException>(() => place.JudgeTideBy("station", double.NaN));
    }
}
