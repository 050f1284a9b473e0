using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;
using NodaTime;
using static Foreshore.Guide.Demo.DemoCoast;

namespace Foreshore.Guide.Demo;

/// <summary>The Long Slip in its cove, and the bold shore behind the quarry gate.</summary>
internal static class QuarryDemo
{
    public static Location LongSlip(DemoCoast coast)
    {
        var place = Place(50, "long-slip", "The Long Slip", 44.7712, -67.0655)
            .Describe("Launching slip of an old lifesaving station, running out 60 m into a cove",
                "The station of 1876 launched its surfboat down this slip until 1934. Granite sleepers, two iron rails, the lower third gone to weed. "
                + "The boathouse above it keeps its big doors; its sea wall makes a lee where one can stand dry in anything but an easterly gale.\n\n"
                + "Slips are worse than ledges: water runs up them farther than one expects, and there is nothing to hold.")
            .JudgeTideBy(Cutler, CutlerMeanSea, new TideCorrections(2, 3, 1.06, 1.05))
            .OwnForeshore("Town", "Launching has the right of way at all hours.").OpenBy(Hours("open"))
            .InEmergency(new EmergencyBlock(At(44.7712, -67.0655), "911, ask for the Coast Guard")
            {
                NearestRoad = "Station Lane, to the boathouse door",
                LastPhoneSignal = "Top of Station Lane",
                ThrowLine = "Ring and line on the boathouse door",
                ThrowLineSeenOn = coast.DaysAgo(11),
                WayOutOfWater = "Cobbles west of the slip",
                Shelter = "Lee of the boathouse",
            });
        var lane = place.AddParking(new ParkingArea("Station Lane", At(44.7725, -67.0668), "Grass, firm", coast.Says("Town clerk, by letter", 130, "Wes Pettibone"))
            .Hold(10, 0).Note("Not across the boathouse doors."));
        place.AddOvernightRule(new OvernightRule(Sleeper.Vehicle, OvernightStanding.Allowed,
            coast.Says("Town clerk, by letter", 130, "Marguerite Doyle", "https://ternbank.example/letters/long-slip"), "Town clerk, letter: two nights, no awnings", lane));
        place.AddOvernightRule(coast.Night(Sleeper.Motorhome, OvernightStanding.NoRuleFound, "Town clerk asked", 130, area: lane));
        place.AddOvernightRule(coast.Night(Sleeper.Tent, OvernightStanding.Unknown, "Nobody has asked", 130));
        place.AddPermission(new PermissionLetter("Town clerk", "Club evenings at the slip with up to twelve people; lights allowed", coast.DaysAgo(130), coast.DaysAgo(-235), link: "https://ternbank.example/letters/long-slip"));
        var down = place.AddRoute("Station Lane").From(lane, 0).Then(coast.Road("Boot Road and Station Lane", 34, 40, "Ungraded, washboard after rain. Not in mud season."))
            .Then(Leg.Walk("Down to the slip", 0.2, 3, 6, "Grass, granite", LegalStatus.RightOfWay, coast.Says("Town map", 130, "Wes Pettibone"))
                .NeverCutOff().Over(LegGround.Firm).ByNight(LightAtNight.KnownInTheDark)
                .Allow(Consent.Yes, Consent.Yes, DogRule.Yes));
        place.Rate(new HazardRating(HazardKind.Slip, 3, coast.Says("Club: green below the fourteenth sleeper", 11, "Wes Pettibone")));
        place.Rate(new HazardRating(HazardKind.Rockfall, 0, coast.Says("None known", 11, "Wes Pettibone")));

        var wall = place.AddVantagePoint(new VantagePoint("boathouse-wall", "Boathouse wall", VantageKind.HarbourWall, At(44.7716, -67.0659), Footing.Anyone,
                "Level granite before the big doors. The slip runs straight away from you.")
            .CheckedAs(coast.Says("Club visit", 11, "Wes Pettibone"))
            .Reached(Reach.None, "3 m above the highest tide and round the corner from the cove's mouth; dry in the gale of January two years ago")
            .Measure(new GroundHeight(8.9, 0.2, HeightMethod.Levelling, Cutler, coast.DaysAgo(200)))
            .Walk(2, 2, inTheDark: true, toBeyondReachMinutes: 0).NeverCutOff().Fit(10)
            .By(down, walkInMinutes: 2, walkOutMinutes: 2)
            .Draw(Drawn("0 9 land; 60 5 land; 118 2.2 land; 134 0 sea; 176 1.6 land; 215 3.5 land; 290 8 land"))
            .Sketched("long-slip-boathouse-wall.svg"));
        wall.Compose(new Composition("rails-to-the-sea", "Rails to the sea", "Two rails going under, the gap of open sea at their end.",
                150, Full(35), WantedLight.BlueLight, WantedLight.TwilightGlow).LookOfWater(WaterLook.Smooth).Take("Four minutes with a ten-stop."));
        wall.Compose(new Composition("winter-sun-down-the-slip", "Winter sun down the slip", "In December the sun stands over the slip's end in mid-morning and the rails burn.",
                150, Full(50, Orientation.Portrait), WantedLight.SunInFrame, WantedLight.BackLight));

        var ramp = place.AddVantagePoint(new VantagePoint("ramp-foot", "Foot of the ramp", VantageKind.Ramp, At(44.7709, -67.0652), Footing.SureFooted,
                "Tenth sleeper from the bottom, in line with the left rail.")
            .CheckedAs(coast.Says("Club visit", 11, "Wes Pettibone"))
            .Reached(Reach.Waves)
            .Measure(new GroundHeight(4.6, 0.2, HeightMethod.StillWaterMark, Cutler, coast.DaysAgo(190), "Calm water at the sleeper 10:02 and 10:41 on two tides"))
            .Walk(5, 6, inTheDark: true, toBeyondReachMinutes: 2).NeverCutOff()
            .UsableBelow(Above(2.4, Cutler)).UsableIn(new SeaLimit(0.5, 7, 110, 165))
            .WatchFrom(new NearbyPlace("Boathouse wall", At(44.7716, -67.0659), 2)).Fit(1)
            .Look(0.6)
            .Sketched("long-slip-ramp-foot.svg"));
        ramp.Compose(new Composition("weed-and-iron", "Weed and iron", "Low and close over the weed, one rail in, one out.",
                158, Full(16), WantedLight.GoldenLight, WantedLight.SoftLight)
            .WishTide(TideWish.About(TideTurn.LowWater, -120, 0).While(TideFlow.Falling).RangeAtLeast(4))
            .WishSea(SeaWish.Band("calm only", null, 0.5).InWindBelow(6)).LookOfWater(WaterLook.FlowingFormKept));
        return place;
    }

    public static Location WidowsTable(DemoCoast coast)
    {
        var place = Place(60, "widows-table", "Widow’s Table", 44.6922, -67.1388)
            .Describe("Flat-topped cliff beyond the old quarry; the short way in is gated, the long one is open",
                "A table of lava rock 16 m above the sea, level enough for a dance, with a chimney at its south end that booms in swell. The quarry behind shut in 1911; its road "
                + "still serves the pump house and is locked at night and on Sundays.\n\n"
                + "The way round by the shore is longer by fifty minutes and as fine as the place itself.",
                "The Table")
            .JudgeTideBy(Cutler, CutlerMeanSea)
            .OwnForeshore("State, from the cliff's edge down; the quarry is private", "No drones over the quarry.").OpenBy(Hours("open"))
            .InEmergency(new EmergencyBlock(At(44.6922, -67.1388), "911; say which path you came by")
            {
                NearestRoad = "Quarry Road pump house: the crew has the gate's code",
                LastPhoneSignal = "North brow, facing the mast",
                ThrowLine = "None",
                WayOutOfWater = "None within 800 m",
                Shelter = "Woods; pump house porch",
            });
        var trailLot = place.AddParking(new ParkingArea("Shore trail lot", At(44.6985, -67.1582), "Gravel", coast.Says("State's board", 70, "Ivo Calder")).Hold(20, 0));
        place.AddOvernightRule(coast.Night(Sleeper.Tent, OvernightStanding.Allowed, "State's board", 70, "State, by board: three marked sites, first come"));
        place.AddOvernightRule(coast.Night(Sleeper.Vehicle, OvernightStanding.Forbidden, "State's board", 70));
        var gate = place.AddParking(new ParkingArea("Pull-off at the quarry gate", At(44.7012, -67.1503), "Stone", coast.Says("Club visit", 70, "Ivo Calder")).Hold(2, 0)
            .Note("The crew's lorries turn there."));
        place.AddRoute("Quarry Road").From(gate, 0).Note("Shorter by fifty minutes, and not ours to recommend. The foreman gives the key to people he knows.")
            .Then(coast.Road("To the quarry gate", 44, 48, "Lorries on weekdays."))
            .Then(Leg.Walk("Quarry Road", 1.9, 26, 30, "Stone road", LegalStatus.Private, coast.Says("Owner's sign: private, ask at the pump house", 70, "Ivo Calder"))
                .NeverCutOff().Over(LegGround.Firm).ByNight(LightAtNight.NotKnownInTheDark)
                .Allow(Consent.No, Consent.AskFirst, DogRule.No).Open(new LocalTime(6, 30), new LocalTime(17, 0), "Gate locked at night and on Sundays")
                .OpenBy(Hours("Mon-Sat 06:30-17:00; Sun closed"), "Gate locked at night and on Sundays", "the foreman, at the pump house")
                .Draw(At(44.7010, -67.1500), At(44.6965, -67.1450), At(44.6925, -67.1395)));
        var trail = place.AddRoute("Shore trail").From(trailLot, 0)
            .Then(coast.Road("To the shore trail", 46, 50, "Last 2 km gravel."))
            .Then(Leg.Walk("Shore trail", 4.8, 82, 130, "Forest, roots, ladders", LegalStatus.RightOfWay, coast.Says("State's map", 70, "Ivo Calder", "https://ternbank.example/shore-trail"))
                .NeverCutOff().Over(LegGround.Firm).ByNight(LightAtNight.NotKnownInTheDark)
                .Allow(Consent.Yes, Consent.Yes, DogRule.OnLead).Note("Two ladders; wet, they need both hands.")
                .Draw(At(44.6985, -67.1582), At(44.6935, -67.1520), At(44.6868, -67.1462), At(44.6895, -67.1420), At(44.6920, -67.1390)));
        place.Rate(new HazardRating(HazardKind.Fall, 3, coast.Says("Club", 70, "Ivo Calder")));
        place.Rate(new HazardRating(HazardKind.Firing, 1, coast.Says("Blasting at the new pit on weekday noons; horn first", 400, "Ivo Calder")));
        place.Rate(new HazardRating(HazardKind.Animals, null, coast.Says("Not rated", 70)));

        var table = place.AddVantagePoint(new VantagePoint("the-table", "The Table", VantageKind.CliffTop, At(44.6919, -67.1385), Footing.Steady,
                "Middle of the flat rock, ten paces from every edge.")
            .CheckedAs(coast.Says("Club visit", 70, "Ivo Calder"))
            .Reached(Reach.None, "16 m up; spray in south-easterly gales, no green water in the lichen line")
            .Measure(new GroundHeight(18.2, 0.5, HeightMethod.Lidar, Cutler, coast.DaysAgo(500)))
            .Walk(84, 82, inTheDark: false, toBeyondReachMinutes: 0).NeverCutOff().Fit(20)
            .By(trail, endMinutes: 2, walkInMinutes: 84, walkOutMinutes: 82)
            .Draw(Drawn("0 7 land; 38 1.5 land; 47 0 sea; 212 1.2 land; 225 3 land; 300 8 land"))
            .Sketched("widows-table-the-table.svg"));
        table.Compose(new Composition("pools-on-the-table", "Pools on the table", "Rain pools holding the sky; only after rain and before noon, when the wind fills them with grit.",
                118, Full(24), WantedLight.TwilightGlow, WantedLight.GoldenLight));
        table.Compose(new Composition("galaxy-over-the-table", "The galaxy over the table", "The core standing out of the sea to the south, no lamp for 12 km.",
                175, Full(20, Orientation.Portrait), WantedLight.GalaxyCore).Face(175, tiltDegrees: 12).GalaxyFromFive());

        var brow = place.AddVantagePoint(new VantagePoint("north-brow", "North brow", VantageKind.CliffTop, At(44.6941, -67.1365), Footing.SureFooted,
                "Last bare knuckle before the woods, with the whole table in profile.")
            .CheckedAs(coast.Says("Club visit", 70, "Ivo Calder"))
            .Reached(Reach.None, "21 m up")
            .Measure(new GroundHeight(23.5, 0.5, HeightMethod.Lidar, Cutler, coast.DaysAgo(500)))
            .Walk(92, 90, inTheDark: false, toBeyondReachMinutes: 0).NeverCutOff().Fit(2)
            .By(trail, endMinutes: 10, walkInMinutes: 92, walkOutMinutes: 90)
            .OnEdge(EdgeDistance.WithinFiveMetres)
            .Draw(Drawn("0 9 land; 42 0.8 land; 50 0 sea; 196 0 sea; 199 2.4 land; 214 3.8 land; 238 6 land; 300 10 land"))
            .Sketched("widows-table-north-brow.svg"));
        brow.Compose(new Composition("sunburst-on-the-table", "Sunburst on the table", "The sun coming off the table's edge as a star, a few minutes on winter afternoons.",
                214, Full(85), WantedLight.SunburstOverSkyline).Take("f/16, and clean the front element."));

        var chimney = place.AddVantagePoint(new VantagePoint("chimney-lip", "Chimney lip", VantageKind.Ledge, At(44.6911, -67.1392), Footing.Scramble,
                "Shelf beside the chimney. How high the sea comes here nobody has worked out.")
            .CheckedAs(coast.Says("Club visit", 70, "Ivo Calder"))
            .Sketched("widows-table-chimney-lip.svg"));
        chimney.Compose(new Composition("the-boom", "The boom", "The jet that stands out of the chimney on the third wave of a set.",
                140, Full(135), WantedLight.AnyDaylight).WishSea(SeaWish.Band("some action", 1.5, 3.5).Period(9, 14)).LookOfWater(WaterLook.Frozen));
        place.Close(Closure.AfterNearMiss(coast.DaysAgo(6), "Near miss at the chimney: wetted to the waist from a sea called calm", Guid.NewGuid()).Of(chimney));
        return place;
    }
}
