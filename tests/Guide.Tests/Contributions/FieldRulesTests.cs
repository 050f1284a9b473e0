using Foreshore.Guide.Access;
using Foreshore.Guide.Demo;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Contributions;

/// <summary>Every field of every sheet, by the server alone: what is not of its kind is refused beside the field and never stored (OWASP ASVS 5.0, 2.2.1, 2.2.2).</summary>
public sealed class FieldRulesTests
{
    private static readonly LocalDate Day = new(2026, 11, 25);

    private static readonly Dictionary<FieldKind, string[]> Wrong = new()
    {
        [FieldKind.Number] = ["two", "1e9", "NaN", "12 m", "--1"],
        [FieldKind.Whole] = ["1.5", "many", "1e3"],
        [FieldKind.Choice] = ["7", "Nothing of the kind", "0"],
        [FieldKind.Several] = ["GoldenLight Nothing", "3"],
        [FieldKind.YesNo] = [],
        [FieldKind.Date] = ["25/11/2026", "2026-02-30", "yesterday"],
        [FieldKind.Time] = ["25:00", "6 o'clock"],
        [FieldKind.Position] = ["91, 0", "north of here", "44"],
        [FieldKind.Hours] = ["noon till late", "25:00-26:00"],
        [FieldKind.Sailings] = ["now and then", "first 25:00"],
        [FieldKind.Line] = [],
        [FieldKind.Text] = [],
    };

    public static TheoryData<Matter> Matters => [.. Enum.GetValues<Matter>().Where(matter => !matter.IsNew())];

    [Theory]
    [MemberData(nameof(Matters))]
    public void What_is_not_of_its_kind_is_refused_and_not_stored(Matter matter)
    {
        var tried = 0;
        foreach (var field in Things(matter).First().Parts.SelectMany(part => part.Fields))
            foreach (var typed in Wrong[field.Kind])
            {
                var thing = Things(matter).First();
                var before = thing.Read();
                // With all the rest as it stands, or as it could: a figure that needs another is asked for with it.
                var faults = thing.Write(new Dictionary<string, string>(Rest(matter, thing)) { [field.Name] = typed });
                Assert.Contains(faults, fault => fault.FieldId == field.Name || field.Kind == FieldKind.Choice);
                Assert.True(faults.Count > 0 && thing.Read()[field.Name] != typed, $"{matter} {field.Name}: {typed}");
                Assert.Equal(before[field.Name], thing.Read()[field.Name]);
                tried++;
            }
        Assert.True(tried > 2 || matter is Matter.Overnight, $"{matter}: {tried}");
    }

    [Theory]
    [MemberData(nameof(Matters))]
    public void What_is_longer_than_its_field_is_refused(Matter matter)
    {
        foreach (var field in Things(matter).First().Parts.SelectMany(part => part.Fields).Where(field => field.Kind is FieldKind.Line or FieldKind.Text && !field.HasOwnPage))
        {
            var thing = Things(matter).First();
            var texts = new Dictionary<string, string>(Rest(matter, thing)) { [field.Name] = new('a', 20_000) };
            Assert.NotEmpty(thing.Write(texts));
            Assert.NotEqual(texts[field.Name], thing.Read()[field.Name]);
        }
    }

    /// <summary>The fullest texts of its kind; ways and car parks are named by their place, so theirs are their own.</summary>
    private static IReadOnlyDictionary<string, string> Rest(Matter matter, Published thing) => matter is Matter.Way or Matter.OwnWays
        ? thing.Read() : Things(matter).Select(other => other.Read()).MaxBy(texts => texts.Count(pair => pair.Value.Length > 0))!;

    private static IEnumerable<Published> Things(Matter matter) => DemoGuide.Locations(Day).SelectMany(place => matter switch
    {
        Matter.Place or Matter.Tide => [new Published(matter, 0, place, place)],
        Matter.Stance => place.VantagePoints.Select(stance => new Published(matter, 0, place, stance)),
        Matter.Picture => place.VantagePoints.SelectMany(stance => stance.Compositions).Select(picture => new Published(matter, 0, place, picture)),
        Matter.Leg => place.Routes.SelectMany(route => route.Legs).Where(leg => leg.Kind != LegKind.Ferry).Select(leg => new Published(matter, 0, place, leg)),
        Matter.Parking => place.Parking.Select(area => new Published(matter, 0, place, area)),
        Matter.Overnight => place.OvernightRules.Select(rule => new Published(matter, 0, place, rule)),
        Matter.Way => place.Routes.Select(route => new Published(matter, 0, place, new WayAt(route, place))),
        Matter.OwnWays => place.VantagePoints.Select(stance => new Published(matter, 0, place, new OwnWays(stance, place))),
        _ => place.HazardRatings.Select(rating => new Published(matter, 0, place, rating)),
    });
}
