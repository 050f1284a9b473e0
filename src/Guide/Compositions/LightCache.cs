using System.Collections.Concurrent;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>
/// Season tables and good dates, computed once and kept while neither the composition nor its stance or place changes: a
/// page then only looks them up. Nothing here may be wrong when lost; when it grows too large it starts afresh.
/// </summary>
public sealed class LightCache(SharedSky sky)
{
    /// <summary>A table takes about 5 kB, so this stays within some tens of megabytes.</summary>
    private const int Most = 4000;

    /// <summary>A page's drawings take some hundred kilobytes.</summary>
    private const int MostPages = 200;

    private readonly ConcurrentDictionary<SeasonKey, SeasonTable> seasons = new();
    private readonly ConcurrentDictionary<DatesKey, IReadOnlyList<GoodDate>> dates = new();
    private readonly ConcurrentDictionary<PageKey, PictureLightView> pages = new();

    /// <summary>The twelve whole local months from the current one.</summary>
    public SeasonTable Season(Location place, VantagePoint stance, Composition picture, PictureUse use, HoursOut hours, Instant now)
    {
        var (ephemeris, today) = (sky.For(now), now.InZone(place.Zone).Date);
        var first = new YearMonth(today.Year, today.Month);
        return Get(seasons, new SeasonKey(Stamp.Of(place, stance, picture, use), first, hours), Most, () =>
        {
            var (from, to) = (first.OnDayOfMonth(1).AtStartOfDayInZone(place.Zone).ToInstant(), first.PlusMonths(12).OnDayOfMonth(1).AtStartOfDayInZone(place.Zone).ToInstant());
            return SeasonTables.For(picture.ToScene(stance, place), place.Zone, first, hours, ephemeris, use.Over(from, to, ephemeris));
        });
    }

    /// <summary>The best sessions of the next 365 days that are not over, by date.</summary>
    public IReadOnlyList<GoodDate> GoodDates(Location place, VantagePoint stance, Composition picture, PictureUse use, Instant now)
    {
        var (ephemeris, today) = (sky.For(now), now.InZone(place.Zone).Date);
        var found = Get(dates, new DatesKey(Stamp.Of(place, stance, picture, use), today), Most, () =>
        {
            var from = place.Zone.AtStartOfDay(today).ToInstant();
            return Almanac.Light.GoodDates.Next(picture.ToScene(stance, place), place.Zone, from, ephemeris,
                usable: use.Over(from, from + Duration.FromDays(366), ephemeris));
        });
        return [.. found.Where(date => date.Windows[^1].End > now)];
    }

    /// <summary>What one picture's page shows on one local day, drawings and all.</summary>
    internal PictureLightView Page(Location place, VantagePoint stance, Composition picture, PictureUse use, HoursOut hours, LocalDate today, Func<PictureLightView> compute) =>
        Get(pages, new PageKey(Stamp.Of(place, stance, picture, use), today, hours), MostPages, compute);

    private static TValue Get<TKey, TValue>(ConcurrentDictionary<TKey, TValue> kept, TKey key, int most, Func<TValue> compute)
        where TKey : notnull
    {
        if (kept.TryGetValue(key, out var held))
            return held;
        if (kept.Count >= most)
            kept.Clear();
        return kept.GetOrAdd(key, _ => compute());
    }

    private readonly record struct SeasonKey(Stamp Of, YearMonth First, HoursOut Hours);

    private readonly record struct DatesKey(Stamp Of, LocalDate Today);

    private readonly record struct PageKey(Stamp Of, LocalDate Today, HoursOut Hours);

    /// <summary>Light depends on the picture, on where one stands and on the place's zone and sea level; its use on tide and ways too.</summary>
    private readonly record struct Stamp(int PictureId, uint Picture, uint Stance, uint Place, string Use)
    {
        public static Stamp Of(Location place, VantagePoint stance, Composition picture, PictureUse use) =>
            new(picture.Id, picture.Version, stance.Version, place.Version, use.Stamp);
    }
}
