using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Contributions;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using NodaTime;

namespace Foreshore.Guide.Demo;

/// <summary>
/// What waits for the wardens of the demo: six proposals and three reported hazards beside the severe one and the near miss that
/// the coast itself holds. Its people are invented and cannot sign in: they have no password, and their addresses lead nowhere.
/// </summary>
internal sealed class DemoQueue(IReadOnlyList<Location> coast, Instant now)
{
    private readonly Member wes = Somebody("Wes Pettibone", now), marguerite = Somebody("Marguerite Doyle", now), ivo = Somebody("Ivo Calder", now), ada = Somebody("Ada Thorsen", now);

    public IEnumerable<Member> People => [wes, marguerite, ivo, ada];

    /// <summary>Called once the coast is saved: proposals name things by their numbers.</summary>
    public IEnumerable<Proposal> Proposals()
    {
        var slip = coast.Single(place => place.Slug == "long-slip");
        var farrow = coast.Single(place => place.Slug == "farrow-harbour");
        yield return New(wes, 9, slip, "The rails run straight at the moonrise from here in October; I went three evenings.", new()
        {
            ["position"] = "44.771400, -67.064900",
            ["accuracy"] = "6",
            ["kind"] = nameof(VantageKind.OpenGround),
            ["footing"] = nameof(Footing.Steady),
            ["name"] = "Capstan stone",
            ["summary"] = "The flat stone with the iron ring, above the turf edge: both rails, the slip and the gap",
            ["walk-in"] = "4",
            ["walk-out"] = "4",
            ["picture-facing"] = "118",
            ["picture-focal-length"] = "50",
            ["picture-wanted"] = "GoldenLight FullMoonBalanced",
            ["hazard-1-kind"] = nameof(HazardKind.Slip),
            ["hazard-1-severity"] = "1",
        });
        yield return New(ivo, 3, farrow, "", new()
        {
            ["position"] = "44° 39.40' N, 67° 12.20' W",
            ["kind"] = nameof(VantageKind.HarbourWall),
            ["footing"] = nameof(Footing.Anyone),
            ["name"] = "Bait shed corner",
            ["summary"] = "Beside the bait shed, looking in on the fleet from its other side",
            ["picture-facing"] = "305",
            ["picture-focal-length"] = "85",
            ["picture-wanted"] = "BlueLight SoftLight",
        });

        var ledge = Stance("bell-ledge");
        yield return Change(ada, 6, Matter.Stance, ledge.Id, coast.Single(place => place.VantagePoints.Contains(ledge)), VantageSheet.Whole.Read(ledge),
            "Stood there on two springs with the same mark under water: a hand lower than we have it.",
            ("usable-tide", Written.Of(ledge.HighestUsableTide is { } tide ? Math.Round(tide.Metres - 0.2, 2) : 2.4)),
            ("usable-tide-datum", nameof(TideDatum.ChartDatum)), ("usable-tide-station", DemoCoast.Cutler), ("usable-tide-repeated", "yes"));

        var howe = coast.Single(place => place.Slug == "shingle-howe");
        var lot = howe.Parking[0];
        yield return Change(marguerite, 2, Matter.Parking, lot.Id, howe, AccessSheets.Parking.Read(lot), "New sign at the entrance since last week.",
            ("notes", "The town ploughs it last. New sign: no trailers."), ("checked-on", Written.Of(Today.PlusDays(-2))));

        var yard = coast.Single(place => place.Slug == "ketch-point");
        var foreshore = yard.Routes.SelectMany(route => route.Legs).First(leg => leg.LegalStatus == LegalStatus.Unknown);
        yield return Change(wes, 12, Matter.Leg, foreshore.Id, yard, AccessSheets.Leg.Read(foreshore), "The registry of deeds has it: the town owns to the low-water line there.",
            ("legal-status", nameof(LegalStatus.Customary)), ("says-who", "Registry of deeds, book and page in the club's folder"), ("checked-on", Written.Of(Today.PlusDays(-12))));

        var picture = coast.SelectMany(place => place.VantagePoints).SelectMany(stance => stance.Compositions).Single(each => each.Slug == "far-light");
        var neck = coast.Single(place => place.VantagePoints.Any(stance => stance.Compositions.Contains(picture)));
        yield return Change(ivo, 1, Matter.Picture, picture.Id, neck, CompositionSheet.Whole.Read(picture), "The old notes had the drift of the compass the wrong way round.",
            ("kit", "Long lens, and something to sit on: the sun comes late"));
    }

    /// <summary>Reports that nobody has looked at yet. The severe one, at the Anvil, is the coast's own.</summary>
    public void Report()
    {
        coast.Single(place => place.Slug == "herring-slip").Report(new HazardNote(HazardKind.Slip, 2, "Weed on the outer wall's last steps, right up to the rail.", Today.PlusDays(-4)).By(Guid.NewGuid(), ada.Id, DaysAgo(4)));
        coast.Single(place => place.Slug == "halfmoon-light").Report(new HazardNote(HazardKind.Fall, 3, "The fence at the high edge leans outward by two posts. Do not lean on it.", Today.PlusDays(-2)).By(Guid.NewGuid(), wes.Id, DaysAgo(2)));
        coast.Single(place => place.Slug == "tern-bank").Report(new HazardNote(HazardKind.Animals, 1, "A seal with pup on the wet sand; stay well off.", Today.PlusDays(-1)).By(Guid.NewGuid(), marguerite.Id, DaysAgo(1)));
    }

    private LocalDate Today => now.InZone(coast[0].Zone).Date;

    private Instant DaysAgo(int days) => now - Duration.FromDays(days);

    private Proposal New(Member by, int daysAgo, Location place, string reason, Dictionary<string, string> typed)
    {
        typed["place"] = place.Slug;
        return new Proposal(Guid.NewGuid(), Matter.NewStance, null, null, by.Id, DaysAgo(daysAgo))
            .Keep(NewStanceSheet.Filled(typed), DaysAgo(daysAgo)).About(place.Id).Send(reason, DaysAgo(daysAgo));
    }

    private Proposal Change(Member by, int daysAgo, Matter matter, int id, Location place, IReadOnlyDictionary<string, string> found, string reason, params (string Field, string Text)[] changes)
    {
        var differing = changes.Where(change => found[change.Field] != change.Text).ToDictionary(change => change.Field, change => change.Text);
        return new Proposal(Guid.NewGuid(), matter, place.Id, id, by.Id, DaysAgo(daysAgo)).Keep(differing, DaysAgo(daysAgo)).FoundAs(found).Send(reason, DaysAgo(daysAgo));
    }

    private VantagePoint Stance(string slug) => coast.SelectMany(place => place.VantagePoints).Single(stance => stance.Slug == slug);

    private static Member Somebody(string name, Instant now) =>
        new($"{name.ToLowerInvariant().Replace(' ', '.')}@ternbank.example", name, Role.Member, now - Duration.FromDays(900));
}
