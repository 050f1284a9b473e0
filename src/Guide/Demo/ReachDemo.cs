using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;
using NodaTime;
using static Foreshore.Guide.Demo.DemoCoast;

namespace Foreshore.Guide.Demo;

/// <summary>The reach and its islands: a members' place, a sensitive one, and one without a way in that may be recommended.</summary>
internal static class ReachDemo
{
    /// <summary>An invented member: proposer of the sensitive place.</summary>
    public static readonly Guid Proposer = new("5e1d3c52-7a4b-4f0a-9a58-2f6c1d0b7e11");

    /// <summary>An invented member, granted by name.</summary>
    public static readonly Guid Granted = new("8b0c77a9-31de-4f7e-b8b1-64f0c2a95d22");

    public static Location CanneryPoint(DemoCoast coast)
    {
        var place = Place(110, "cannery-point", "Cannery Point", 44.5316, -67.6045)
            .Describe("Pilings of a burnt cannery and a mud creek; the owner lets members in, nobody else",
                "The cannery burnt in 1963. Two hundred pilings stand in rows in the mud, each with its cap of grass, and the tide race of the reach runs past the end of them.")
            .ShowTo(Visibility.Members)
            .JudgeTideBy(Cutler, CutlerMeanSea, new TideCorrections(11, 14, 0.86, 0.85))
            .OwnForeshore("Private to low-water mark", "Ring the owner the day before.").OpenBy(Hours("Mon-Sat by permit; Sun closed"), "the owner, by telephone, the day before; the secretary has the number")
            .InEmergency(new EmergencyBlock(At(44.5316, -67.6045), "911, ask for the Coast Guard")
            {
                NearestRoad = "Cannery Lane, to the gate",
                LastPhoneSignal = "On the point",
                ThrowLine = "In the owner's shed, unlocked",
                ThrowLineSeenOn = coast.DaysAgo(95),
                WayOutOfWater = "Up the creek, on the gravel side",
                Shelter = "Owner's shed",
            });
        var lane = place.AddParking(new ParkingArea("Cannery Lane", At(44.5325, -67.6052), "Gravel", coast.Says("Owner", 95, "Ivo Calder")).Hold(4, 0));
        place.AddRoute("Cannery Lane").From(lane, 0).Then(coast.Road("Route 187 and Cannery Lane", 98, 85, "Gate code from the secretary."))
            .Then(Leg.Walk("Through the field", 0.3, 5, 3, "Grass, boards", LegalStatus.Permissive, coast.Says("Owner's letter", 95, "Ivo Calder"))
                .NeverCutOff().Over(LegGround.Firm).ByNight(LightAtNight.KnownInTheDark)
                .Allow(Consent.Yes, Consent.Yes, DogRule.No));
        place.AddPermission(new PermissionLetter("The owner", "Members of the club, on foot, any day but Sunday", coast.DaysAgo(400), null));
        place.Rate(new HazardRating(HazardKind.SoftGround, 3, coast.Says("Club: knee-deep off the boards", 95, "Ivo Calder")));

        var boards = place.AddVantagePoint(new VantagePoint("end-of-the-boards", "End of the boards", VantageKind.Pier, At(44.5312, -67.6042), Footing.Steady,
                "Where the walk of scaffold boards stops, before the first row.")
            .CheckedAs(coast.Says("Club visit", 95, "Ivo Calder"))
            .Reached(Reach.StillWaterOnly, "The reach is 900 m wide and runs across the wind; wash from boats only")
            .Measure(new GroundHeight(4.4, 0.2, HeightMethod.StillWaterMark, Cutler, coast.DaysAgo(95), "Calm water at the board 18:02 and 18:40 on two tides"))
            .Walk(7, 7, inTheDark: true, toBeyondReachMinutes: 3).NeverCutOff().UsableBelow(Above(3.9, Cutler)).Fit(3)
            .Sketched("cannery-point-end-of-the-boards.svg"));
        boards.Compose(new Composition("rows-at-high-water", "Rows at high water", "Caps of grass alone on the water, in rows to the vanishing point.",
                200, new Lens(80, Sensor.MediumFormat, Orientation.Landscape), WantedLight.SoftLight, WantedLight.BlueLight)
            .WishTide(TideWish.About(TideTurn.HighWater, -45, 45)).LookOfWater(WaterLook.Smooth));
        boards.Compose(new Composition("creek-in-ebb-light", "Creek in ebb light", "The creek's braids with the sun low over the reach.",
                248, new Lens(16, Sensor.ApsC, Orientation.Landscape), WantedLight.SunInFrame, WantedLight.GoldenLight)
            .WishTide(TideWish.Band(null, Above(1.2, Cutler)).While(TideFlow.Rising)));
        return place;
    }

    public static Location SkerrinHollow(DemoCoast coast)
    {
        var place = Place(120, "skerrin-hollow", "Skerrin Hollow", 44.4716, -67.5779)
            .Describe("A hollow in the outer shore with a haul-out near it; shown to members by name",
                "Pink granite worn into a bowl. Harbour seals pup on the skerry in front of it from May; one person in the wrong place empties it.",
                "The Bowl")
            .ShowTo(Visibility.Sensitive, Proposer).Grant(Granted)
            .JudgeTideBy(Cutler, CutlerMeanSea, new TideCorrections(-2, 0, 0.83, 0.82))
            .OwnForeshore("Island Trust", "No landing on the skerry at any time.").OpenBy(Hours("open"))
            .InEmergency(new EmergencyBlock(At(44.4716, -67.5779), "911, ask for the Coast Guard")
            {
                NearestRoad = "Duck Road end, 2.9 km",
                LastPhoneSignal = "None beyond the second bog",
                ThrowLine = "None",
                WayOutOfWater = "Gravel pocket north of the bowl",
                Shelter = "None",
            });
        var end = place.AddParking(new ParkingArea("Duck Road end", At(44.4853, -67.5961), "Gravel", coast.Says("Trust's board", 110, "Marguerite Doyle")).Hold(15, 0));
        place.AddRoute("Two-bog path").From(end, 0).Then(coast.Road("Bridge and Duck Road", 108, 98, "Bridge lights; one way at a time."))
            .Then(Leg.Walk("Two-bog path", 3.1, 62, 35, "Boards, roots, granite", LegalStatus.Permissive, coast.Says("Trust's board", 110, "Marguerite Doyle"))
                .NeverCutOff().Over(LegGround.SoftGround).ByNight(LightAtNight.NotKnownInTheDark)
                .Allow(Consent.No, Consent.Yes, DogRule.No).Draw(At(44.4853, -67.5961), At(44.4790, -67.5880), At(44.4718, -67.5785)));
        place.Rate(new HazardRating(HazardKind.Waves, 2, coast.Says("Club", 110, "Marguerite Doyle")));
        place.Report(new HazardNote(HazardKind.Animals, 2, "Pups ashore: stay below the skyline and leave if heads come up.", coast.DaysAgo(170), coast.DaysAgo(-200))
            .At("Lip of the bowl", At(44.4717, -67.5781))).Confirm(coast.DaysAgo(150));
        place.Close(Closure.EveryYear(new AnnualDate(5, 10), new AnnualDate(6, 30), "Seal pups on the skerry", "Island Trust"));

        var bowl = place.AddVantagePoint(new VantagePoint("rim-of-the-bowl", "Rim of the bowl", VantageKind.OpenGround, At(44.4718, -67.5783), Footing.SureFooted,
                "Behind the rim, sitting, lens at the notch.")
            .CheckedAs(coast.Says("Club visit", 110, "Marguerite Doyle"))
            .Reached(Reach.None, "14 m up and 60 m back")
            .Measure(new GroundHeight(14.3, 0.5, HeightMethod.Lidar, Cutler, coast.DaysAgo(500)))
            .Look(0.9).Walk(64, 62, inTheDark: false, toBeyondReachMinutes: 0).NeverCutOff().Fit(2)
            .Draw(Drawn("0 4 land; 40 1 land; 58 0 sea; 232 1 land; 270 5 land"))
            .Sketched("skerrin-hollow-rim-of-the-bowl.svg"));
        bowl.Compose(new Composition("pink-bowl", "Pink bowl", "The granite in the last minute of sun, skerry beyond, long lens and patience.",
                98, Full(300), WantedLight.FrontLight, WantedLight.GoldenLight)
            .Show(new Subject("The skerry", At(44.4709, -67.5650), -1, 5)));
        return place;
    }

    public static Location KetchPoint(DemoCoast coast)
    {
        var place = Place(130, "ketch-point", "Ketch Point", 44.5062, -67.7240)
            .Describe("Wreck ribs on a gravel spit; every known way crosses private ground",
                "The ribs are the ketch Amelia Rowe, lost in the November gale of 1888. Described here because they show well from the water; the club knows of no way by land that it may recommend.")
            .JudgeTideBy(Milbridge, MilbridgeMeanSea, new TideCorrections(-6, -4, 1.05, 1.04))
            .OwnForeshore("Private to low-water mark", null)
            .InEmergency(new EmergencyBlock(At(44.5062, -67.7240), "911, ask for the Coast Guard") { NearestRoad = "Cape Road, at the mailboxes" });
        var verge = place.AddParking(new ParkingArea("Cape Road verge", At(44.5130, -67.7262), "Verge", coast.Says("Club visit", 500, "Wes Pettibone")));
        var landing = place.AddParking(new ParkingArea("Cape landing", At(44.5196, -67.7301), "Gravel", coast.Says("Club visit", 500, "Wes Pettibone")).Hold(5));
        place.AddOvernightRule(coast.Night(Sleeper.Vehicle, OvernightStanding.Unknown, "Nobody has asked", 500));
        place.AddRoute("Cape Road drive").From(verge, null).Then(coast.Road("Cape Road", 112, 95, "No turning for trailers."))
            .Then(Leg.Walk("Through the yard", 0.6, 9, 8, "Drive, lawn", LegalStatus.Private, coast.Says("Owner's sign", 500, "Wes Pettibone"))
                .NeverCutOff().Over(LegGround.Firm).ByNight(LightAtNight.NotKnownInTheDark)
                .Allow(Consent.No, Consent.AskFirst, DogRule.No));
        place.AddRoute("Along the foreshore").From(landing, 0).Then(coast.Road("To Cape landing", 110, 92, "Small lot."))
            .Then(Leg.Walk("Along the foreshore", 1.8, 35, 5, "Cobble, weed", LegalStatus.Unknown, coast.Says("Nobody knows who owns below high water here", 500, "Wes Pettibone"))
                .Over(LegGround.Weed).ByNight(LightAtNight.NotKnownInTheDark)
                .Allow(Consent.Unknown, Consent.Unknown, DogRule.Unknown)
                .PassableWhile(new Crossing(Above(2.4, Milbridge), isBeach: true, minutesFromStance: null)));
        place.AddRoute("Old town way").From(verge, null).Then(coast.Road("Cape Road", 112, 95, "No turning for trailers."))
            .Then(Leg.Walk("Town way, discontinued", 0.8, 14, 10, "Overgrown", LegalStatus.Closed, coast.Says("Town meeting, discontinued 1974", 500, "Wes Pettibone")));
        place.Rate(new HazardRating(HazardKind.CutOff, null, coast.Says("Not rated", 500)));

        var ribs = place.AddVantagePoint(new VantagePoint("the-ribs", "The ribs", VantageKind.Beach, At(44.5053, -67.7236), Footing.Steady, "Gravel beside the wreck.")
            .CheckedAs(coast.Says("Old post of a member's", 900, "Ivo Calder"))
            .Sketched("ketch-point-the-ribs.svg"));
        ribs.Compose(new Composition("ribs-and-islands", "Ribs and islands", "Curved ribs framing the islands.", 165, Full(24), WantedLight.GoldenLight, WantedLight.TwilightGlow));
        place.Report(new HazardNote(HazardKind.Other, 1, "Iron in the gravel at the stern.", coast.DaysAgo(880))).Reject();
        return place;
    }
}
