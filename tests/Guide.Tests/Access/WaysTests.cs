using Foreshore.Almanac.Earth;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using NodaTime;
using Xunit;

namespace Foreshore.Guide.Access;

public sealed class WaysTests
{
    private static readonly LocalDate Today = new(2026, 11, 25);
    private static readonly FactCheck Sign = new("Sign", Today.PlusDays(-10));
    private static readonly Position Here = new(44.6, -67.2);

    [Fact]
    public void Car_parks_serve_a_way_in_the_order_they_were_named()
    {
        var (gate, verge) = (Lot("Gate"), Lot("Verge"));
        var way = Place().AddRoute("Path").From(gate, 0).From(verge, null);

        Assert.Equal([("Gate", 1, 0.0), ("Verge", 2, null)], way.Parking.Select(served => (served.ParkingArea.Name, served.Order, served.WalkMinutes)));
        Assert.Contains("already serves", Assert.Throws<NotAcceptedException>(() => way.From(gate, 4)).Message, StringComparison.Ordinal);
        Assert.Throws<NotAcceptedException>(() => way.From(Lot("Far"), -1));
    }

    [Fact]
    public void Served_anew_keeps_what_stays_and_puts_it_in_the_new_order()
    {
        var (gate, verge, yard) = (Lot("Gate"), Lot("Verge"), Lot("Yard"));
        var way = Place().AddRoute("Path").From(gate, 0).From(verge, 5);
        var held = way.Parking[1];

        way.ServedBy([(verge, 6), (yard, null)]);

        Assert.Equal([("Verge", 1, 6.0), ("Yard", 2, null)], way.Parking.Select(served => (served.ParkingArea.Name, served.Order, served.WalkMinutes)));
        Assert.Same(held, way.Parking[0]);
        Assert.Throws<NotAcceptedException>(() => way.ServedBy([(yard, 1), (yard, 2)]));
    }

    [Fact]
    public void A_stance_has_ways_of_its_own_in_the_order_they_were_named()
    {
        var place = Place();
        var (bar, boat) = (place.AddRoute("Bar"), place.AddRoute("Boat"));
        var stance = new VantagePoint("top", "Top", VantageKind.OpenGround, Here, Footing.Steady, "Turf.");
        Assert.Empty(stance.Ways);

        stance.By(boat, endMinutes: 6).By(bar, endMinutes: 4, walkInMinutes: 18, walkOutMinutes: 17);

        Assert.Equal([(boat, 1, 6.0, null, null), (bar, 2, 4.0, 18.0, 17.0)], stance.Ways.Select(way => (way.Route, way.Order, way.EndMinutes, way.WalkInMinutes, way.WalkOutMinutes)));
        Assert.Throws<NotAcceptedException>(() => stance.By(bar));

        stance.LedToBy([(bar, null, 20, null)]);
        Assert.Equal([(bar, 1, null, 20.0, null)], stance.Ways.Select(way => (way.Route, way.Order, way.EndMinutes, way.WalkInMinutes, way.WalkOutMinutes)));
    }

    [Fact]
    public void Whether_the_tide_cuts_a_leg_off_is_unknown_until_somebody_answers()
    {
        var leg = Leg.Named(LegKind.Drive, "Causeway", LegalStatus.RightOfWay, Sign);
        var crossing = new Crossing(new TideHeight(2.1, "noaa/8410140"), isBeach: false, null);
        Assert.Equal((TidalCut.Unknown, LegGround.Unknown, LightAtNight.Unknown), (leg.TidalCut, leg.Ground, leg.LightAtNight));

        Assert.Equal((TidalCut.Crossing, crossing), (leg.PassableWhile(crossing).TidalCut, leg.Crossing));
        Assert.Equal((TidalCut.Never, null), (leg.NeverCutOff().TidalCut, leg.Crossing));
        Assert.Equal((TidalCut.Unknown, null), (leg.PassableWhile(crossing).CutOffUnknown().TidalCut, leg.Crossing));
    }

    private static Location Place() => new("here", "Here", Here, "America/New_York", "US", "US-ME", 1);

    private static ParkingArea Lot(string name) => new(name, Here, "Gravel", Sign);
}
