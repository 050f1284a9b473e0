using System.Globalization;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Almanac.Sun;
using Foreshore.Guide.Access;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Tides;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>All that is computed for one picture's page: one now, one table of the sky, one season.</summary>
public sealed record PictureLightView(
    SeasonTable Season,
    HoursOut Hours,
    IReadOnlyList<GoodDate> Dates,
    IReadOnlyList<LightDay> Days,
    HorizonDrawing Horizon,
    FrameDrawing Frame,
    SunPathDrawing SunPath,
    SeasonDrawing SeasonInk,
    Skyline Skyline,
    string? UseWords)
{
    /// <summary>For the season chart's ruled line; null when every hour counts.</summary>
    public (double From, double To)? HoursRuled => Hours.IsUnrestricted ? null : (Decimal(Hours.EarliestAlarm), Decimal(Hours.LatestHome));

    public string OverWords => Skyline.IsAssumed ? "an assumed sea horizon: no skyline is recorded" : Skyline.HasUnknown ? "the recorded skyline, its unknown pieces taken as level" : "the recorded skyline";

    /// <summary>"Best in December, January and November, 06:00–08:00."; empty when nothing is ranked.</summary>
    public string BestWords
    {
        get
        {
            var months = MonthNames(month => month.Rank);
            if (months.Count == 0)
                return "";
            var hours = Season.BestRankedHours.Select(h => h.Hour).Distinct().Order().Select(h => $"{h:00}:00–{(h + 1) % 24:00}:00").ToList();
            return $"Best in {AndWords(months)}{(hours.Count == 0 ? "" : $"; best hours {AndWords(hours)}")}.";
        }
    }

    /// <summary>Which hours the ranking counts, and how it would be at any hour; null when every hour counts.</summary>
    public string? HoursWords
    {
        get
        {
            if (Hours.IsUnrestricted)
                return null;
            var counted = $"Months rank by the minutes within the hours you go out, {AccessWords.Hours(Hours.EarliestAlarm, Hours.LatestHome)}.";
            var anyHour = MonthNames(month => month.UnrestrictedRank);
            return anyHour.Count == 0 ? counted : $"{counted} At any hour: {AndWords(anyHour)}.";
        }
    }

    private List<string> MonthNames(Func<SeasonMonth, int?> rank) =>
        [.. Season.Ranked.Where(m => rank(m) is <= 3).OrderBy(rank).Select(m => CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(m.Month.Month))];

    private static string AndWords(List<string> words) => words.Count == 1 ? words[0] : $"{string.Join(", ", words[..^1])} and {words[^1]}";

    private static double Decimal(LocalTime time) => time.TickOfDay / (double)NodaConstants.TicksPerHour;
}

/// <summary>What is drawn of a picture on one day, for everybody alike.</summary>
internal sealed record PictureDrawings(IReadOnlyList<LightDay> Days, HorizonDrawing Horizon, FrameDrawing Frame, SunPathDrawing SunPath);

/// <summary>Computes a picture's light from what the site keeps in common.</summary>
public sealed class PictureLight(SharedSky shared, LightCache kept, TideCurves curves)
{
    public async ValueTask<PictureLightView> OfAsync(PictureView view, HoursOut hours, Instant now, CancellationToken cancel)
    {
        var (place, stance, picture) = (view.Place, view.Stance, view.Picture);
        var use = PictureUse.Of(view.From, picture, curves, now);
        var season = await kept.SeasonAsync(place, stance, picture, use, hours, now, cancel);
        // The day's own sessions drop out of the list as they end.
        var dates = await kept.GoodDatesAsync(place, stance, picture, use, hours, now, cancel);
        var drawn = await kept.DrawnAsync(place, stance, picture, use, view.From.Today, () => Draw(view, dates, shared.For(now)), cancel);
        return new PictureLightView(season, hours, dates, drawn.Days, drawn.Horizon, drawn.Frame, drawn.SunPath, SeasonDrawing.Of(season), stance.Skyline, use.Words);
    }

    internal static PictureDrawings Draw(PictureView view, IReadOnlyList<GoodDate> dates, SkyEphemeris sky)
    {
        var (place, stance, picture) = (view.Place, view.Stance, view.Picture);
        var (today, scene) = (view.From.Today, picture.ToScene(stance, place));
        var sun = sky.Sun;
        var best = dates.MaxBy(date => date.Usable);
        var subject = picture.Subject?.SeenFrom(stance, place.MeanSeaLevelAboveChartDatumMetres);
        return new PictureDrawings(
            LightDays.From(today, scene.Observer, place.Zone, sky, scene),
            HorizonDrawing.Of(scene.Observer, scene.Frame, Exposed(stance), new YearMonth(today.Year, today.Month), place.Zone, sun),
            FrameDrawing.Of(scene.Observer, scene.Frame, subject, SunDays.On(today, scene.Observer, place.Zone, sun),
                best is null ? null : SunDays.On(best.Session.Date, scene.Observer, place.Zone, sun), sun, FrameNights.Of(scene, today, best, place.Zone, sky)),
            SunPathDrawing.Of(scene.Observer, scene.Frame, today, place.Zone, sun));
    }

    private static (Bearing From, Bearing To)? Exposed(VantagePoint stance) =>
        stance.Sea is { } sea ? (Bearing.FromDegrees(sea.ExposedFromDegrees), Bearing.FromDegrees(sea.ExposedToDegrees)) : null;
}
