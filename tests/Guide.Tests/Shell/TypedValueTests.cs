using Xunit;

namespace Foreshore.Guide.Shell;

public class TypedValueTests
{
    [Theory]
    [InlineData("2.4", 2.4)]
    [InlineData(" 2,4 ", 2.4)]
    [InlineData("−1.5", -1.5)]
    [InlineData("1e400", null)]
    [InlineData("1e3", null)]
    [InlineData("NaN", null)]
    [InlineData("Infinity", null)]
    [InlineData("1.000,5", null)]
    [InlineData("٣", null)]
    [InlineData("", null)]
    [InlineData(null, null)]
    public void Numbers_are_read_as_people_type_them(string? typed, double? number) => Assert.Equal(number, TypedValue.Number(typed));

    [Theory]
    [InlineData("7", 7)]
    [InlineData("07", 7)]
    [InlineData("0", null)]
    [InlineData("101", null)]
    [InlineData("-7", null)]
    [InlineData("7.0", null)]
    [InlineData("99999999999999999999", null)]
    [InlineData("x", null)]
    [InlineData(null, null)]
    public void Whole_numbers_are_figures_in_their_range(string? typed, int? number) => Assert.Equal(number, TypedValue.Whole(typed, 1, 100));

    [Fact]
    public void An_id_has_one_way_of_being_written()
    {
        var id = Guid.NewGuid();
        Assert.Equal(id, TypedValue.Id(id.ToString()));
        Assert.Null(TypedValue.Id(id.ToString("N")));
        Assert.Null(TypedValue.Id(id.ToString("B")));
        Assert.Null(TypedValue.Id("x"));
        Assert.Null(TypedValue.Id(null));
    }

    /// <summary>One by one: half a letter does not survive the way of a theory's rows.</summary>
    [Fact]
    public void Text_has_no_letter_that_nothing_can_keep()
    {
        Assert.True(TypedValue.IsText(null));
        Assert.True(TypedValue.IsText(""));
        Assert.True(TypedValue.IsText("café 🌊"));
        Assert.False(TypedValue.IsText("a\0b"));
        Assert.False(TypedValue.IsText("\ud83c"));
        Assert.False(TypedValue.IsText("\ud83cx"));
        Assert.False(TypedValue.IsText("\udf0a"));
    }
}
