using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Demo;

/// <summary>An invented club's guide, loaded into an empty database so that a first run has something to read.</summary>
public static class DemoGuide
{
    public const string ZoneId = "America/New_York";

    /// <summary>Loads the demo unless the database already holds a club or a place. True when it was loaded.</summary>
    public static async Task<bool> LoadAsync(IDbContextFactory<GuideDb> database, IClock clock, CancellationToken cancel = default)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        return await LoadAsync(db, clock, cancel);
    }

    public static async Task<bool> LoadAsync(GuideDb db, IClock clock, CancellationToken cancel = default)
    {
        if (await db.ClubSettings.AnyAsync(cancel) || await db.Locations.AnyAsync(cancel))
            return false;

        var today = clock.GetCurrentInstant().InZone(DateTimeZoneProviders.Tzdb[ZoneId]).Date;
        var locations = Locations(today);
        var queue = new DemoQueue(locations, clock.GetCurrentInstant());
        var renamed = locations.Single(l => l.Slug == WesternDemo.NewSlug);

        // One transaction, whole or not at all; the strategy repeats it if the connection breaks.
        await db.OnceAsync(async () =>
        {
            db.ChangeTracker.Clear();
            // Saved under its first address, then moved, so that the old one answers 301 as on a lived-in site.
            renamed.ChangeSlug(WesternDemo.OldSlug);
            db.Add(Settings());
            db.AddRange(Cautions());
            db.AddRange(queue.People);
            queue.Report();
            // First, so that their numbers run in the order written; else those that a closure names would come before the others.
            db.AddRange(locations.SelectMany(l => l.VantagePoints));
            db.AddRange(locations);
            await db.SaveChangesAsync(cancel);
            renamed.ChangeSlug(WesternDemo.NewSlug);
            db.AddRange(queue.Proposals());
            await db.SaveChangesAsync(cancel);
        }, cancel);
        return true;
    }

    /// <summary>The demo's places as of a day; also what tests look through.</summary>
    internal static IReadOnlyList<Location> Locations(LocalDate today)
    {
        var coast = new DemoCoast(today);
        return
        [
            PassageDemo.HerringSlip(coast), PassageDemo.SorrelHolm(coast),
            HeadlandDemo.HalfmoonLight(coast), HeadlandDemo.GannetStairs(coast),
            QuarryDemo.LongSlip(coast), QuarryDemo.WidowsTable(coast),
            FarrowDemo.FarrowHarbour(coast), FarrowDemo.LanternIsland(coast),
            BayDemo.ShingleHowe(coast), BayDemo.TernBank(coast),
            ReachDemo.CanneryPoint(coast), ReachDemo.SkerrinHollow(coast), ReachDemo.KetchPoint(coast),
            WesternDemo.PigeonNeck(coast), WesternDemo.AnvilLedges(coast),
        ];
    }

    internal static ClubSettings Settings() => new ClubSettings("Tern Bank Camera Club", "the Tern Bank coast")
        .Introduce(
            "Places between Herring Slip and the Anvil, in the order one passes them with the sea on the left. Kept by the club's "
            + "members; wardens check hazards every three months and everything else once a year.",
            "https://ternbank.example/cautions")
        .GoOutBetween(new LocalTime(4, 30), new LocalTime(22, 30))
        .MarkAsDemo();

    internal static IReadOnlyList<CountryCautions> Cautions() =>
    [
        new(null, UsualCautions, "112, or the local number", "the coastguard"),
        new CountryCautions("US", [.. UsualCautions, "Hunting is lawful on much of this coast in autumn: wear something bright on the way in."], "911", "the Coast Guard; by marine radio, channel 16")
            .PointTo("National Weather Service, Caribou", "https://www.weather.gov/car/"),
    ];

    private static readonly string[] UsualCautions =
    [
        "Watch the sea for 30 minutes before you go near it. The biggest wave of your stay is more likely to come after you stop watching than while you watch.",
        "Never turn your back on the sea. Where you feel spray, you stand too close.",
        "Do not go alone, and tell someone ashore where you are and when you will be back.",
        "The way out is often cut off while the ledge is still dry: turn back by the time you set, not by what you see at your feet.",
        "Keep the height of a cliff away from its foot, and stay back from its edge; more so after rain or frost.",
        "If somebody is in the water, do not go in after them. Call for help, throw something that floats, keep them in sight.",
    ];
}
