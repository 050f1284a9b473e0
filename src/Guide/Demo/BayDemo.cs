using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;
using NodaTime;
using static Foreshore.Guide.Demo.DemoCoast;

namespace Foreshore.Guide.Demo;

/// <summary>The two bay beaches: polished stones at Shingle Howe, sand and dark sky at Tern Bank.</summary>
internal static class BayDemo
{
    public static Location ShingleHowe(DemoCoast coast)
    {
        var place = Place(90, "shingle-howe", "Shingle Howe", 44.6279, -67.3879)
            .Describe("A bank of polished stones 800 m long that hisses in the backwash",
                "Rhyolite pebbles, plum to grey, rounded by the last 8,000 years and sorted by size from one end to the other. The bank is steep and moves: after a gale it may stand two metres "
                + "from where it stood. Behind it a salt pond drains through the stones.",
                "Jasper Bank")
            .JudgeTideBy(Cutler, CutlerMeanSea, new TideCorrections(4, 6, 0.96, 0.95))
            .OwnForeshore("Town", "Stones stay on the beach; there is a fine for taking them.").OpenBy(Hours("open"))
            .InEmergency(new EmergencyBlock(At(44.6279, -67.3879), "911, ask for the Coast Guard")
            {
                NearestRoad = "Starboard Road, beach car park",
                LastPhoneSignal = "Car park",
                ThrowLine = "Ring on the post at the path's end",
                ThrowLineSeenOn = coast.DaysAgo(47),
                WayOutOfWater = "West end, where the bank is low; elsewhere the stones roll under you",
                Shelter = "None",
            });
        var lot = place.AddParking(new ParkingArea("Beach car park", At(44.6287, -67.3897), "Stones, soft at the edge", coast.Says("Town's sign", 47, "Wes Pettibone")).Hold(18, 0)
            .FloodAbove(Above(5.2, Cutler, repeated: true)));
        place.AddOvernightRule(coast.Night(Sleeper.Vehicle, OvernightStanding.Forbidden, "Town's sign", 47, area: lot));
        var road = place.AddRoute("Starboard Road").From(lot, 0).Then(coast.Road("Starboard Road", 71, 63, "Narrow; school bus at seven and three."))
            .Then(Leg.Walk("On to the bank", 0.15, 3, 4, "Rolling stones", LegalStatus.Customary, coast.Says("Used without question; no record found", 47, "Wes Pettibone"))
                .NeverCutOff().Over(LegGround.SoftGround).ByNight(LightAtNight.KnownInTheDark)
                .Allow(Consent.Yes, Consent.Yes, DogRule.Yes));
        place.Rate(new HazardRating(HazardKind.Waves, 2, coast.Says("Club: dumping shore break", 47, "Wes Pettibone")));
        place.Rate(new HazardRating(HazardKind.Slip, 1, coast.Says("Club", 47, "Wes Pettibone")));
        place.Rate(new HazardRating(HazardKind.Other, 1, coast.Says("Club: stones thrown by the break in gales", 47, "Wes Pettibone")));

        var crest = place.AddVantagePoint(new VantagePoint("bank-crest", "Crest of the bank", VantageKind.Beach, At(44.6277, -67.3876), Footing.Steady,
                "Top of the upper berm, mid-beach; the curve runs off to both sides.")
            .CheckedAs(coast.Says("Club visit", 47, "Wes Pettibone"))
            .Reached(Reach.Waves)
            .Measure(new GroundHeight(7.2, 0.5, HeightMethod.Lidar, Cutler, coast.DaysAgo(500)))
            .Walk(3, 3, inTheDark: true, toBeyondReachMinutes: 2).NeverCutOff()
            .UsableBelow(Above(4.8, Cutler, repeated: true)).UsableIn(new SeaLimit(1.2, 10, 95, 175, isRepeated: true))
            .WatchFrom(new NearbyPlace("Car park bank", At(44.6286, -67.3894), 2)).Fit(10)
            .Draw(Drawn("0 3 land; 70 2.4 land; 88 1.2 land; 98 0 sea; 172 0.9 land; 200 2.2 land; 280 4 land"))
            .Sketched("shingle-howe-bank-crest.svg"));
        crest.Compose(new Composition("hiss-and-streaks", "Hiss and streaks", "Backwash drawing white lines down wet stones toward the rising sun.",
                116, Full(24), WantedLight.SunInFrame, WantedLight.TwilightGlow)
            .WishTide(TideWish.Band(Above(2.2, Cutler), Above(3.8, Cutler)))
            .WishGround(new GroundWish(GroundState.FreshlyWashed, Above(3.9, Cutler))).LookOfWater(WaterLook.Streaks)
            .Take("¼ s as the wave withdraws; mind the spray on the front glass."));
        crest.Compose(new Composition("dry-stones-close", "Dry stones, close", "Colour of the dry stones under cloud. Neaps, when the berm has not been wet for days.",
                240, Full(60), WantedLight.SoftLight, WantedLight.SideLight)
            .WishTide(TideWish.Band(null, Above(3.6, Cutler)).At(TideRange.Neaps))
            .WishGround(new GroundWish(GroundState.Dry, Above(5.4, Cutler))));

        var pond = place.AddVantagePoint(new VantagePoint("pond-rail", "Pond rail", VantageKind.OpenGround, At(44.6284, -67.3889), Footing.Anyone,
                "Rail at the salt pond behind the bank; still water when the sea is not.")
            .CheckedAs(coast.Says("Club visit", 47, "Wes Pettibone"))
            .Reached(Reach.None, "Behind the bank; the pond rises a hand's breadth with the tide and no more")
            .Measure(new GroundHeight(6.1, 0.5, HeightMethod.Lidar, Cutler, coast.DaysAgo(500)))
            .Walk(2, 2, inTheDark: true, toBeyondReachMinutes: 0).NeverCutOff().Fit(5)
            .By(road, walkInMinutes: 2, walkOutMinutes: 2)
            .Draw(Drawn("0 4 land; 60 3 land; 110 2.5 land; 170 2.5 land; 220 3 land; 300 5 land"))
            .Sketched("shingle-howe-pond-rail.svg"));
        pond.Compose(new Composition("pond-under-the-arch", "Pond under the arch", "Earth's shadow and the rosy arch, twice, in the pond.",
                292, Full(28), WantedLight.AntiTwilightArch).LookOfWater(WaterLook.Any));
        pond.Compose(new Composition("reeds-against-the-sun", "Reeds against the sun", "Seed heads lit from behind on winter afternoons.",
                225, Full(180), WantedLight.BackLight, WantedLight.GoldenLight));
        return place;
    }

    public static Location TernBank(DemoCoast coast)
    {
        var place = Place(100, "tern-bank", "Tern Bank", 44.6107, -67.4812)
            .Describe("Half-moon of grey sand that gave the club its name; the place for stars",
                "The one long sand beach of the bays, 700 m, facing south, with a pond and a field behind it. No lamp shows over the sea from here, and the glow of the towns lies behind the hill. "
                + "Least terns nested on the upper bank until the seventies; the club was founded in the pavilion in 1951.")
            .JudgeTideBy(Cutler, CutlerMeanSea, new TideCorrections(3, 4, 0.94, 0.94))
            .OwnForeshore("State park", "Closed from sunset except by permit; the club has one.").OpenBy(Hours("sunrise-sunset or by permit"), "the park manager, by letter, four weeks ahead")
            .InEmergency(new EmergencyBlock(At(44.6107, -67.4812), "911, ask for the Coast Guard")
            {
                NearestRoad = "Bluff Road, along the whole beach",
                LastPhoneSignal = "Anywhere by the road",
                ThrowLine = "Ring on the pavilion's seaward post",
                ThrowLineSeenOn = coast.DaysAgo(28),
                WayOutOfWater = "Sand, shelving, the whole length",
                Shelter = "Pavilion, roof only",
            });
        var lot = place.AddParking(new ParkingArea("Pavilion car park", At(44.6112, -67.4820), "Asphalt", coast.Says("Park's sign", 28, "Ada Thorsen"))
            .Hold(60, 5, "USD").Lock(new LocalTime(21, 0), new LocalTime(7, 0)).OpenBy(Hours("07:00-21:00")).FloodAbove(Above(5.4, Cutler)));
        var verge = place.AddParking(new ParkingArea("Bluff Road verge", At(44.6115, -67.4838), "Grass verge", coast.Says("Club visit", 28, "Ada Thorsen"))
            .Hold(8, 0).Note("On the road side, for those who stay after the lot is shut."));
        place.AddOvernightRule(coast.Night(Sleeper.Vehicle, OvernightStanding.Forbidden, "Park's sign", 28, area: lot));
        place.AddOvernightRule(coast.Night(Sleeper.Motorhome, OvernightStanding.Forbidden, "Park's sign", 28, area: lot));
        place.AddOvernightRule(coast.Night(Sleeper.Tent, OvernightStanding.Forbidden, "Park's sign", 28));
        var beach = Leg.Walk("Over the bank to the sand", 0.2, 4, 2, "Boardwalk, sand", LegalStatus.OpenAccess, coast.Says("Park's sign", 28, "Ada Thorsen"))
            .NeverCutOff().Over(LegGround.SoftGround).ByNight(LightAtNight.KnownInTheDark)
            .Allow(Consent.Yes, Consent.Yes, DogRule.No).Open(new LocalTime(9, 0), new LocalTime(21, 0), "Later by the club's permit")
            .OpenBy(Hours("09:00-21:00 or by permit"), "Later by the club's permit", "the park manager, by letter, four weeks ahead");
        var bluff = place.AddRoute("Bluff Road").From(lot, 0).From(verge, 4).Then(coast.Road("Bluff Road", 80, 70, "Park on the road side once the lot is shut.")).Then(beach);
        place.AddPermission(new PermissionLetter("Park manager", "The park after sunset, members of the club", coast.DaysAgo(210), null));
        place.AddPermission(new PermissionLetter("Park manager", "Night photography on the sand, up to eight people, no vehicles", coast.DaysAgo(210), coast.DaysAgo(-155), beach));
        place.Rate(new HazardRating(HazardKind.Waves, 1, coast.Says("Club", 28, "Ada Thorsen")));
        place.Rate(new HazardRating(HazardKind.ColdWater, 1, coast.Says("Club", 28, "Ada Thorsen")));
        place.Close(Closure.EveryYear(new AnnualDate(12, 20), new AnnualDate(1, 5), "Pavilion car park not ploughed over the holidays", "State park").Of(lot));

        var bank = place.AddVantagePoint(new VantagePoint("pavilion-bank", "Pavilion bank", VantageKind.OpenGround, At(44.6109, -67.4815), Footing.Anyone,
                "Grass bank beside the pavilion: level, wide, and no lamp until one turns inland.")
            .CheckedAs(coast.Says("Club visit", 28, "Ada Thorsen"))
            .Reached(Reach.None, "Behind the sea wall of 1938; no water in it since, two winter storms watched")
            .Measure(new GroundHeight(8.1, 0.4, HeightMethod.Lidar, Cutler, coast.DaysAgo(500)))
            .Walk(3, 3, inTheDark: true, toBeyondReachMinutes: 0).NeverCutOff().Fit(15)
            .By(bluff, walkInMinutes: 3, walkOutMinutes: 3)
            .Draw(Drawn("0 5 land; 84 1.4 land; 108 0.8 land; 122 0 sea; 214 0.7 land; 238 1.4 land; 300 4 land"))
            .Sketched("tern-bank-pavilion-bank.svg"));
        bank.Compose(new Composition("core-over-the-sea", "The core over the sea", "The galaxy's core standing on the sea, June to August before midnight.",
                182, Full(24, Orientation.Portrait), WantedLight.GalaxyCore).Face(182, tiltDegrees: 16).GalaxyFromFive()
            .Take("Red lamp. Dew strap from July."));
        bank.Compose(new Composition("band-from-hill-to-sea", "The band from hill to sea", "The whole band as an arch: three frames upright.",
                120, Full(20, Orientation.Portrait), WantedLight.GalaxyBand).Face(120, tiltDegrees: 30));
        bank.Compose(new Composition("winter-dusk-on-the-bay", "Winter dusk on the bay", "Afterglow over the western arm, a lit window if one is lucky.",
                232, Full(50), WantedLight.TwilightGlow, WantedLight.BlueLight));
        bank.Compose(new Composition("old-moon-over-the-arm", "Old moon over the eastern arm", "The last crescent before new, in the green of the dawn.",
                104, Full(200), WantedLight.ThinCrescent));

        var sand = place.AddVantagePoint(new VantagePoint("wet-sand", "Wet sand", VantageKind.Beach, At(44.6102, -67.4808), Footing.Anyone,
                "The lower beach where the stream fans out; mirrors for a quarter of an hour behind the ebb.")
            .CheckedAs(coast.Says("Club visit", 28, "Ada Thorsen"))
            .Reached(Reach.Waves)
            .Measure(new GroundHeight(2.3, 0.3, HeightMethod.StillWaterMark, Cutler, coast.DaysAgo(160), "Calm water at the stake 09:20 and 09:58 on two tides"))
            .Walk(6, 6, inTheDark: true, toBeyondReachMinutes: 3).NeverCutOff()
            .UsableBelow(Above(1.9, Cutler)).UsableIn(new SeaLimit(0.6, 8, 150, 220)).Fit(20)
            .WatchFrom(new NearbyPlace("Pavilion bank", At(44.6109, -67.4815), 3)
                .SeenFromMinusNine("Pale sand under a wide sky: the warden saw stake and foam from the bank with the sun nine degrees down, on three mornings"))
            .Sketched("tern-bank-wet-sand.svg"));
        sand.Compose(new Composition("sky-on-the-sand", "Sky on the sand", "Colour above and below, one line of foam between.",
                140, Full(18), WantedLight.TwilightGlow, WantedLight.GoldenLight)
            .WishTide(TideWish.About(TideTurn.HighWater, 120, 270).While(TideFlow.Falling).At(TideRange.Springs))
            .WishGround(new GroundWish(GroundState.FreshlyWashed, Above(2.3, Cutler)))
            .WishSea(SeaWish.Band("calm only", null, 0.6)).LookOfWater(WaterLook.Smooth));
        return place;
    }
}
