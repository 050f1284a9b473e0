using Foreshore.Almanac.Earth;
using Foreshore.Guide;
using Foreshore.Guide.Database;
using Foreshore.Guide.Demo;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Filler;

/// <summary>The demo's coast many times over, one stretch after the other along the shore.</summary>
internal static class Coast
{
    private const double StretchDegrees = 0.35;

    public static async Task<bool> FillAsync(string connection, Asked asked)
    {
        await using (var db = GuideConnection.Open(connection))
            if (!await DemoGuide.LoadAsync(db, SystemClock.Instance))
                return false;

        var random = new Random(asked.Seed);
        var today = SystemClock.Instance.GetCurrentInstant().InZone(DateTimeZoneProviders.Tzdb[DemoGuide.ZoneId]).Date;
        for (var stretch = 1; stretch < asked.Times; stretch++)
        {
            await using var db = GuideConnection.Open(connection);
            var places = DemoGuide.Locations(today);
            // First, so that their numbers run in the order written.
            db.AddRange(places.SelectMany(place => place.VantagePoints));
            db.AddRange(places);
            foreach (var place in places)
                Move(db, place, stretch, random);
            await db.SaveChangesAsync();
        }

        return true;
    }

    private static void Move(GuideDb db, Location place, int stretch, Random random)
    {
        // Southward and out of each other's way; what lies at a place moves along.
        var (south, east) = (-StretchDegrees * stretch / 2 + random.NextDouble() * 0.01, StretchDegrees * stretch / 3 + random.NextDouble() * 0.01);
        place.ChangeSlug($"{place.Slug}-{stretch}").Call($"{place.Name} {stretch}").TakeOrder(place.CoastOrder + stretch * 1000).MoveTo(Moved(place.Position));
        foreach (var stance in place.VantagePoints)
        {
            var moved = Moved(stance.Position);
            db.Entry(stance).Property(each => each.LatitudeDegrees).CurrentValue = moved.LatitudeDegrees;
            db.Entry(stance).Property(each => each.LongitudeDegrees).CurrentValue = moved.LongitudeDegrees;
        }

        Position Moved(Position at) => new(at.LatitudeDegrees + south, at.LongitudeDegrees + east);
    }
}
