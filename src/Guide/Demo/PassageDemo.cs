using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;
using NodaTime;
using static Foreshore.Guide.Demo.DemoCoast;

namespace Foreshore.Guide.Demo;

/// <summary>The passage at the eastern end: a working harbour and a tidal island.</summary>
internal static class PassageDemo
{
    public static Location HerringSlip(DemoCoast coast)
    {
        var place = Place(10, "herring-slip", "Herring Slip", 44.9055, -66.9842)
            .Describe("Working harbour on the passage: breakwater, fish pier, lamps until morning",
                "A breakwater of sheet piling, 120 m long, put up in 1962 after a gale took the timber one, shelters a dozen boats. The tide here rises and falls "
                + "more than five metres, so the same boats stand level with your tripod or lie three storeys below it.\n\n"
                + "The fish pier behind it rests on 84 oak piles; the oldest, on the north side, are from the sardine years and worn to waists by the ice.",
                "Sardine Slip", "The Breakwater")
            .JudgeTideBy(Eastport, EastportMeanSea)
            .OwnForeshore("The town, to low-water mark", "No fires on the pier. Boats load between 05:00 and 07:00: keep off the ramp then.").OpenBy(Hours("open"))
            .InEmergency(new EmergencyBlock(At(44.9055, -66.9842), "911, ask for the Coast Guard; the station is 300 m south")
            {
                NearestRoad = "Water Street, at the head of the pier",
                LastPhoneSignal = "Everywhere on the front",
                ThrowLine = "Ring on the third lamp of the breakwater",
                ThrowLineSeenOn = coast.DaysAgo(24),
                WayOutOfWater = "Steel ladder on the inner face, 40 m from the end; float by the fish pier",
                Shelter = "Porch of the harbour office, open all night",
            });

        var yard = place.AddParking(new ParkingArea("Net yard", At(44.9060, -66.9855), "Gravel", coast.Says("Sign at the entrance", 60, "Wes Pettibone"))
            .Hold(25, 0).Note("Leave the two bays by the crane free."));
        place.AddOvernightRule(coast.Night(Sleeper.Vehicle, OvernightStanding.Allowed, "Sign at the entrance", 60, "Harbour office, by sign: one night, self-contained", yard));
        place.AddOvernightRule(coast.Night(Sleeper.Tent, OvernightStanding.Forbidden, "Town byelaw 14", 60));
        var street = place.AddRoute("By Water Street").From(yard, 0).Then(coast.Road("Route 190 and Water Street", 11, 14, "Last fuel before the passage. Frost heaves by the causeway."))
            .Then(Leg.Walk("Along the front", 0.3, 4, 2, "Asphalt, planks", LegalStatus.RightOfWay, coast.Says("Town map", 60, "Wes Pettibone"))
                .NeverCutOff().Over(LegGround.Firm).ByNight(LightAtNight.Lit)
                .Allow(Consent.Yes, Consent.Yes, DogRule.OnLead).Draw(At(44.9060, -66.9855), At(44.9056, -66.9842), At(44.9049, -66.9826)));
        place.Rate(new HazardRating(HazardKind.BoatWash, 1, coast.Says("Club, from the wall", 24, "Ada Thorsen")));
        place.Rate(new HazardRating(HazardKind.Traffic, 2, coast.Says("Club: lorries back on to the pier from five", 24, "Ada Thorsen")));

        var wall = place.AddVantagePoint(new VantagePoint("outer-wall", "Outer wall", VantageKind.HarbourWall, At(44.9049, -66.9824), Footing.Anyone,
                "End of the breakwater, inside the rail. Level concrete, a lamp overhead until sunrise.")
            .CheckedAs(coast.Says("Club visit", 24, "Ada Thorsen"))
            .Reached(Reach.None, "Inside the rail of a wall 2 m above the highest tide; the passage is under 2 km wide and waves stay short")
            .Measure(new GroundHeight(8.9, 0.1, HeightMethod.Levelling, Eastport, coast.DaysAgo(410), "Levelled from the brass bolt on the harbour office step"))
            .Walk(6, 6, inTheDark: true, toBeyondReachMinutes: 0).NeverCutOff().Fit(12)
            .Draw(Drawn("0 1.1 land; 28 1.6 land; 55 0.9 land; 74 0 sea; 84 0.7 land; 120 1.2 land; 150 0.6 land; 166 0 sea; 176 1.4 land; 205 4 land; 270 6 land; 330 3 land"))
            .Sketched("herring-slip-outer-wall.svg"));
        wall.Compose(new Composition("boats-at-first-light", "Boats at first light", "Moored boats stacked against the island across the passage. Wait for the skiffs to swing bow-on with the last of the ebb.",
                92, Full(50), WantedLight.TwilightGlow, WantedLight.SunInFrame, WantedLight.GoldenLight)
            .Take("The wall shivers when lorries pass: spread the legs, no centre column.").LookOfWater(WaterLook.Smooth));
        wall.Compose(new Composition("arch-over-the-town", "Arch over the town", "Turn round: the clapboard fronts under the rosy arch, before the sun reaches the water.",
                262, Full(35), WantedLight.AntiTwilightArch, WantedLight.FrontLight));

        var pier = place.AddVantagePoint(new VantagePoint("fish-pier", "Fish pier", VantageKind.Pier, At(44.9064, -66.9836), Footing.Steady,
                "South rail of the pier, among crates. Planks are slick with scales in the morning.")
            .CheckedAs(coast.Says("Club visit", 24, "Ada Thorsen"))
            .Reached(Reach.None, "Deck 1.5 m above the highest tide, behind the breakwater")
            .Measure(new GroundHeight(8.4, 0.2, HeightMethod.StillWaterMark, Eastport, coast.DaysAgo(300), "Calm water at the deck beam 23:41 and, a fortnight later, 23:18; 1.5 m down from the deck"))
            .Walk(3, 3, inTheDark: true, toBeyondReachMinutes: 0).NeverCutOff().Fit(4)
            .By(street, walkInMinutes: 3, walkOutMinutes: 3)
            .Sketched("herring-slip-fish-pier.svg"));
        pier.Compose(new Composition("lamps-on-the-water", "Lamps on the water", "Harbour lamps drawn out into columns on a still flood.",
                188, Full(35), WantedLight.BlueLight).WishSea(SeaWish.Reflections).LookOfWater(WaterLook.Smooth)
            .Take("Two minutes at f/11 just after the lamps come on."));
        pier.Compose(new Composition("oak-waists", "Oak waists", "The worn piles, whole, with weed on them. Overcast, no glare on the mud.",
                20, Full(28, Orientation.Portrait), WantedLight.SoftLight)
            .WishTide(TideWish.About(TideTurn.LowWater, -90, 60).At(TideRange.Springs)));

        var bench = place.AddVantagePoint(new VantagePoint("hill-bench", "Hill bench", VantageKind.OpenGround, At(44.9076, -66.9893), Footing.Anyone,
                "Bench above the town, mown grass, 30 m up. The only place where the island stands clear of the roofs.")
            .CheckedAs(coast.Says("Club visit", 90, "Ivo Calder"))
            .Reached(Reach.None, "On the hill")
            .Measure(new GroundHeight(33, 0.5, HeightMethod.Lidar, Eastport, coast.DaysAgo(500), "State lidar tile, bare ground"))
            .Walk(9, 7, inTheDark: true, toBeyondReachMinutes: 0).NeverCutOff().Fit(6)
            .By(street, walkInMinutes: 9, walkOutMinutes: 7)
            .Draw(Drawn("0 2 land; 40 0.6 land; 70 0.4 land; 130 0.5 land; 160 0.2 land; 200 3 land; 300 5 land"))
            .Sketched("herring-slip-hill-bench.svg"));
        bench.Compose(new Composition("moon-on-the-island", "Moon on the island", "The full moon resting on the island's spine while the town is still lit.",
                107, Full(200), WantedLight.FullMoonBalanced)
            .Show(new Subject("Water tower on the island", At(44.8940, -66.9330), 42, 28)));
        bench.Compose(new Composition("roofs-in-evening-light", "Roofs in evening light", "Slate and clapboard, low sun from behind the left shoulder.",
                100, Full(85), WantedLight.FrontLight, WantedLight.SideLight));
        return place;
    }

    public static Location SorrelHolm(DemoCoast coast)
    {
        var place = Place(20, "sorrel-holm", "Sorrel Holm", 44.8516, -66.9812)
            .Describe("Tidal island with a lime kiln; a causeway that goes under from half flood",
                "A hump of limestone 180 m long, joined to the shore by a bar of gravel and mussel shell that dries for about five hours each tide. "
                + "A kiln of 1848 stands on the landward side, its draw-arch whole. Sorrel turns the top red in June.\n\n"
                + "Every few years somebody waits out a tide here. It is six hours and there is no roof.",
                "Kiln Island")
            .JudgeTideBy(Eastport, EastportMeanSea, new TideCorrections(6, 9, 0.98, 0.97))
            .OwnForeshore("State; island held by the Passage Land Trust", "No landing on the seaward rocks from May to July. Nothing may be taken from the kiln.").OpenBy(Hours("open"))
            .InEmergency(new EmergencyBlock(At(44.8516, -66.9812), "911, ask for the Coast Guard: say \"cut off, not in the water\" if that is so")
            {
                GridReference = "19T FK 596 683",
                NearestRoad = "Bar Road, turning place above the beach",
                LastPhoneSignal = "The turning place; on the holm only from its top",
                ThrowLine = "None nearer than the town wharf",
                WayOutOfWater = "Shelving shell on the north side of the bar, never the south",
                Shelter = "The kiln's arch, out of the wind, dry above 7 m",
                WarningsLink = "https://ternbank.example/bar-times",
            });

        var turn = place.AddParking(new ParkingArea("Bar Road turning place", At(44.8536, -66.9902), "Shell and gravel", coast.Says("Club visit", 35, "Ivo Calder"))
            .Hold(6, 0).FloodAbove(Above(6.6, Eastport, repeated: true)).Note("The lower half is under water at the biggest springs: park above the post."));
        place.AddOvernightRule(coast.Night(Sleeper.Vehicle, OvernightStanding.NoRuleFound, "Town clerk asked, nothing on file", 35, area: turn));
        place.AddOvernightRule(coast.Night(Sleeper.Tent, OvernightStanding.Forbidden, "Land trust's leaflet", 35));

        var school = place.AddParking(new ParkingArea("School yard by the town wharf", At(44.9048, -66.9862), "Asphalt", coast.Says("School's caretaker", 150, "Ivo Calder"))
            .Hold(30, 0).Note("Out of term alone."));

        var causeway = Leg.Walk("Over the bar", 0.7, 14, 3, "Gravel, mussel shell, weed", LegalStatus.OpenAccess, coast.Says("Land trust's leaflet", 35, "Ivo Calder", "https://ternbank.example/holm-leaflet"))
            .Allow(Consent.Yes, Consent.Yes, DogRule.No)
            .PassableWhile(new Crossing(Above(2.1, Eastport, repeated: true), isBeach: false, minutesFromStance: 11)
                .Sheltered("Holm and flats break everything; no wave over a hand's breadth seen on it in six years"))
            .Over(LegGround.Weed).ByNight(LightAtNight.NotKnownInTheDark)
            .Draw(At(44.8536, -66.9902), At(44.8529, -66.9874), At(44.8519, -66.9838), At(44.8516, -66.9815));
        var bar = place.AddRoute("Over the bar").From(turn, 0).Then(coast.Road("Bar Road", 19, 24, "Single track after the church; passing places.")).Then(causeway);
        var boat = place.AddRoute("By boat from the town wharf").From(school, 6).Note("Runs from mid-June to mid-September, weather permitting; ask the day before.")
            .Then(coast.Road("To the town wharf", 17, 20, "Park at the school out of term."))
            .Then(Leg.ByFerry("Wharf to the holm", new FerryFacts(12, new LocalTime(8, 0), new LocalTime(17, 30), 90, 10).Costing(14, "USD")
                    .Sailing(Sails("15 Jun-15 Sep Mon-Fri first 08:00 last 15:30 every 90; 15 Jun-15 Sep Sat,Sun 08:00 09:30 11:00 14:00; no sailings"),
                        Sails("15 Jun-15 Sep Mon-Fri first 08:30 last 17:30 every 90; 15 Jun-15 Sep Sat,Sun 10:00 12:30 15:00 17:30; no sailings")), LegalStatus.OpenAccess,
                coast.Says("Boatman's board on the wharf", 150, "Ivo Calder")).Allow(Consent.AskFirst, Consent.Yes, DogRule.No)
                .OpenBy(null, askWhom: "the boatman on the wharf, the day before")
                .NeverCutOff().Over(LegGround.Firm).ByNight(LightAtNight.Lit));
        var bank = place.AddRoute("To the head of the bar").From(turn, 0).Note("For the shell bank alone: it ends before the bar.")
            .Then(coast.Road("Bar Road", 19, 24, "Single track after the church; passing places."))
            .Then(Leg.Walk("Down to the shell bank", 0.1, 2, 2, "Shell, grass", LegalStatus.OpenAccess, coast.Says("Land trust's leaflet", 35, "Ivo Calder"))
                .Allow(Consent.Yes, Consent.Yes, DogRule.Yes)
                .NeverCutOff().Over(LegGround.Firm).ByNight(LightAtNight.KnownInTheDark));
        place.Rate(new HazardRating(HazardKind.CutOff, 4, coast.Says("Club: the bar covers from both ends at once", 35, "Ivo Calder")));
        place.Rate(new HazardRating(HazardKind.SoftGround, 2, coast.Says("Club: south of the bar", 35, "Ivo Calder")));
        var note = place.Report(new HazardNote(HazardKind.SoftGround, 2, "Fresh soft patch where the stream was dug out: keep to the shell, not the sand beside it.", coast.DaysAgo(40))
            .At("South edge of the bar, halfway", At(44.8523, -66.9856)));
        note.Confirm(coast.DaysAgo(35));

        var head = place.AddVantagePoint(new VantagePoint("bar-head", "Head of the bar", VantageKind.Beach, At(44.8534, -66.9896), Footing.Anyone,
                "Shell bank at the shore end, with the whole bar curving out in front of you.")
            .CheckedAs(coast.Says("Club visit", 35, "Ivo Calder"))
            .Reached(Reach.StillWaterOnly, "The holm and the flats leave no fetch; the highest springs come to the bank's foot")
            .Measure(new GroundHeight(7.1, 0.15, HeightMethod.StillWaterMark, Eastport, coast.DaysAgo(240), "Calm water at the painted stone 00:12 and 00:58 on two springs"))
            .Walk(2, 2, inTheDark: true, toBeyondReachMinutes: 1).NeverCutOff().UsableBelow(Above(6.8, Eastport, repeated: true)).Fit(8)
            .By(bank, endMinutes: 0, walkInMinutes: 2, walkOutMinutes: 2)
            .Sketched("sorrel-holm-bar-head.svg"));
        head.Compose(new Composition("the-bar-opening", "The bar opening", "The shell line as it comes out of the ebb, the holm black behind it.",
                104, Full(24), WantedLight.GoldenLight, WantedLight.TwilightGlow)
            .WishTide(TideWish.Band(Above(1.4, Eastport), Above(2.6, Eastport)).While(TideFlow.Falling))
            .LookOfWater(WaterLook.Streaks));

        var top = place.AddVantagePoint(new VantagePoint("holm-top", "Top of the holm", VantageKind.OpenGround, At(44.8515, -66.9809), Footing.Steady,
                "Turf at the cairn. One sees the bar, the channel and both lights.")
            .CheckedAs(coast.Says("Club visit", 35, "Ivo Calder"))
            .Reached(Reach.None, "11 m above the highest tide")
            .Measure(new GroundHeight(18.5, 0.5, HeightMethod.Lidar, Eastport, coast.DaysAgo(500)))
            .Walk(18, 18, inTheDark: false, toBeyondReachMinutes: 0).CutOffAbove(Above(2.1, Eastport, repeated: true)).Fit(5)
            .By(bar, endMinutes: 4, walkInMinutes: 18, walkOutMinutes: 18).By(boat, endMinutes: 6)
            .Draw(Drawn("0 0.6 land; 40 0.2 land; 62 0 sea; 66 0.8 land; 105 1.1 land; 128 0 sea; 150 0.4 land; 190 1 land; 280 1.5 land"))
            .Sketched("sorrel-holm-holm-top.svg"));
        top.Compose(new Composition("kiln-arch-at-dusk", "Kiln arch at dusk", "The draw-arch against the afterglow, from above.",
                285, Full(35), WantedLight.TwilightGlow, WantedLight.BlueLight)
            .Take("Two torches: one for the kiln, one for the bar.").Sketched("sorrel-holm-kiln-arch.svg"));
        top.Compose(new Composition("crescent-over-the-channel", "Crescent over the channel", "A thin old moon over the channel light, two or three mornings a month.",
                122, Full(135), WantedLight.ThinCrescent));
        return place;
    }
}
