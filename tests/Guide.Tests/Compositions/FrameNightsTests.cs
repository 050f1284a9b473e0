using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Almanac.Moon;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Compositions;

/// <summary>Moon and galaxy over the picture: where the almanac's own places say, and only while they can matter.</summary>
public sealed class FrameNightsTests
{
    private static readonly LocalDate Summer = new(2027, 7, 3);

    private static FrameNights Over(LocalDate today, double facing, double tilt = 0, GoodDate? best = null, params WantedLight[] wanted) =>
        FrameNights.Of(new Scene(Scenes.Ledge, Scenes.Looking(facing, 20, tilt), wanted.Length == 0 ? [WantedLight.TwilightGlow] : wanted), today, best, Scenes.Zone, Scenes.Sky);

    [Fact]
    public void Times_are_those_at_which_moon_and_core_as_seen_stand_on_the_line()
    {
        var found = Enumerable.Range(0, 40).SelectMany(day => new[] { 120.0, 180, 240 }.SelectMany(facing => Over(Summer.PlusDays(day), facing, 10).Tracks
            .SelectMany(track => track.Times.Select(time => (facing, time))))).ToList();

        Assert.Contains(found, one => one.time.Body == FrameBody.Moon);
        Assert.Contains(found, one => one.time.Body == FrameBody.Core);
        foreach (var (facing, time) in found)
        {
            var place = time.Body == FrameBody.Moon ? Scenes.Sky.Moon.At(time.Time, Scenes.Ledge.Position) : Scenes.Sky.Galaxy.CentreAt(time.Time, Scenes.Ledge.Position);
            var picture = new FramePicture(Scenes.Looking(facing, 20, 10));
            var at = picture.At(place.AzimuthDegrees, Refraction.Apparent(place.AltitudeDegrees))!.Value;
            var off = time.Line switch
            {
                FrameLine.LeftEdge => at.X,
                FrameLine.LeftThird => at.X - picture.Width / 3,
                FrameLine.RightThird => at.X - picture.Width * 2 / 3,
                FrameLine.RightEdge => at.X - picture.Width,
                FrameLine.TopEdge => at.Y,
                FrameLine.UpperThird => at.Y - picture.Height / 3,
                FrameLine.LowerThird => at.Y - picture.Height * 2 / 3,
                _ => at.Y - picture.Height,
            };
            Assert.InRange(off, -0.01, 0.01);
        }
    }

    [Fact]
    public void The_core_is_drawn_in_the_dark_alone_and_the_moon_between_dusk_and_dawn()
    {
        for (var day = 0; day < 30; day++)
            foreach (var time in Over(Summer.PlusDays(day), 180, 10).Tracks.SelectMany(track => track.Times))
            {
                var sun = Scenes.Sun.At(time.Time, Scenes.Ledge.Position).AltitudeDegrees;
                Assert.True(time.Body == FrameBody.Core ? sun <= -17.99 : sun <= 10.01, $"{time}");
                if (time.Body == FrameBody.Core)
                    Assert.NotEmpty(DarkSky.Between(Scenes.Ledge.Position, time.Time - Duration.FromMinutes(1), time.Time + Duration.FromMinutes(1), Scenes.Sky));
            }
    }

    // New moon on 4 July 2027, full on 18 July: sun and moon as the almanac has them, within the light table's least.
    [Fact]
    public void A_new_moon_is_not_drawn_and_a_full_one_says_how_much_of_it_is_lit()
    {
        Assert.True(MoonPhases.At(Instant.FromUtc(2027, 7, 4, 6, 0)).IlluminatedFraction < 0.02);
        Assert.DoesNotContain(Over(Summer, 180, 10).Tracks, track => track.Body == FrameBody.Moon);
        var full = Over(new LocalDate(2027, 7, 18), 180, 10).Tracks.Single(track => track.Body == FrameBody.Moon);
        Assert.InRange(full.LitFraction!.Value, 0.98, 1);
    }

    [Fact]
    public void A_dawn_belongs_to_the_night_before_it_and_a_best_night_that_is_tonight_is_drawn_once()
    {
        var evening = new LocalDate(2027, 7, 20);
        var dawn = Date(SessionKind.Dawn, evening.PlusDays(1));
        Assert.Equal([evening], Over(Summer, 180, 10, dawn).Tracks.Where(track => track.IsBest).Select(track => track.Date).Distinct());
        Assert.DoesNotContain(Over(evening, 180, 10, dawn).Tracks, track => track.IsBest);
    }

    [Fact]
    public void The_band_is_drawn_where_it_is_wanted_and_dark()
    {
        var night = Date(SessionKind.Night, Summer);
        Assert.Null(Over(Summer, 180, 10, night).Band);
        Assert.NotEmpty(Over(Summer, 180, 10, night, WantedLight.GalaxyBand).Band!.Edges);
        Assert.Null(Over(Summer, 180, 10, Date(SessionKind.Dusk, Summer), WantedLight.GalaxyBand).Band);
    }

    private static GoodDate Date(SessionKind kind, LocalDate date)
    {
        var session = Sessions.On(date, Scenes.Ledge.Position, Scenes.Zone, Scenes.Sun).Of(kind)!;
        // A dusk's first minutes, the middle of anything else.
        var from = kind == SessionKind.Dusk ? session.Start : session.Start + session.Span.Duration / 2;
        return new(session, [new(from, from + Duration.FromMinutes(12))], Duration.FromMinutes(12)) { Moon = GoodDateMoon.Of(session, Scenes.Ledge, Scenes.Sky) };
    }
}
