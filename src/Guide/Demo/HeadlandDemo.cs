using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;
using NodaTime;
using static Foreshore.Guide.Demo.DemoCoast;

namespace Foreshore.Guide.Demo;

/// <summary>The easternmost headland: high edges, a light, and a stair of ledges below.</summary>
internal static class HeadlandDemo
{
    public static Location HalfmoonLight(DemoCoast coast)
    {
        var place = Place(30, "halfmoon-light", "Halfmoon Light", 44.8070, -66.9662)
            .Describe("High dark edges, a banded light to the north-east, the first sun of the coast",
                "Gabbro cliffs of 30 to 45 m, some 420 million years old, cut by gullies along their dykes. The light of 1858 stands 1.5 km to the north-east, "
                + "15 m tall and painted in bands so that it shows against snow.\n\n"
                + "Black guillemots nest in the cracks of the stack from spring; the overlook above it shuts for them. From the high edge the sea horizon lies a fifth of a degree "
                + "below level, and the sun is up a minute before the tables say so.",
                "The Half Moon", "Banded Light")
            .JudgeTideBy(Eastport, EastportMeanSea)
            .OwnForeshore("State park", "Open 09:00 to sunset; on foot at any hour by the shore path.").OpenBy(Hours("open"))
            .InEmergency(new EmergencyBlock(At(44.8070, -66.9662), "911, ask for the Coast Guard; for a fall on the path ask for fire and rescue too")
            {
                NearestRoad = "Light Road, at the gate",
                LastPhoneSignal = "Path junction by the bog boardwalk",
                ThrowLine = "At the light, on the rail",
                ThrowLineSeenOn = coast.DaysAgo(52),
                WayOutOfWater = "None along the cliffs; cobble cove 600 m west",
                Shelter = "Picnic roof by the car park",
            });

        var park = place.AddParking(new ParkingArea("Light Road car park", At(44.8112, -66.9640), "Asphalt", coast.Says("Sign at the gate", 52, "Marguerite Doyle", "https://ternbank.example/light-road"))
            .Hold(40, 4, "USD").Lock(new LocalTime(20, 0), new LocalTime(8, 0))
            .OpenBy(Hours("1 Apr-31 Oct 08:00-20:00; 1 Nov-31 Mar 08:00-17:00"), "the park ranger, 207 555 0118").Note("Gate locked at eight in summer, at five in winter; a car left inside stays there."));
        var verge = place.AddParking(new ParkingArea("Verge before the gate", At(44.8125, -66.9668), "Gravel verge", coast.Says("Club visit", 52, "Marguerite Doyle"))
            .Hold(5, 0).Bar(2.1).Note("For those who come before dawn. Off the white line."));
        place.AddOvernightRule(coast.Night(Sleeper.Vehicle, OvernightStanding.Forbidden, "Park rules, board at the gate", 52, area: park));
        place.AddOvernightRule(coast.Night(Sleeper.Motorhome, OvernightStanding.Forbidden, "Park rules, board at the gate", 52));

        var shore = place.AddRoute("Shore path").From(park, 0).From(verge, 5).Then(coast.Road("Light Road", 24, 29, "Moose at dusk. Ice on the bends below the bog."))
            .Then(Leg.Walk("Shore path to the edges", 0.9, 16, 25, "Roots, boardwalk, bare rock", LegalStatus.RightOfWay, coast.Says("Park map", 52, "Marguerite Doyle"))
                .NeverCutOff().Over(LegGround.Firm).ByNight(LightAtNight.KnownInTheDark)
                .Allow(Consent.Yes, Consent.Yes, DogRule.OnLead).OpenBy(Hours("open"), "At any hour on foot").Draw(At(44.8112, -66.9640), At(44.8095, -66.9652), At(44.8078, -66.9660), At(44.8061, -66.9667)));

        place.Rate(new HazardRating(HazardKind.Fall, 3, coast.Says("Club and park", 52, "Marguerite Doyle", "https://ternbank.example/falls")));
        place.Rate(new HazardRating(HazardKind.Path, 2, coast.Says("Club: roots, wet boardwalk", 52, "Marguerite Doyle")));
        place.Rate(new HazardRating(HazardKind.Animals, 1, coast.Says("Club: ticks from May", 200, "Marguerite Doyle")));

        var edge = place.AddVantagePoint(new VantagePoint("high-edge", "High edge", VantageKind.CliffTop, At(44.8061, -66.9668), Footing.SureFooted,
                "Bare rock three steps back from a 40 m drop. The horizon runs clear from north-east to south.")
            .CheckedAs(coast.Says("Club visit", 52, "Marguerite Doyle", "https://ternbank.example/reports/high-edge"))
            .Reached(Reach.None, "42 m above the sea")
            .Measure(new GroundHeight(44.5, 0.6, HeightMethod.Lidar, Eastport, coast.DaysAgo(500), "State lidar tile, checked at two corners"))
            .Walk(17, 17, inTheDark: true, toBeyondReachMinutes: 0).NeverCutOff().Fit(3)
            .OnEdge(EdgeDistance.WithinFiveMetres, 13)
            .Draw(Drawn("0 5 land; 30 2 land; 46 1.1 land; 58 0 sea; 196 2 land; 240 8 land; 300 9 land"))
            .Sketched("halfmoon-light-high-edge.svg"));
        edge.Compose(new Composition("light-and-first-sun", "The light and the first sun", "The banded tower on its point, the sun coming up to the right of it; nearest to the tower at midsummer.",
                56, Full(70), WantedLight.SunInFrame, WantedLight.TwilightGlow)
            .Show(new Subject("Halfmoon Light", At(44.8151, -66.9506), 17, 15)));
        edge.Compose(new Composition("winter-sun-on-the-horizon", "Winter sun on the horizon", "Nothing but sea, cloud and the lifted edge of the sun.",
                120, Full(100), WantedLight.SunInFrame).Face(120, tiltDegrees: 2).Take("A hand warmer round the lens: it fogs."));
        edge.Compose(new Composition("cliffs-by-moonlight", "Cliffs by moonlight", "The run of the cliffs westward with the moon behind you.",
                232, Full(20), WantedLight.MoonlitCoast).LookOfWater(WaterLook.FlowingFormKept));

        var overlook = place.AddVantagePoint(new VantagePoint("stack-overlook", "Stack overlook", VantageKind.CliffTop, At(44.8069, -66.9645), Footing.SureFooted,
                "A turf shelf above the stack. Shut while the guillemots are on it.")
            .CheckedAs(coast.Says("Club visit", 52, "Marguerite Doyle"))
            .Reached(Reach.None, "27 m above the sea")
            .Measure(new GroundHeight(30, 0.6, HeightMethod.Lidar, Eastport, coast.DaysAgo(500)))
            .Walk(15, 15, inTheDark: false, toBeyondReachMinutes: 0).NeverCutOff().Fit(1)
            .By(shore, walkInMinutes: 15, walkOutMinutes: 15)
            .OnEdge(EdgeDistance.OnIt, 9)
            .Sketched("halfmoon-light-stack-overlook.svg"));
        overlook.Compose(new Composition("stack-and-surf", "Stack and surf", "Straight down the gully on to the stack, white water all round it.",
                148, Full(35, Orientation.Portrait), WantedLight.AnyDaylight)
            .Face(148, tiltDegrees: -28)
            .WishSea(SeaWish.Band("some action", 1.5, 4).Period(8, null).ComingFrom(90, 200)).LookOfWater(WaterLook.SoftMovement));
        place.Close(Closure.EveryYear(new AnnualDate(3, 15), new AnnualDate(7, 31), "Black guillemots nest on the stack", "State park, notice at the gate").Of(overlook)
            .See("https://ternbank.example/guillemots"));

        var bog = place.AddVantagePoint(new VantagePoint("bog-boardwalk", "Bog boardwalk", VantageKind.OpenGround, At(44.8086, -66.9672), Footing.Anyone,
                "Where the boardwalk turns: dwarf spruces, pools, a wide sky and no lamp in sight.")
            .CheckedAs(coast.Says("Club visit", 52, "Marguerite Doyle"))
            .Reached(Reach.None, "400 m inland")
            .Measure(new GroundHeight(24, 1, HeightMethod.Chart, Eastport, coast.DaysAgo(700), "Contours of the 1:24,000 sheet"))
            .Walk(9, 9, inTheDark: true, toBeyondReachMinutes: 0).NeverCutOff().Fit(4)
            .By(shore, walkInMinutes: 9, walkOutMinutes: 9)
            .Draw(Drawn("0 4 land; 90 3 land; 150 2 land; 200 2 land; 270 5 land"))
            .Sketched("halfmoon-light-bog-boardwalk.svg"));
        bog.Compose(new Composition("spruces-and-trails", "Spruces and trails", "Trails wheeling over one crooked spruce; look north, tilt well up.",
                2, Full(14, Orientation.Portrait), WantedLight.StarTrails).Face(2, tiltDegrees: 35));
        bog.Compose(new Composition("frost-on-the-bog", "Frost on the bog", "Low side light across the hummocks after a clear night.",
                30, Full(50), WantedLight.SideLight, WantedLight.BackLight));
        return place;
    }

    public static Location GannetStairs(DemoCoast coast)
    {
        var place = Place(40, "gannet-stairs", "Gannet Stairs", 44.7852, -67.0118)
            .Describe("Sea stacks and a stair of ledges going down to the south-east",
                "Seven benches of slate, each about a metre high, step down into deep water. They face south-east, straight into the ocean, and drain in white curtains "
                + "after every big wave. Two stacks stand off the lowest bench; gannets pass them in October but have never nested here, whatever the name says.",
                "The Stairs")
            .JudgeTideBy(Cutler, CutlerMeanSea)
            .OwnForeshore("Passage Land Trust", "On foot only. No fires.").OpenBy(Hours("open"))
            .InEmergency(new EmergencyBlock(At(44.7852, -67.0118), "911, ask for the Coast Guard")
            {
                NearestRoad = "Boot Road, trust car park",
                LastPhoneSignal = "Second stile",
                ThrowLine = "Bag on the marker post at the top bench",
                ThrowLineSeenOn = coast.DaysAgo(19),
                WayOutOfWater = "Swim away from the ledges, north round the point, to the cobble cove",
                Shelter = "None; the woods",
            });
        var trust = place.AddParking(new ParkingArea("Trust car park, Boot Road", At(44.7901, -67.0203), "Gravel", coast.Says("Trust's board", 19, "Ada Thorsen")).Hold(8, 0));
        place.AddOvernightRule(coast.Night(Sleeper.Vehicle, OvernightStanding.Forbidden, "Trust's board", 19));
        place.AddRoute("Stile path").From(trust, 0).Then(coast.Road("Boot Road", 31, 36, "Ungraded for the last 3 km."))
            .Then(Leg.Walk("Stile path", 1.1, 19, 18, "Forest path, two stiles", LegalStatus.Permissive, coast.Says("Trust's board", 19, "Ada Thorsen"))
                .NeverCutOff().Over(LegGround.Firm).ByNight(LightAtNight.KnownInTheDark)
                .Allow(Consent.AskFirst, Consent.Yes, DogRule.OnLead).Draw(At(44.7901, -67.0203), At(44.7880, -67.0165), At(44.7855, -67.0125)));
        place.Rate(new HazardRating(HazardKind.Waves, 3, coast.Says("Club: swept in any swell over a metre and a half", 19, "Ada Thorsen")));
        place.Rate(new HazardRating(HazardKind.Slip, 3, coast.Says("Club: black weed below the third bench", 19, "Ada Thorsen")));

        var knoll = place.AddVantagePoint(new VantagePoint("watch-knoll", "Watch knoll", VantageKind.OpenGround, At(44.7856, -67.0123), Footing.Steady,
                "Grass knoll above the stair. One sees all seven benches and every set coming in.")
            .CheckedAs(coast.Says("Club visit", 19, "Ada Thorsen"))
            .Reached(Reach.None, "16 m above chart datum, 40 m back from the top bench")
            .Measure(new GroundHeight(16.2, 0.4, HeightMethod.Levelling, Cutler, coast.DaysAgo(380)))
            .Walk(20, 20, inTheDark: true, toBeyondReachMinutes: 0).NeverCutOff().Fit(6)
            .Draw(Drawn("0 4 land; 35 1.2 land; 52 0 sea; 205 0.8 land; 240 3 land; 300 6 land"), "Drawn by hand, bearings true.", coast.DaysAgo(19))
            .Sketched("gannet-stairs-watch-knoll.svg"));
        knoll.Compose(new Composition("stairs-from-above", "The stairs from above", "All the benches as one flight, white water draining off each.",
                132, Full(85), WantedLight.GoldenLight, WantedLight.SoftLight).LookOfWater(WaterLook.Streaks));

        var lower = place.AddVantagePoint(new VantagePoint("lower-stair", "Lower stair", VantageKind.Ledge, At(44.7849, -67.0112), Footing.SureFooted,
                "Fourth bench, at the crack. For calm days only: two hands, no tripod bag on the ground.")
            .CheckedAs(coast.Says("Club visit", 19, "Ada Thorsen"))
            .Reached(Reach.Waves)
            .Measure(new GroundHeight(6.4, 0.2, HeightMethod.StillWaterMark, Cutler, coast.DaysAgo(260), "Calm water at the drilled hole 11:52 and 12:31 on two tides, 2.3 m up from there"))
            .Walk(25, 26, inTheDark: false, toBeyondReachMinutes: 4).CutOffAbove(Above(4.2, Cutler, repeated: true))
            .UsableBelow(Above(3.4, Cutler, repeated: true))
            .UsableIn(new SeaLimit(0.8, 9, 70, 190, isRepeated: true).ShelteredOutside("The point closes everything north of 070"))
            .WatchFrom(new NearbyPlace("Watch knoll, by the cairn", At(44.7856, -67.0123), 5))
            .WorkInTheDarkFrom(new NearbyPlace("Flat turf beside the knoll, behind the rope", At(44.7857, -67.0126), 6))
            .OnEdge(EdgeDistance.WithinFiveMetres, 11).Fit(2)
            .Sketched("gannet-stairs-lower-stair.svg"));
        lower.Compose(new Composition("white-curtains", "White curtains", "Water draining off five benches at once, fired as the wave withdraws.",
                112, Full(24), WantedLight.SunInFrame, WantedLight.TwilightGlow)
            .FaceByCompass(coast.Compass(128, lower.Position, 19))
            .WishTide(TideWish.Band(Above(1.2, Cutler), Above(2.6, Cutler)).While(TideFlow.Falling))
            .WishGround(new GroundWish(GroundState.FreshlyWashed, Above(2.9, Cutler)))
            .WishSea(SeaWish.Band("calm only", null, 0.8)).LookOfWater(WaterLook.Streaks)
            .Take("Cloth for salt; rubber feet off, spikes on.").Sketched("gannet-stairs-white-curtains.svg"));
        lower.Compose(new Composition("two-stacks", "Two stacks", "The stacks overlapping by a third, the nearer one lit.",
                96, Full(70), WantedLight.SideLight).WishSea(SeaWish.Band("calm only", null, 0.8))
            .Show(new Subject("Nearer stack", At(44.7847, -67.0079), -1, 14)));

        var foot = place.AddVantagePoint(new VantagePoint("headwall-foot", "Foot of the headwall", VantageKind.UnderCliff, At(44.7861, -67.0109), Footing.Scramble,
                "The amphitheatre under the headwall. Slabs come off it; recorded so that nobody goes by an old post that praises it.")
            .CheckedAs(coast.Says("Club visit, from above", 19, "Ada Thorsen"))
            .Reached(Reach.Waves)
            .Measure(new GroundHeight(5.2, 0.4, HeightMethod.Lidar, Cutler, coast.DaysAgo(500)))
            .Walk(30, 32, inTheDark: false, toBeyondReachMinutes: 12)
            .Under(new CliffAbove(18, 9))
            .Sketched("gannet-stairs-headwall-foot.svg"));
        place.Rate(new HazardRating(HazardKind.Rockfall, 4, coast.Says("Club, from above", 19, "Ada Thorsen"), foot));
        foot.Compose(new Composition("amphitheatre", "Amphitheatre", "The whole wall with sea at its foot.", 300, new Lens(12, Sensor.FourThirds, Orientation.Landscape), WantedLight.FrontLight));
        place.Report(new HazardNote(HazardKind.Rockfall, 4, "Car-sized block down on the north side of the amphitheatre, fresh scar above it, gravel still trickling.", coast.DaysAgo(21))
            .At("North side of the headwall", At(44.7862, -67.0108), foot)).Confirm(coast.DaysAgo(19));
        place.Close(Closure.Between(coast.DaysAgo(19), null, "Rockfall; the scar has not settled", "Guide warden").Of(foot));
        return place;
    }
}
