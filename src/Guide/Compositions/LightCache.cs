using Foreshore.Almanac.Light;
using Foreshore.Guide.Keeping;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>
/// Season tables, good dates, drawings and passages, computed once and kept while neither the composition nor its stance or
/// place changes: a page then only looks them up.
/// </summary>
public sealed class LightCache(SharedSky sky, Kept kept)
{
    /// <summary>The twelve whole local months from the current one.</summary>
    public ValueTask<SeasonTable> SeasonAsync(
        Location place, VantagePoint stance, Composition picture, PictureUse use, HoursOut hours, Instant now, CancellationToken cancel)
    {
        var today = now.InZone(place.Zone).Date;
        var first = new YearMonth(today.Year, today.Month);
        return kept.GetAsync(new SeasonKey(Stamp.Of(place, stance, picture), use.Stamp, first, hours), () =>
        {
            var (from, to) = (first.OnDayOfMonth(1).AtStartOfDayInZone(place.Zone).ToInstant(), first.PlusMonths(12).OnDayOfMonth(1).AtStartOfDayInZone(place.Zone).ToInstant());
            var ephemeris = sky.For(now);
            return SeasonTables.For(picture.ToScene(stance, place), place.Zone, first, hours, ephemeris, use.Over(from, to, ephemeris));
        }, LightWeights.Of, cancel);
    }

    /// <summary>The best sessions of the next 365 days that are not over, by date.</summary>
    public async ValueTask<IReadOnlyList<GoodDate>> GoodDatesAsync(
        Location place, VantagePoint stance, Composition picture, PictureUse use, HoursOut hours, Instant now, CancellationToken cancel)
    {
        var today = now.InZone(place.Zone).Date;
        var found = await kept.GetAsync(new DatesKey(Stamp.Of(place, stance, picture), use.Stamp, today, hours), () =>
        {
            var from = place.Zone.AtStartOfDay(today).ToInstant();
            var ephemeris = sky.For(now);
            return GoodDates.Next(picture.ToScene(stance, place), place.Zone, from, ephemeris, usable: use.Over(from, from + Duration.FromDays(366), ephemeris), hours: hours,
                goes: use.Goes(from, from + Duration.FromDays(366), ephemeris));
        }, LightWeights.Of, cancel);
        return [.. found.Where(date => date.Windows[^1].End > now)];
    }

    /// <summary>What one picture's page draws on one local day. Nothing in it depends on the reader's hours.</summary>
    internal ValueTask<PictureDrawings> DrawnAsync(
        Location place, VantagePoint stance, Composition picture, PictureUse use, LocalDate today, Func<PictureDrawings> draw, CancellationToken cancel) =>
        kept.GetAsync(new DrawnKey(Stamp.Of(place, stance, picture), use.Stamp, today), draw, _ => LightWeights.Drawings, cancel);

    /// <summary>
    /// When sun and moon stand behind the subject. Whole years from today with the usual tolerance are kept; whatever else is
    /// asked for is the asker's own and is computed for them alone.
    /// </summary>
    public ValueTask<SubjectAlignments> BehindAsync(
        Location place, VantagePoint stance, Composition picture, BehindAsk ask, Instant now, CancellationToken cancel)
    {
        var isUsual = ask.IsUsual(now.InZone(place.Zone).Date);
        // All bodies at once: the choices among them are made from what is kept.
        var wanted = isUsual ? WantedBodies.Usual : ask.Bodies;
        return isUsual
            ? Chosen(kept.GetAsync(new BehindKey(Stamp.Of(place, stance, picture), ask.From, ask.To), Compute, LightWeights.Of, cancel), ask.Bodies)
            : kept.AloneAsync(Compute, cancel);

        SubjectAlignments Compute() => SubjectAlignments.Of(place, stance, picture, ask.From, ask.To, ask.ToleranceDegrees, sky.Over(ask.From, ask.To, now), wanted);

        static async ValueTask<SubjectAlignments> Chosen(ValueTask<SubjectAlignments> all, WantedBodies bodies) => (await all).Only(bodies);
    }

    private sealed record SeasonKey(Stamp Of, string Use, YearMonth First, HoursOut Hours);

    private sealed record DatesKey(Stamp Of, string Use, LocalDate Today, HoursOut Hours);

    private sealed record DrawnKey(Stamp Of, string Use, LocalDate Today);

    private sealed record BehindKey(Stamp Of, LocalDate From, LocalDate To);

    /// <summary>Light depends on the picture, on where one stands and on the place's zone and sea level.</summary>
    private readonly record struct Stamp(int PictureId, uint Picture, uint Stance, uint Place)
    {
        public static Stamp Of(Location place, VantagePoint stance, Composition picture) => new(picture.Id, picture.Version, stance.Version, place.Version);
    }
}
