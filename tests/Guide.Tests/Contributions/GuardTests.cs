using Xunit;

namespace Foreshore.Guide.Contributions;

/// <summary>
/// Which figures need a second pair of eyes. A field is guarded where it is defined; here every field that is not must say why no turn
/// back and no "keep off" stands on it, so that one added later and forgotten fails.
/// </summary>
public sealed class GuardTests
{
    private const string Words = "words and pictures", Places = "where a mark is drawn", Facts = "who says so, when", Photography = "how the picture is taken", Comfort = "what one brings or pays";

    /// <summary>Harmless by kind; for those of a new vantage point's picture the same names count.</summary>
    private static readonly Dictionary<Matter, Dictionary<string, string>> Harmless = new()
    {
        [Matter.Stance] = Of(("name summary", Words), ("position footing tripods eye-height", Places), ("skyline", "when the sun shows; not listed"), ("says-who checked-on link", Facts)),
        [Matter.Picture] = CompositionSheet.Whole.Fields.ToDictionary(field => field.Name, _ => Photography),
        [Matter.Place] = PlaceSheet.Whole.Fields.ToDictionary(field => field.Name, _ => Words),
        [Matter.Leg] = Of(("name notes", Words), ("says-who checked-on link", Facts), ("kilometres climb", "printed beside the minutes, which decide"), ("group tripod dogs", "who may come, not when"), ("ask-whom", Facts), ("ferry-fare ferry-currency ferry-saves", Comfort)),
        [Matter.Parking] = Of(("name surface notes", Words), ("position", Places), ("cars cost currency barrier", Comfort), ("ask-whom says-who checked-on link", Facts)),
        [Matter.Overnight] = Of(("standing granted-by says-who checked-on link", "whether one may sleep there; no outlook asks it")),
        [Matter.Rating] = Of(("says-who checked-on link", Facts)),
        [Matter.Tide] = [],
        [Matter.Way] = Of(("name notes", Words)),
        [Matter.OwnWays] = [],
    };

    /// <summary>domain.md, section 6, as far as the guide has fields for them today.</summary>
    private static readonly (string Sort, Matter Matter, string Fields)[] Listed =
    [
        ("ground height", Matter.Stance, "ground ground-plus-minus ground-method ground-station ground-measured ground-how"),
        ("kind", Matter.Stance, "kind"),
        ("reach and its reason", Matter.Stance, "reach reach-reason"),
        ("cut-off", Matter.Stance, "cut-off cut-off-datum cut-off-station cut-off-repeated never-cut-off"),
        ("crossing", Matter.Leg, "tidal-cut crossing crossing-datum crossing-station crossing-repeated crossing-beach crossing-minutes"),
        ("tide limit", Matter.Stance, "usable-tide usable-tide-datum usable-tide-station usable-tide-repeated"),
        ("sea limit, period seen, exposed sector, shelter", Matter.Stance, "sea-height sea-period sea-from sea-to sea-repeated sea-outside"),
        ("shelter of a crossing", Matter.Leg, "crossing-sheltered"),
        ("watch place and dark stance", Matter.Stance, "watch watch-position watch-minutes dark dark-position dark-minutes"),
        ("edge, cliff", Matter.Stance, "edge gust-limit cliff-height cliff-distance cliff-because"),
        ("walk in, out and to beyond reach, way known in the dark", Matter.Stance, "walk-in walk-out beyond-reach walked-in-the-dark"),
        ("leg minutes and surface, legal status, hours", Matter.Leg, "minutes surface legal-status ground open-hours hours sailings-out sailings-back ferry-minutes ferry-check-in"),
        ("order and car parks of ways", Matter.Way, "order car-park-1 car-park-1-walk"),
        ("a vantage point's own ways", Matter.OwnWays, "way-1 way-1-end way-1-in way-1-out"),
        ("locks, flood height", Matter.Parking, "open-hours floods floods-datum floods-station floods-repeated"),
        ("tide station and its corrections", Matter.Tide, "station high-minutes low-minutes high-ratio low-ratio mean-sea-level"),
    ];

    public static TheoryData<Matter> Matters => [.. Enum.GetValues<Matter>().Where(matter => !matter.IsNew())];

    [Theory]
    [MemberData(nameof(Matters))]
    public void Every_field_is_guarded_or_says_why_not(Matter matter)
    {
        var open = matter.Sheet().Fields.Where(field => !field.IsGuarded).Select(field => field.Name).ToList();

        Assert.True(open.All(Harmless[matter].ContainsKey), $"{matter}: {string.Join(", ", open.Where(name => !Harmless[matter].ContainsKey(name)))} – guard it where it is defined, or say here why nothing stands on it.");
    }

    [Fact]
    public void Every_listed_figure_is_guarded() => Assert.All(Listed, sort =>
        Assert.All(sort.Fields.Split(' '), name => Assert.True(sort.Matter.Sheet().Field(name) is { IsGuarded: true }, $"{sort.Sort}: {name}")));

    [Theory]
    [InlineData(Matter.NewStance, Matter.Stance, "")]
    [InlineData(Matter.NewStance, Matter.Picture, NewStanceSheet.Picture)]
    [InlineData(Matter.NewWay, Matter.Leg, "")]
    [InlineData(Matter.NewParking, Matter.Parking, "")]
    [InlineData(Matter.NewPicture, Matter.Picture, "")]
    [InlineData(Matter.NewOvernight, Matter.Overnight, "")]
    public void What_is_new_is_guarded_and_kept_to_wardens_like_what_is_there(Matter added, Matter there, string prefix) => Assert.All(there.Sheet().Fields, field =>
    {
        if (added.Sheet().Field(prefix + field.Name) is { } same)
            Assert.Equal((field.IsGuarded, field.IsWardens, string.Join(' ', field.WardensChoices)), (same.IsGuarded, same.IsWardens, string.Join(' ', same.WardensChoices)));
    });

    /// <summary>domain.md, section 2: a warden says why; 5.2, 5.6 and 5.7: only where a warden wrote why.</summary>
    [Fact]
    public void Statements_of_wardens_are_marked()
    {
        string[] statements = ["reach-reason", "cliff-because", "sea-outside"];
        Assert.All(statements, name => Assert.True(Matter.Stance.Sheet().Field(name)!.IsWardens, name));
        Assert.True(Matter.Leg.Sheet().Field("crossing-sheltered")!.IsWardens);
        Assert.Equal(["None", "StillWaterOnly"], Matter.Stance.Sheet().Field("reach")!.WardensChoices);
        Assert.All(Enum.GetValues<Matter>().SelectMany(matter => matter.Sheet().Fields).Where(field => field.IsWardens || field.WardensChoices.Count > 0), field => Assert.True(field.IsGuarded, field.Name));
    }

    private static Dictionary<string, string> Of(params (string Names, string Why)[] kinds) =>
        kinds.SelectMany(kind => kind.Names.Split(' ').Select(name => (name, kind.Why))).ToDictionary(each => each.name, each => each.Why);
}
