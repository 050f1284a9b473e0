using Foreshore.Guide.Locations;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Hazards;

public sealed class HazardNoteTests
{
    private static readonly LocalDate Today = new(2026, 11, 25);

    [Fact]
    public void A_severe_note_shows_at_once_and_outlives_its_date()
    {
        var note = new HazardNote(HazardKind.Waves, 4, "Swept", Today.PlusDays(-40), Today.PlusDays(-30));
        Assert.True(note.IsUnchecked);
        Assert.True(note.ShowsOn(Today));
        note.Confirm(Today);
        Assert.True(note.ShowsOn(Today.PlusYears(3)));
        note.End(Today);
        Assert.False(note.ShowsOn(Today));
        Assert.False(note.KeepsOff);
    }

    [Fact]
    public void A_lesser_note_waits_for_its_confirmation_and_ends_by_date()
    {
        var note = new HazardNote(HazardKind.Path, 3, "Roots", Today, Today.PlusDays(5));
        Assert.False(note.ShowsOn(Today));
        note.Confirm(Today);
        Assert.True(note.ShowsOn(Today.PlusDays(5)));
        Assert.False(note.ShowsOn(Today.PlusDays(6)));
        Assert.False(note.ShowsOn(Today.PlusDays(-1)));
    }

    [Theory]
    [InlineData(HazardKind.Waves, 4, true)]
    [InlineData(HazardKind.CutOff, 4, true)]
    [InlineData(HazardKind.Rockfall, 4, true)]
    [InlineData(HazardKind.Path, 4, true)]
    [InlineData(HazardKind.Traffic, 4, false)]
    [InlineData(HazardKind.Animals, 4, false)]
    [InlineData(HazardKind.Waves, 3, false)]
    public void Severe_notes_about_water_rockfall_or_the_way_back_keep_everybody_off(HazardKind kind, int severity, bool keepsOff) =>
        Assert.Equal(keepsOff, new HazardNote(kind, severity, "Text", Today).KeepsOff);

    [Fact]
    public void A_rejected_note_neither_shows_nor_can_be_confirmed()
    {
        var note = new HazardNote(HazardKind.Rockfall, 4, "Blocks", Today);
        note.Reject();
        Assert.False(note.ShowsOn(Today));
        Assert.False(note.KeepsOff);
        Assert.Throws<NotAcceptedException>(() => note.Confirm(Today));
        Assert.Throws<NotAcceptedException>(note.Reject);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(5)]
    public void Severity_runs_from_nought_to_four(int severity)
    {
        Assert.Throws<NotAcceptedException>(() => new HazardNote(HazardKind.Waves, severity, "Text", Today));
        Assert.Throws<NotAcceptedException>(() => new HazardRating(HazardKind.Waves, severity, new FactCheck("Club", Today)));
    }

    [Fact]
    public void Hazards_need_checking_after_three_months()
    {
        var rating = new HazardRating(HazardKind.Slip, null, new FactCheck("Club", new LocalDate(2026, 8, 25)));
        Assert.False(rating.NeedsChecking(Today));
        Assert.True(rating.NeedsChecking(Today.PlusDays(1)));
    }
}
