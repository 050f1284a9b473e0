using Foreshore.Guide.Access;
using Foreshore.Guide.Demo;
using Foreshore.Guide.Locations;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Contributions;

/// <summary>Ways as a whole, a stance's own ways, ferries and what the tide does to a leg, as forms read and write them.</summary>
public sealed class WaySheetTests
{
    private readonly IReadOnlyList<Location> coast = DemoGuide.Locations(new LocalDate(2026, 11, 25));

    private Location Place(string slug) => coast.Single(place => place.Slug == slug);

    private Leg Ferry => Place("lantern-island").Routes[0].Legs.Single(leg => leg.Kind == LegKind.Ferry);

    private Leg Bar => Place("sorrel-holm").Routes[0].Legs.Single(leg => leg.Crossing is not null);

    [Fact]
    public void Every_way_and_every_stance_s_ways_are_taken_back_as_they_are_read()
    {
        var things = coast.SelectMany(place => (IEnumerable<Published>)
        [
            .. place.Routes.Select(route => new Published(Matter.Way, 0, place, new WayAt(route, place))),
            .. place.VantagePoints.Select(stance => new Published(Matter.OwnWays, 0, place, new OwnWays(stance, place))),
        ]).ToList();

        Assert.True(things.Count > 40);
        Assert.All(things, thing =>
        {
            var texts = thing.Read();
            Assert.Equal(thing.Matter.Sheet().Fields.Select(field => field.Name).Order(), texts.Keys.Order());
            Assert.Empty(thing.Write(texts));
            Assert.Equal(texts, thing.Read());
        });
    }

    [Fact]
    public void Car_parks_are_named_in_order_with_their_walks_and_brought_back()
    {
        var place = Place("halfmoon-light");
        var way = new WayAt(place.Routes[0], place);
        var before = WaySheets.Way.Read(way);

        Assert.Empty(WaySheets.Way.Write(way, Texts(("car-park-1", "Verge before the gate"), ("car-park-1-walk", "6"), ("car-park-2", "Light Road car park"), ("car-park-2-walk", ""))));
        Assert.Equal([("Verge before the gate", 6.0), ("Light Road car park", null)], way.Route.Parking.Select(served => (served.ParkingArea.Name, served.WalkMinutes)));

        Assert.Empty(WaySheets.Way.Write(way, before));
        Assert.Equal([("Light Road car park", 0.0), ("Verge before the gate", 5.0)], way.Route.Parking.Select(served => (served.ParkingArea.Name, served.WalkMinutes)));
    }

    [Theory]
    [InlineData("car-park-2", "Somewhere else", "car-park-2", "no car park called \"Somewhere else\"")]
    [InlineData("car-park-2", "Light Road car park", "car-park-2", "stands twice")]
    [InlineData("car-park-1-walk", "-3", "car-park-1-walk", "walk from the car park")]
    [InlineData("car-park-4-walk", "7", "car-park-4-walk", "Which one is this of")]
    [InlineData("car-park-1", "", "car-park-1-walk", "Which one is this of")]
    [InlineData("order", "4", "order", "has 1 way in")]
    [InlineData("order", "", "order", "Which place")]
    public void A_fault_of_a_way_stands_beside_its_field(string field, string typed, string at, string words)
    {
        var place = Place("halfmoon-light");

        var fault = Assert.Single(WaySheets.Way.Write(new(place.Routes[0], place), Texts((field, typed))));

        Assert.Equal(at, fault.FieldId);
        Assert.Contains(words, fault.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_list_has_no_gap()
    {
        var place = Place("halfmoon-light");

        var fault = Assert.Single(WaySheets.Way.Write(new(place.Routes[0], place), Texts(("car-park-1", ""), ("car-park-1-walk", ""))));

        Assert.Equal("car-park-2", fault.FieldId);
        Assert.Contains("from its top", fault.Words, StringComparison.Ordinal);
        Assert.Equal(2, place.Routes[0].Parking.Count);
    }

    [Fact]
    public void A_way_put_first_moves_the_others_down()
    {
        var place = Place("sorrel-holm");
        var names = place.Routes.Select(route => route.Name).ToList();

        Assert.Empty(WaySheets.Way.Write(new(place.Routes[2], place), Texts(("order", "1"))));

        Assert.Equal([names[2], names[0], names[1]], place.Routes.Select(route => route.Name));
        Assert.Equal([1, 2, 3], place.Routes.Select(route => route.Order));
    }

    [Fact]
    public void A_stance_s_own_ways_are_named_with_their_figures_and_taken_away()
    {
        var place = Place("sorrel-holm");
        var own = new OwnWays(place.VantagePoints.Single(stance => stance.Slug == "bar-head"), place);

        Assert.Empty(WaySheets.Own.Write(own, Texts(("way-2", "Over the bar"), ("way-2-end", "1.5"), ("way-2-in", "9"))));
        Assert.Equal([("To the head of the bar", 2.0, 2.0, 0.0), ("Over the bar", 9.0, null, 1.5)], own.Stance.Ways.Select(way => (way.Route.Name, way.WalkInMinutes, way.WalkOutMinutes, way.EndMinutes)));

        Assert.Empty(WaySheets.Own.Write(own, WaySheets.Own.Fields.ToDictionary(field => field.Name, _ => "")));
        Assert.Empty(own.Stance.Ways);
    }

    [Fact]
    public void A_ferry_s_facts_are_written_and_its_sailings_stay()
    {
        var ferry = Ferry;
        var (outwards, back) = (ferry.Ferry!.Out, ferry.Ferry.Back);

        Assert.Empty(AccessSheets.Leg.Write(ferry, Texts(("ferry-minutes", "11"), ("ferry-check-in", "5"), ("ferry-interval", ""), ("ferry-fare", "14.5"), ("ferry-currency", "CAD"), ("ferry-saves", "20"))));

        Assert.Equal((11, 5, null, 14.5m, "CAD", 20.0), (ferry.Ferry.CrossingMinutes, ferry.Ferry.LastCheckInMinutes, ferry.Ferry.IntervalMinutes, ferry.Ferry.Fare, ferry.Ferry.Currency, ferry.Ferry.MinutesSaved));
        Assert.Equal((11.0, outwards, back), (ferry.Minutes, ferry.Ferry.Out, ferry.Ferry.Back));
        Assert.Equal("ferry-check-in", Assert.Single(AccessSheets.Leg.Write(ferry, Texts(("ferry-check-in", "")))).FieldId);
        Assert.Equal("ferry-currency", Assert.Single(AccessSheets.Leg.Write(ferry, Texts(("ferry-currency", "")))).FieldId);
    }

    [Fact]
    public void Only_a_ferry_is_asked_for_a_ferry_s_facts()
    {
        Assert.Contains("Only a leg by ferry", Assert.Single(AccessSheets.Leg.Write(Bar, Texts(("ferry-minutes", "9"), ("ferry-check-in", "5")))).Words, StringComparison.Ordinal);
        Assert.DoesNotContain(FerrySheet.Part, new Published(Matter.Leg, 0, Place("sorrel-holm"), Bar).Parts);
        Assert.Contains(FerrySheet.Part, new Published(Matter.Leg, 0, Place("lantern-island"), Ferry).Parts);

        var addition = new Addition(Matter.NewWay, Place("halfmoon-light"));
        var typed = Texts(("way", "By boat"), ("leg-kind", "Ferry"), ("name", "The mail boat"), ("legal-status", "Permissive"), ("says-who", "Boatman"), ("checked-on", "2026-11-20"));
        Assert.Equal("ferry-minutes", Assert.Single(addition.Write(typed)).FieldId);
        Assert.Empty(addition.Write(new Dictionary<string, string>(typed) { ["ferry-minutes"] = "25", ["ferry-check-in"] = "0", ["car-park-1"] = "Verge before the gate" }));
        var way = ((Leg)addition.Attach(new HashSet<string>()).Thing, Place("halfmoon-light").Routes[^1]);
        Assert.Equal((25.0, TidalCut.Unknown, "Verge before the gate", null), (way.Item1.Ferry!.CrossingMinutes, way.Item1.TidalCut, way.Item2.Parking[0].ParkingArea.Name, way.Item2.Parking[0].WalkMinutes));
        Assert.Equal(("By boat", "25", "Verge before the gate"), (addition.Read()["way"], addition.Read()["ferry-minutes"], addition.Read()["car-park-1"]));
    }

    [Fact]
    public void Whether_the_tide_cuts_a_leg_off_is_asked_and_unknown_until_it_is_answered()
    {
        var leg = Bar;
        Assert.Equal("tidal-cut", Assert.Single(AccessSheets.Leg.Write(leg, Texts(("tidal-cut", "Never")))).FieldId);
        Assert.Equal(TidalCut.Crossing, leg.TidalCut);

        var none = AccessSheets.Leg.Fields.Where(field => field.Name.StartsWith("crossing", StringComparison.Ordinal)).ToDictionary(field => field.Name, _ => "");
        Assert.Equal("crossing", Assert.Single(AccessSheets.Leg.Write(leg, none)).FieldId);
        Assert.Empty(AccessSheets.Leg.Write(leg, new Dictionary<string, string>(none) { ["tidal-cut"] = "Unknown" }));
        Assert.Equal((TidalCut.Unknown, null), (leg.TidalCut, leg.Crossing));
        Assert.Empty(AccessSheets.Leg.Write(leg, Texts(("crossing", "2.2"), ("crossing-station", "noaa/8410140"))));
        Assert.Equal((TidalCut.Crossing, 2.2), (leg.TidalCut, leg.Crossing!.PassableBelow.Metres));
    }

    [Fact]
    public void Figures_that_a_turn_back_stands_on_are_guarded()
    {
        string[] open = ["name", "notes"];
        Assert.All(WaySheets.Way.Fields.Where(field => !open.Contains(field.Name)).Concat(WaySheets.Own.Fields), field => Assert.True(field.IsGuarded, field.Name));
        Assert.All(["tidal-cut", "ground", "light-at-night", "ferry-minutes", "ferry-check-in", "ferry-interval"], name => Assert.True(Matter.Leg.Sheet().Field(name)!.IsGuarded, name));
        Assert.True(Matter.Stance.Sheet().Field("watch-minus-nine") is { IsGuarded: true, IsWardens: true });
    }

    [Fact]
    public void Why_one_may_watch_from_minus_nine_goes_with_the_watch_place()
    {
        var stance = Place("tern-bank").VantagePoints.Single(each => each.Slug == "wet-sand");
        var before = VantageSheet.Whole.Read(stance);
        Assert.NotEmpty(before["watch-minus-nine"]);

        Assert.Empty(VantageSheet.Whole.Write(stance, Texts(("watch-minutes", "4"))));
        Assert.Equal((4.0, before["watch-minus-nine"]), (stance.WatchPlace!.MinutesToStance, stance.WatchPlace.SeenFromMinusNineBecause));
        Assert.Empty(VantageSheet.Whole.Write(stance, Texts(("watch-minus-nine", ""))));
        Assert.Null(stance.WatchPlace.SeenFromMinusNineBecause);
    }

    private static Dictionary<string, string> Texts(params (string Field, string Text)[] texts) => texts.ToDictionary(each => each.Field, each => each.Text);
}
