using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Contributions;

public sealed class NewStanceTests
{
    private static readonly LocalDate Day = new(2026, 11, 25);

    public static Dictionary<string, string> Typed => new()
    {
        ["place"] = "long-slip",
        ["position"] = "44° 39.0' N, 67° 15.0' W",
        ["accuracy"] = "8",
        ["kind"] = "Ledge",
        ["footing"] = "Steady",
        ["name"] = "Slip end",
        ["summary"] = "Flat granite beside the slip, the stack to the east",
        ["picture-facing"] = "96",
        ["picture-focal-length"] = "24",
        ["picture-sensor-width"] = "36",
        ["picture-sensor-height"] = "24",
        ["picture-orientation"] = "Landscape",
        ["picture-wanted"] = "GoldenLight BlueLight",
        ["hazard-1-kind"] = "Slip",
        ["hazard-1-severity"] = "3",
    };

    [Fact]
    public void The_least_one_types_makes_a_stance_with_its_picture()
    {
        var (made, faults) = NewStanceSheet.Make(Typed, Day, new HashSet<string> { "slip-end" });

        Assert.Empty(faults);
        Assert.Equal(("slip-end-2", VantageKind.Ledge, Reach.Unknown), (made!.Stance.Slug, made.Stance.Kind, made.Stance.Reach));
        Assert.Equal((96, 24.0, 2), (made.Picture.FacingDegrees, made.Picture.FocalLengthMm, made.Picture.Wanted.Count));
        Assert.Equal((Hazards.HazardKind.Slip, 3), (Assert.Single(made.Ratings).Kind, made.Ratings[0].Severity));
        Assert.Null(made.NewPlace);
    }

    [Fact]
    public void Nothing_typed_names_each_field_that_is_needed()
    {
        var (made, faults) = NewStanceSheet.Make(new Dictionary<string, string>(), Day, new HashSet<string>());

        Assert.Null(made);
        Assert.Equal(["footing", "kind", "name", "picture-facing", "picture-focal-length", "picture-orientation", "picture-sensor-height", "picture-sensor-width", "picture-wanted", "place", "position", "summary"],
            faults.Select(fault => fault.FieldId).Order());
    }

    [Fact]
    public void A_compass_reading_gives_the_true_facing()
    {
        var typed = Typed;
        typed.Remove("picture-facing");
        (typed["picture-compass"], typed["picture-declination"], typed["picture-compass-read"]) = ("112", "-16.2", "2026-11-25");

        var (made, faults) = NewStanceSheet.Make(typed, Day, new HashSet<string>());

        Assert.Empty(faults);
        Assert.Equal(95.8, made!.Picture.FacingDegrees, 9);
        Assert.Equal(112, made.Picture.Compass!.ReadingDegrees);
    }

    [Fact]
    public void A_new_place_is_made_with_it_and_not_shown_to_everybody_unless_said()
    {
        var typed = Typed;
        typed["place"] = NewStanceSheet.AnotherPlace;
        Assert.Equal(4, NewStanceSheet.Make(typed, Day, new HashSet<string>()).Faults.Count);
        (typed["place-name"], typed["place-summary"], typed["place-country"], typed["place-zone"]) = ("Cormorant Sound", "A sound between two islands", "us", "America/New_York");

        var (made, faults) = NewStanceSheet.Make(typed, Day, new HashSet<string>());

        Assert.Empty(faults);
        Assert.Equal(("cormorant-sound", "US", Visibility.Members), (made!.NewPlace!.Slug, made.NewPlace.CountryCode, made.NewPlace.Visibility));
    }

    [Theory]
    [InlineData("picture-wanted", "SunOnMars", "picture-wanted")]
    [InlineData("picture-focal-length", "-3", "picture-focal-length")]
    [InlineData("picture-facing", "400", "picture-facing")]
    [InlineData("walk-in", "4000", "walk-in")]
    [InlineData("position", "91, 0", "position")]
    public void A_fault_stands_beside_the_field_of_the_form(string field, string typed, string at)
    {
        var given = Typed;
        given[field] = typed;

        Assert.Equal(at, Assert.Single(NewStanceSheet.Make(given, Day, new HashSet<string>()).Faults).FieldId);
    }
}
