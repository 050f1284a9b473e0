using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;
using NodaTime;
using static Foreshore.Guide.Demo.DemoCoast;

namespace Foreshore.Guide.Demo;

/// <summary>The western end: the long neck with its far light, and the ledges at the open corner of the coast.</summary>
internal static class WesternDemo
{
    public const string OldSlug = "pidgeon-neck";
    public const string NewSlug = "pigeon-neck";

    public static Location PigeonNeck(DemoCoast coast)
    {
        var place = Place(140, NewSlug, "Pigeon Neck", 44.4015, -67.8998)
            .Describe("A neck 6 km long ending in boulders, with a tall grey light far out to the south-east",
                "Blueberry heath, jack pine, then a boulder shore on both sides. The light on its bare island, 4.6 km off the end, is 36 m of grey granite and the second tallest of this coast. "
                + "Heath turns scarlet in the first week of October.")
            .JudgeTideBy(Milbridge, MilbridgeMeanSea)
            .OwnForeshore("Wildlife refuge", "Sunrise to sunset, except by permit.").OpenBy(Hours("sunrise-sunset or by permit"), "the refuge office, 207 555 0173, weekdays")
            .InEmergency(new EmergencyBlock(At(44.4015, -67.8998), "911; the refuge office answers by day")
            {
                NearestRoad = "Neck Road, trail head",
                LastPhoneSignal = "Heath, first bench",
                ThrowLine = "None",
                WayOutOfWater = "Boulders; pocket of sand on the west side",
                Shelter = "None",
            });
        var head = place.AddParking(new ParkingArea("Trail head", At(44.4193, -67.8990), "Gravel", coast.Says("Refuge board", 380, "Marguerite Doyle")).Hold(9, 0));
        place.AddOvernightRule(coast.Night(Sleeper.Vehicle, OvernightStanding.Forbidden, "Refuge board", 380));
        var shore = Leg.Walk("Shore loop", 2.3, 42, 20, "Heath path, boulders", LegalStatus.OpenAccess, coast.Says("Refuge board", 380, "Marguerite Doyle"))
            .NeverCutOff().Over(LegGround.Boulders).ByNight(LightAtNight.KnownInTheDark)
            .Allow(Consent.Yes, Consent.Yes, DogRule.No).Draw(At(44.4193, -67.8990), At(44.4110, -67.8975), At(44.4050, -67.8985), At(44.4015, -67.8998));
        var bridge = Leg.Walk("West loop, over the footbridge", 1.9, 34, 15, "Heath path", LegalStatus.OpenAccess, coast.Says("Refuge board", 380, "Marguerite Doyle"))
            .NeverCutOff().Over(LegGround.Firm).ByNight(LightAtNight.NotKnownInTheDark)
            .Allow(Consent.Yes, Consent.Yes, DogRule.No);
        var west = place.AddRoute("West loop").From(head, 0).Then(coast.Road("Neck Road", 128, 104, "Gravel after the farm.")).Then(bridge);
        var round = place.AddRoute("Shore loop").From(head, 0).Then(coast.Road("Neck Road", 128, 104, "Gravel after the farm.")).Then(shore);
        place.Close(Closure.Between(coast.DaysAgo(60), coast.DaysAgo(-120), "Footbridge washed out", "Refuge", ClosureState.LiftAsked).Of(bridge));
        place.Close(Closure.Between(coast.DaysAgo(300), coast.DaysAgo(240), "Fire on the heath", "Refuge", ClosureState.InForce)).Lift();
        place.Rate(new HazardRating(HazardKind.Path, 2, coast.Says("Club: boulders, slow", 380, "Marguerite Doyle")));
        place.Rate(new HazardRating(HazardKind.Animals, 2, coast.Says("Club: hunting season, ticks", 380, "Marguerite Doyle")));
        place.Report(new HazardNote(HazardKind.Path, 3, "Footbridge on the west loop gone; banks undercut on both sides.", coast.DaysAgo(61)).At("West loop, at the stream", At(44.4105, -67.9040))).Confirm(coast.DaysAgo(60));

        var heath = place.AddVantagePoint(new VantagePoint("heath-bench", "Heath bench", VantageKind.OpenGround, At(44.4089, -67.8981), Footing.Anyone,
                "Bench on the heath's one rise; the light stands clear above the pines.")
            .CheckedAs(coast.Says("Club visit", 50, "Marguerite Doyle"))
            .Reached(Reach.None, "Inland, 21 m up")
            .Measure(new GroundHeight(21, 1, HeightMethod.Chart, Milbridge, coast.DaysAgo(700)))
            .Walk(20, 20, inTheDark: true, toBeyondReachMinutes: 0).NeverCutOff().Fit(4)
            .By(round, walkInMinutes: 20, walkOutMinutes: 20).By(west, walkInMinutes: 26, walkOutMinutes: 26)
            .Draw(Drawn("0 2 land; 80 0.8 land; 112 0.2 sea; 160 0.4 land; 205 0.6 land; 240 1.5 land; 300 3 land"))
            .Sketched("pigeon-neck-heath-bench.svg"));
        heath.Compose(new Composition("scarlet-heath", "Scarlet heath", "The heath in its October red, low sun from the side.",
                150, Full(28), WantedLight.SideLight, WantedLight.FrontLight));
        heath.Compose(new Composition("winter-band", "The winter band", "The faint winter band upright over the neck.",
                200, Full(14, Orientation.Portrait), WantedLight.GalaxyBand, WantedLight.StarTrails).Face(200, tiltDegrees: 35));

        var end = place.AddVantagePoint(new VantagePoint("boulder-end", "Boulder end", VantageKind.Beach, At(44.3992, -67.9001), Footing.SureFooted,
                "The last big boulder with a flat top. How high the sea comes is guessed, not measured.")
            .CheckedAs(coast.Says("Club visit", 50, "Marguerite Doyle"))
            .Reached(Reach.Waves)
            .Walk(45, 45, inTheDark: false).Fit(1)
            .By(west, endMinutes: 5).By(round, endMinutes: 3, walkInMinutes: 45, walkOutMinutes: 45)
            .Sketched("pigeon-neck-boulder-end.svg"));
        end.Compose(new Composition("far-light", "The far light", "The grey tower alone on the line of the sea, sun coming up to the left of it.",
                141, Full(400), WantedLight.TwilightGlow, WantedLight.BlueLight)
            .Show(new Subject("Grey light on its island", At(44.3675, -67.8644), 3, 36)).LookOfWater(WaterLook.Smooth));
        return place;
    }

    public static Location AnvilLedges(DemoCoast coast)
    {
        var place = Place(150, "anvil-ledges", "Anvil Ledges", 44.3346, -68.0581)
            .Describe("Pink ledges cut by black dykes at the open corner of the coast; the best storm seas there are",
                "Granite laid down 420 million years ago, split by basalt dykes a metre or two wide that the sea has worn into trenches. Open from north-east by south to west: "
                + "any swell in the gulf ends here.\n\nPeople are lost here every few years, most of them on fine days after a distant storm.",
                "The Anvil")
            .JudgeTideBy(Milbridge, MilbridgeMeanSea, new TideCorrections(-4, -2, 0.93, 0.93))
            .OwnForeshore("National park", "Road open at all hours; no overnight stays.").OpenBy(Hours("open"))
            .InEmergency(new EmergencyBlock(At(44.3346, -68.0581), "911, ask for the Coast Guard and the park's rangers")
            {
                NearestRoad = "Loop road, car park at the point",
                LastPhoneSignal = "Car park, weak",
                ThrowLine = "Box at the top of the ledges",
                ThrowLineSeenOn = coast.DaysAgo(14),
                WayOutOfWater = "None on the ledges; east cove, gravel",
                Shelter = "Toilet block",
            });
        var lot = place.AddParking(new ParkingArea("Point car park", At(44.3352, -68.0592), "Asphalt", coast.Says("Park's board", 14, "Ada Thorsen")).Hold(45, 0).Bar(2.9));
        place.AddOvernightRule(coast.Night(Sleeper.Vehicle, OvernightStanding.Forbidden, "Park's board", 14, area: lot));
        place.AddOvernightRule(coast.Night(Sleeper.Motorhome, OvernightStanding.Forbidden, "Park's board", 14, area: lot));
        place.AddOvernightRule(coast.Night(Sleeper.Tent, OvernightStanding.Forbidden, "Park's board", 14));
        var pierLot = place.AddParking(new ParkingArea("Long-stay lot, bay ferry", At(44.3921, -68.2043), "Gravel", coast.Says("Timetable on the pier", 140, "Ada Thorsen"))
            .Hold(120, 6, "USD").Note("Behind the pier."));
        var loop = place.AddRoute("Loop road").From(lot, 0).Then(coast.Road("Route 186 and the loop road", 150, 118, "One way, clockwise."))
            .Then(Leg.Walk("On to the ledges", 0.2, 4, 6, "Rock", LegalStatus.RightOfWay, coast.Says("Park's board", 14, "Ada Thorsen"))
                .NeverCutOff().Over(LegGround.WetRock).ByNight(LightAtNight.KnownInTheDark)
                .Allow(Consent.Yes, Consent.Yes, DogRule.OnLead));
        var ferry = place.AddRoute("By the bay ferry and the bus").From(pierLot, 4).Note("Summer only; saves the drive round the bay.")
            .Then(coast.Road("To the bay ferry", 120, 100, "Long-stay lot behind the pier."))
            .Then(Leg.ByFerry("Across the bay", new FerryFacts(55, new LocalTime(7, 0), new LocalTime(18, 30), 150, 20).Costing(28, "USD").Saving(35)
                    .Sailing(Sails("15 May-15 Oct first 07:00 last 17:00 every 150; no sailings"), Sails("15 May-15 Oct first 08:30 last 18:30 every 150; no sailings")), LegalStatus.RightOfWay,
                coast.Says("Timetable on the pier", 140, "Ada Thorsen")).Allow(Consent.Yes, Consent.Yes, DogRule.OnLead)
                .NeverCutOff().Over(LegGround.Firm).ByNight(LightAtNight.Lit))
            .Then(Leg.Otherwise("Island bus to the point", 25, "Free, every hour, last one at 17:00.", LegalStatus.RightOfWay, coast.Says("Timetable on the pier", 140, "Ada Thorsen"))
                .NeverCutOff().Over(LegGround.Firm).ByNight(LightAtNight.Lit)
                .OpenBy(Hours("15 May-15 Oct 08:00-17:00; closed"))
                .Allow(Consent.Yes, Consent.Yes, DogRule.OnLead));
        place.Rate(new HazardRating(HazardKind.Waves, 4, coast.Says("Club and park", 14, "Ada Thorsen")));
        place.Rate(new HazardRating(HazardKind.Slip, 2, coast.Says("Club", 14, "Ada Thorsen")));
        place.Report(new HazardNote(HazardKind.Waves, 4, "Sea came over the middle trench twice in an hour on a fine afternoon; two visitors knocked down, not hurt.", coast.DaysAgo(2))
            .At("Middle trench, seaward of the plaque", At(44.3340, -68.0577)));
        place.Report(new HazardNote(HazardKind.Traffic, 1, "Loop road up for drains, single file.", coast.DaysAgo(120))).End(coast.DaysAgo(90));

        var wall = place.AddVantagePoint(new VantagePoint("car-park-wall", "Car park wall", VantageKind.OpenGround, At(44.3351, -68.0588), Footing.Anyone,
                "Behind the wall, from where the club photographs storms. Nobody goes in front of it then.")
            .CheckedAs(coast.Says("Club visit", 14, "Ada Thorsen"))
            .Reached(Reach.None, "11 m above chart datum, 90 m from the edge; spray only, in the worst storm seen")
            .Measure(new GroundHeight(11.2, 0.3, HeightMethod.Levelling, Milbridge, coast.DaysAgo(330)))
            .Walk(1, 1, inTheDark: true, toBeyondReachMinutes: 0).NeverCutOff().Fit(12)
            .By(loop, walkInMinutes: 1, walkOutMinutes: 1).By(ferry, endMinutes: 2)
            .Draw(Drawn("0 6 land; 40 2 land; 62 0 sea; 228 0.6 land; 246 1.1 land; 275 2.2 land; 320 5 land"))
            .Sketched("anvil-ledges-car-park-wall.svg"));
        wall.Compose(new Composition("storm-on-the-anvil", "Storm on the anvil", "Bursts twice the height of a house, from behind the wall.",
                160, Full(200), WantedLight.AnyDaylight).WishSea(SeaWish.Band("storm", 3, null).Period(9, null)).LookOfWater(WaterLook.Frozen));
        wall.Compose(new Composition("hills-across-the-bay", "Hills across the bay", "The bare hills across the bay against the sunset; the highest is 466 m.",
                276, Full(135), WantedLight.TwilightGlow, WantedLight.SunburstOverSkyline)
            .Show(new Subject("Highest hill across the bay", At(44.3527, -68.2251), 0, 466)));

        var trench = place.AddVantagePoint(new VantagePoint("middle-trench", "Middle trench", VantageKind.Ledge, At(44.3341, -68.0578), Footing.SureFooted,
                "Beside the widest dyke. Only in flat calm, and not while a severe note stands.")
            .CheckedAs(coast.Says("Club visit", 14, "Ada Thorsen"))
            .Reached(Reach.Waves)
            .Measure(new GroundHeight(5.9, 0.3, HeightMethod.Levelling, Milbridge, coast.DaysAgo(330)))
            .Walk(5, 5, inTheDark: false, toBeyondReachMinutes: 3).NeverCutOff()
            .By(loop, endMinutes: 1, walkInMinutes: 5, walkOutMinutes: 5).By(ferry, endMinutes: 6)
            // Judged before the place was given the nearer station: it reads "needs checking" until somebody judges it again.
            .UsableBelow(Above(2.6, Cutler)).UsableIn(new SeaLimit(0.6, 8, 45, 260))
            .WatchFrom(new NearbyPlace("Car park wall", At(44.3351, -68.0588), 4))
            .Under(new CliffAbove(2.5, 1, "A step in the ledge, not a cliff; solid, nothing above it")).Fit(2)
            .Sketched("anvil-ledges-middle-trench.svg"));
        trench.Compose(new Composition("black-into-pink", "Black into pink", "The dyke running out to sea as a black road through pink rock.",
                135, Full(20), WantedLight.GoldenLight, WantedLight.SoftLight)
            .WishTide(TideWish.Band(null, Above(1.5, Cutler)).At(TideRange.Springs)).WishSea(SeaWish.Band("calm only", null, 0.6)).LookOfWater(WaterLook.FlowingFormKept));
        return place;
    }
}
