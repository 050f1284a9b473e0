using Foreshore.Guide.Demo;
using Foreshore.Guide.Locations;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Contributions;

/// <summary>Every published thing can be read as texts and written back; changing and restoring is the identity.</summary>
public sealed class SheetTests
{
    private static readonly LocalDate Day = new(2026, 11, 25);

    private static readonly Dictionary<string, Func<IEnumerable<Published>>> Kinds = new()
    {
        ["place"] = () => All(place => [Of(Matter.Place, place, place)]),
        ["tide"] = () => All(place => [Of(Matter.Tide, place, place)]),
        ["stance"] = () => All(place => place.VantagePoints.Select(stance => Of(Matter.Stance, place, stance))),
        ["picture"] = () => All(place => place.VantagePoints.SelectMany(stance => stance.Compositions).Select(picture => Of(Matter.Picture, place, picture))),
        ["leg"] = () => All(place => place.Routes.SelectMany(route => route.Legs).Where(leg => leg.Ferry is null).Select(leg => Of(Matter.Leg, place, leg))),
        ["ferry"] = () => All(place => place.Routes.SelectMany(route => route.Legs).Where(leg => leg.Ferry is not null).Select(leg => Of(Matter.Leg, place, leg))),
        ["parking"] = () => All(place => place.Parking.Select(area => Of(Matter.Parking, place, area))),
        ["overnight"] = () => All(place => place.OvernightRules.Select(rule => Of(Matter.Overnight, place, rule))),
        ["rating"] = () => All(place => place.HazardRatings.Select(rating => Of(Matter.Rating, place, rating))),
    };

    public static TheoryData<string> EachKind => [.. Kinds.Keys];

    [Theory]
    [MemberData(nameof(EachKind))]
    public void What_is_read_is_taken_back_unchanged(string kind)
    {
        foreach (var thing in Kinds[kind]())
        {
            var texts = thing.Read();
            Assert.Equal(thing.Matter.Sheet().Fields.Select(field => field.Name).Order(), texts.Keys.Order());
            Assert.Empty(thing.Write(texts));
            Assert.Equal(texts, thing.Read());
        }
    }

    /// <summary>Each thing of the demo is given the texts of each other of its kind, in part and whole, and brought back.</summary>
    [Theory]
    [MemberData(nameof(EachKind))]
    public void Applying_then_restoring_is_the_identity(string kind)
    {
        var things = Kinds[kind]().ToList();
        var applied = 0;
        for (var i = 0; i < things.Count; i++)
            for (var j = 1; j <= Math.Min(12, things.Count - 1); j++)
            {
                var (thing, other) = (things[i], things[(i + j) % things.Count].Read());
                var before = thing.Read();
                // Whole parts are taken, as a form sends them.
                var given = thing.Matter.Sheet().Parts.Where((_, part) => (i + part) % (j % 3 + 1) == 0).SelectMany(part => part.Fields).ToDictionary(field => field.Name, field => other[field.Name]);
                if (thing.Write(given) is { Count: > 0 } faults)
                    Assert.Fail($"{kind} {thing.Name}: {string.Join("; ", faults)}");
                var changes = thing.Matter.Sheet().Differences(before, thing.Read());
                if (changes.Count > 0)
                    applied++;
                Assert.All(given, pair => Assert.Equal(pair.Value, thing.Read()[pair.Key]));
                Assert.Empty(thing.Write(changes.ToDictionary(change => change.Field, change => change.Before)));
                Assert.Equal(before, thing.Read());
            }
        Assert.True(applied >= things.Count / 2, $"{applied} changes among {things.Count}");
    }

    [Theory]
    [InlineData("ground", "2,4", null)]
    [InlineData("ground", "two", "\"two\" is not a number. Enter one like 2.4, without its unit.")]
    [InlineData("position", "44.65", "This is not a notation the page can read. Enter latitude and longitude, like 44.65, -67.25 or 44° 39.0' N, 67° 15.0' W.")]
    [InlineData("kind", "7", "\"7\" is none of the choices. Choose one of the list.")]
    [InlineData("tripods", "1.5", "Enter a whole number here.")]
    [InlineData("ground-measured", "25/11/2026", "\"25/11/2026\" is not a date. Enter one like 2026-11-25.")]
    [InlineData("name", "", "The vantage point's name is empty. Write at least a word.")]
    public void A_fault_stands_beside_its_field(string field, string typed, string? words)
    {
        var stance = DemoGuide.Locations(Day).SelectMany(place => place.VantagePoints).First(stance => stance.Ground is not null);

        var faults = VantageSheet.Whole.Write(stance, new Dictionary<string, string> { [field] = typed });

        if (words is null)
            Assert.Empty(faults);
        else
            Assert.Equal(new Shell.FieldFault(field, words), Assert.Single(faults));
    }

    [Fact]
    public void What_has_no_place_without_another_field_is_said_and_not_lost()
    {
        var stance = DemoGuide.Locations(Day).SelectMany(place => place.VantagePoints).First(stance => stance.Sea is null);

        var fault = Assert.Single(VantageSheet.Whole.Write(stance, new Dictionary<string, string> { ["sea-period"] = "9" }));

        Assert.Equal("sea-period", fault.FieldId);
        Assert.Contains("Significant wave height", fault.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Names_of_fields_are_told_apart_in_every_sheet() =>
        Assert.All(Enum.GetValues<Matter>(), matter => Assert.Empty(matter.Sheet().Fields.GroupBy(field => field.Name).Where(same => same.Count() > 1).Select(same => same.Key)));

    [Fact]
    public void Limits_that_lives_may_hang_on_are_guarded()
    {
        string[] guarded = ["ground", "cut-off", "never-cut-off", "usable-tide", "sea-height", "sea-period", "beyond-reach", "reach", "watch"];
        Assert.All(guarded, name => Assert.True(Matter.Stance.Sheet().Field(name)!.IsGuarded, name));
        Assert.True(Matter.Leg.Sheet().Field("crossing")!.IsGuarded);
        Assert.False(Matter.Stance.Sheet().Field("summary")!.IsGuarded);
    }

    private static IEnumerable<Published> All(Func<Location, IEnumerable<Published>> things) => DemoGuide.Locations(Day).SelectMany(things);

    private static Published Of(Matter matter, Location place, object thing) => new(matter, 0, place, thing);
}
