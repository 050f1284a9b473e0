using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Keeping;
using NodaTime;

namespace Foreshore.Guide.Locations;

/// <summary>The next nights of places, and the full moons of their next year, computed once a day for each.</summary>
public sealed class PlaceNights(SharedSky sky, Kept kept)
{
    private const int List = 100, Night = 500, Moon = 100;

    public ValueTask<IReadOnlyList<PlaceNight>> NextAsync(LocalDate first, int count, Position at, DateTimeZone zone, Instant now, CancellationToken cancel) =>
        kept.GetAsync(new NightsKey(at, zone.Id, first, count), () => PlaceNight.Next(first, count, at, zone, sky.For(now)), nights => List + (long)Night * nights.Count, cancel);

    public ValueTask<IReadOnlyList<FullMoonAtTwilight>> FullMoonsAsync(LocalDate first, Position at, DateTimeZone zone, Instant now, CancellationToken cancel) =>
        kept.GetAsync(new MoonsKey(at, zone.Id, first), () => FullMoons.Between(first, first.PlusYears(1), new Observer(at, null, Skyline.AssumedSea), zone, sky.For(now)),
            moons => List + (long)Moon * moons.Count, cancel);

    private sealed record NightsKey(Position At, string Zone, LocalDate First, int Count);

    private sealed record MoonsKey(Position At, string Zone, LocalDate First);
}
