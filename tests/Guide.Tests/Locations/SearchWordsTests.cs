using CsCheck;
using Xunit;

namespace Foreshore.Guide.Locations;

public sealed class SearchWordsTests
{
    [Theory]
    [InlineData("Widow’s Table", "widows table")]
    [InlineData("ÉTRETAT – l'Aiguille", "etretat laiguille")]
    [InlineData("Ærøskøbing", "aeroskobing")]
    [InlineData("Straße", "strasse")]
    [InlineData("  a\t\nb!! c ", "a b c")]
    [InlineData("İstanbul", "istanbul")]
    [InlineData("!!!", "")]
    public void Case_accents_and_signs_are_folded(string text, string folded) => Assert.Equal(folded, SearchWords.Fold(text));

    [Fact]
    public void The_query_asks_for_every_word_as_a_prefix()
    {
        Assert.Equal("'long':* & 'sli':*", SearchWords.ToPrefixQuery("Long Sli"));
        Assert.Equal("'a':*", SearchWords.ToPrefixQuery("a A á"));
        Assert.Null(SearchWords.ToPrefixQuery("  & | ! :* ' "));
        Assert.Null(SearchWords.ToPrefixQuery(null));
    }

    [Fact]
    public void At_most_eight_words_count_and_a_page_of_text_counts_for_nothing()
    {
        Assert.Equal(8, SearchWords.ToPrefixQuery("a b c d e f g h i j")!.Split('&').Length);
        Assert.Null(SearchWords.ToPrefixQuery(new string('a', 1 << 20)));
    }

    [Fact]
    public void Whatever_is_typed_only_letters_and_digits_reach_the_query() =>
        Gen.String.Sample(text => SearchWords.Fold(text).All(c => c == ' ' || char.IsLetterOrDigit(c)));

    [Fact]
    public void Lone_surrogates_do_no_harm() => Assert.Equal("ab", SearchWords.Fold("a\ud800b"));
}
