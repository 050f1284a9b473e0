using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;
using NodaTime;
using static Foreshore.Guide.Demo.DemoCoast;

namespace Foreshore.Guide.Demo;

/// <summary>The sheltered harbour, and the island light one reaches by its ferry.</summary>
internal static class FarrowDemo
{
    public static Location FarrowHarbour(DemoCoast coast)
    {
        var place = Place(70, "farrow-harbour", "Farrow Harbour", 44.6574, -67.2058)
            .Describe("Sheltered harbour behind an island: forty boats, still water when it blows outside",
                "The deepest natural harbour between the passage and the bays; a wooded island stops its mouth like a cork. Forty lobster boats lie to one side of the fairway, "
                + "bows to the wind. When the sky fails and the sea is up, this is where the club goes.")
            .JudgeTideBy(Cutler, CutlerMeanSea)
            .OwnForeshore("Town and four families; ask before going on a private float", "Skiffs on the town float are not for borrowing.").OpenBy(Hours("open"))
            .InEmergency(new EmergencyBlock(At(44.6574, -67.2058), "911, ask for the Coast Guard")
            {
                NearestRoad = "Route 191, head of the town wharf",
                LastPhoneSignal = "Everywhere on the wharf",
                ThrowLine = "Two rings on the town wharf",
                ThrowLineSeenOn = coast.DaysAgo(33),
                WayOutOfWater = "Ladder at the wharf's corner; slip beside it",
                Shelter = "Bait shed, unlocked",
            });
        var wharfLot = place.AddParking(new ParkingArea("Town wharf", At(44.6577, -67.2066), "Asphalt", coast.Says("Harbour master", 33, "Ada Thorsen")).Hold(14, 0)
            .FloodAbove(Above(5.6, Cutler)).Note("Outer row belongs to the boats."));
        place.AddOvernightRule(coast.Night(Sleeper.Vehicle, OvernightStanding.Allowed, "Harbour master", 33, "Harbour master, by word and by the board", wharfLot));
        place.AddOvernightRule(coast.Night(Sleeper.Motorhome, OvernightStanding.Forbidden, "Harbour master", 33, area: wharfLot));
        var wharf = place.AddRoute("Route 191").From(wharfLot, 0).Then(coast.Road("Route 191", 52, 46, "Deer. The hill above the harbour ices first."))
            .Then(Leg.Walk("Out on the wharf", 0.1, 2, 0, "Planks", LegalStatus.Permissive, coast.Says("Harbour master", 33, "Ada Thorsen"))
                .NeverCutOff().Over(LegGround.Firm).ByNight(LightAtNight.Lit)
                .Allow(Consent.Yes, Consent.Yes, DogRule.OnLead));
        place.Rate(new HazardRating(HazardKind.BoatWash, 1, coast.Says("Club", 33, "Ada Thorsen")));
        place.Rate(new HazardRating(HazardKind.ColdWater, 2, coast.Says("Club: one ladder only on this side", 33, "Ada Thorsen")));

        var corner = place.AddVantagePoint(new VantagePoint("wharf-corner", "Wharf corner", VantageKind.Pier, At(44.6572, -67.2053), Footing.Anyone,
                "South-east corner, inside the stringer. The fleet to the left, the gap to the right.")
            .CheckedAs(coast.Says("Club visit", 33, "Ada Thorsen"))
            .Reached(Reach.None, "Deck 1.2 m above the highest tide, and the island shuts the sea out")
            .Measure(new GroundHeight(6.6, 0.1, HeightMethod.Levelling, Cutler, coast.DaysAgo(320), "Levelled from the tide station's bench mark, 300 m off"))
            .Walk(2, 2, inTheDark: true, toBeyondReachMinutes: 0).NeverCutOff().Fit(8)
            .Draw(Drawn("0 7 land; 70 6 land; 96 3 land; 104 0 sea; 110 2.5 land; 138 3.4 land; 172 1.2 land; 190 5 land; 300 8 land"))
            .Sketched("farrow-harbour-wharf-corner.svg"));
        corner.Compose(new Composition("fleet-in-fog", "Fleet in fog", "Boats going grey by distance, five or six deep. Any soft morning.",
                72, Full(85), WantedLight.SoftLight).LookOfWater(WaterLook.Smooth));
        corner.Compose(new Composition("the-gap-at-dawn", "The gap at dawn", "The one gap of open sea with colour behind it and a boat going out through it.",
                106, Full(135), WantedLight.TwilightGlow, WantedLight.BackLight));
        corner.Compose(new Composition("mirror-fleet", "Mirror fleet", "Hulls doubled. An hour each side of high water, before the day's wind.",
                60, Full(50), WantedLight.BlueLight, WantedLight.GoldenLight)
            .WishTide(TideWish.About(TideTurn.HighWater, -60, 60)).WishSea(SeaWish.Reflections));

        var hill = place.AddVantagePoint(new VantagePoint("church-hill", "Church hill", VantageKind.OpenGround, At(44.6597, -67.2094), Footing.Anyone,
                "Churchyard wall above the houses. Nobody minds tripods outside service hours.")
            .CheckedAs(coast.Says("Club visit", 33, "Ada Thorsen"))
            .Reached(Reach.None, "On the hill, 250 m from the water")
            .Measure(new GroundHeight(27, 0.6, HeightMethod.Lidar, Cutler, coast.DaysAgo(500)))
            .Walk(6, 5, inTheDark: true, toBeyondReachMinutes: 0).NeverCutOff().Fit(6)
            .By(wharf, walkInMinutes: 6, walkOutMinutes: 5)
            .Draw(Drawn("0 5 land; 80 1.6 land; 112 0.9 land; 128 0.3 sea; 140 1 land; 180 2 land; 250 6 land"))
            .Sketched("farrow-harbour-church-hill.svg"));
        hill.Compose(new Composition("harbour-in-evening-sun", "Harbour in evening sun", "The fleet lit from behind you, island dark beyond.",
                128, Full(70), WantedLight.FrontLight, WantedLight.GoldenLight));
        hill.Compose(new Composition("moon-rising-from-the-gap", "Moon rising from the gap", "Once or twice a winter the full moon comes straight out of the gap.",
                122, Full(300), WantedLight.FullMoonBalanced));
        return place;
    }

    public static Location LanternIsland(DemoCoast coast)
    {
        var place = Place(80, "lantern-island", "Lantern Island", 44.6508, -67.1932)
            .Describe("Island light at the harbour's mouth; by ferry only, and the last boat does not wait",
                "Six hectares of spruce and bare rock with a short iron tower of 1876. The keeper's house is let by the week. The ocean side is steep and loud, the harbour side a mossy wood.")
            .JudgeTideBy(Cutler, CutlerMeanSea)
            .OwnForeshore("Lantern Island Association", "Day visitors keep to the marked path.").OpenBy(Hours("open"))
            .InEmergency(new EmergencyBlock(At(44.6508, -67.1932), "911, ask for the Coast Guard; the boatman listens on channel 10")
            {
                NearestRoad = "None; town wharf, 1.2 km by water",
                LastPhoneSignal = "Landing stage",
                ThrowLine = "Landing stage and the tower's door",
                ThrowLineSeenOn = coast.DaysAgo(75),
                WayOutOfWater = "Landing stage on the harbour side only",
                Shelter = "Porch of the keeper's house",
            });
        var bays = place.AddParking(new ParkingArea("Ferry bays, town wharf", At(44.6577, -67.2068), "Asphalt", coast.Says("Harbour master", 33, "Ada Thorsen")).Hold(6, 0));
        place.AddOvernightRule(coast.Night(Sleeper.Tent, OvernightStanding.Forbidden, "Association's leaflet", 75));
        place.AddRoute("By the island boat").From(bays, 1).Note("May to October. In November the boatman goes on a telephone call, if he likes the sky.")
            .Then(coast.Road("Route 191", 52, 46, "As for Farrow Harbour."))
            .Then(Leg.ByFerry("Town wharf to the landing stage",
                new FerryFacts(9, new LocalTime(5, 30), new LocalTime(20, 15), 45, 10).Costing(12, "USD")
                    .Sailing(Sails("1 May-31 Oct first 05:30 last 19:45 every 45; 1 Nov-30 Nov on request; no sailings"), Sails("1 May-31 Oct first 06:00 last 20:15 every 45; 1 Nov-30 Nov on request; no sailings")), LegalStatus.Permissive,
                coast.Says("Boatman's board", 75, "Marguerite Doyle", "https://ternbank.example/island-boat")).Allow(Consent.AskFirst, Consent.Yes, DogRule.No)
                .NeverCutOff().Over(LegGround.Firm).ByNight(LightAtNight.Lit)
                .OpenBy(null, askWhom: "the boatman, 207 555 0142, the evening before"))
            .Then(Leg.Walk("Path across the island", 0.5, 9, 14, "Boardwalk, moss", LegalStatus.Permissive, coast.Says("Association's leaflet", 75, "Marguerite Doyle"))
                .NeverCutOff().Over(LegGround.Firm).ByNight(LightAtNight.KnownInTheDark)
                .Allow(Consent.Yes, Consent.Yes, DogRule.No).Draw(At(44.6521, -67.1962), At(44.6514, -67.1948), At(44.6508, -67.1930)));
        place.AddRoute("By kayak from the slip").From(bays, null).Then(coast.Road("Route 191", 52, 46, "As for Farrow Harbour."))
            .Then(Leg.Otherwise("Paddle across", 25, "Own boat and own judgement. Cold water all year; no help on the ocean side.", LegalStatus.Unknown,
                coast.Says("Locals land so; nobody has asked the association", 75, "Marguerite Doyle")).Allow(Consent.Unknown, Consent.Unknown, DogRule.Unknown));
        place.Rate(new HazardRating(HazardKind.ColdWater, 3, coast.Says("Club: no way out on the ocean side", 75, "Marguerite Doyle")));
        place.Rate(new HazardRating(HazardKind.Path, 1, coast.Says("Club", 75, "Marguerite Doyle")));

        var tower = place.AddVantagePoint(new VantagePoint("tower-lawn", "Tower lawn", VantageKind.OpenGround, At(44.6509, -67.1928), Footing.Anyone,
                "Mown grass before the tower, fence on the seaward side.")
            .CheckedAs(coast.Says("Club visit", 75, "Marguerite Doyle"))
            .Reached(Reach.None, "13 m above chart datum behind a fence")
            .Measure(new GroundHeight(13.4, 0.4, HeightMethod.Levelling, Cutler, coast.DaysAgo(75)))
            .Walk(10, 10, inTheDark: true, toBeyondReachMinutes: 0).NeverCutOff().Fit(6)
            .Draw(Drawn("0 3 land; 28 2 land; 47 0 sea; 204 1.1 land; 222 2.8 land; 270 7 land; 320 6 land"))
            .Sketched("lantern-island-tower-lawn.svg"));
        tower.Compose(new Composition("lamp-and-dawn", "Lamp and dawn", "The lamp still turning against the first colour.",
                84, Full(35), WantedLight.TwilightGlow, WantedLight.BlueLight));
        tower.Compose(new Composition("tower-by-moonlight", "Tower by moonlight", "Iron and white paint under a half moon; the beam sweeps overhead.",
                20, Full(24, Orientation.Portrait), WantedLight.MoonlitCoast).Face(20, tiltDegrees: 15)
            .Show(new Subject("Lantern Island tower", At(44.6512, -67.1926), 11, 12.5)));

        var ledge = place.AddVantagePoint(new VantagePoint("bell-ledge", "Bell ledge", VantageKind.Ledge, At(44.6502, -67.1921), Footing.SureFooted,
                "Broad ledge below the old bell frame.")
            .CheckedAs(coast.Says("Club visit", 75, "Marguerite Doyle"))
            .Reached(Reach.Waves)
            .Measure(new GroundHeight(7.8, 0.3, HeightMethod.Levelling, Cutler, coast.DaysAgo(75)))
            .Walk(13, 14, inTheDark: false, toBeyondReachMinutes: 3).NeverCutOff()
            .UsableBelow(Above(4.4, Cutler)).UsableIn(new SeaLimit(1.1, 9, 50, 200))
            .WatchFrom(new NearbyPlace("Tower lawn, at the fence", At(44.6509, -67.1928), 3)).Fit(3)
            .Sketched("lantern-island-bell-ledge.svg"));
        ledge.Compose(new Composition("swell-under-the-bell", "Swell under the bell", "The bell frame against long swell, water moving but not blurred.",
                146, Full(50), WantedLight.SideLight, WantedLight.GoldenLight)
            .WishSea(SeaWish.Band("some action", 0.5, 1.1).Period(7, 9)).LookOfWater(WaterLook.SoftMovement));
        return place;
    }
}
