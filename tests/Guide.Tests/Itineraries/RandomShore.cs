using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Tides;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Tides;
using NodaTime;

namespace Foreshore.Guide.Itineraries;

/// <summary>An invented place made by a seed: several ways, gates, boats, floods, crossings on both sides, dark ways, any party.</summary>
internal sealed class RandomShore
{
    private const string Station = "club/made";
    private static readonly FactCheck Sign = new("Sign", new LocalDate(2026, 11, 1));
    private static readonly double[] Latitudes = [31, 38.5, 44.6, 50, 56.5];
    private readonly Random random;
    private readonly bool gates;
    private IReadOnlyList<TideExtreme> waters = [];

    private RandomShore(int seed, bool gatesBeforeBoats)
    {
        (random, gates) = (new Random(seed), gatesBeforeBoats);
        Position = new Position(Pick(Latitudes), -67.2);
        Date = new LocalDate(2027, 1, 4).PlusDays(random.Next(24) * 15);
        if (Date is { Month: 3, Day: > 8 and < 20 } or { Month: 11, Day: < 12 }) Date = Date.PlusDays(20);
        Place = new Location("made", "Made", Position, "America/New_York", "US", null, 1).JudgeTideBy(Station, null);
        if (Chance(0.2)) Place.OpenBy(Hours(withPermit: true));
        if (Chance(0.5)) Place.AddPermission(new PermissionLetter("Owner", "Club", Date.PlusDays(-100), Chance(0.5) ? null : Date.PlusDays(random.Next(-2, 5))));
        Stance = MakeStance();
        var routes = 1 + random.Next(3);
        for (var i = 0; i < routes; i++) MakeRoute(i);
        var own = Chance(0.5) ? Place.Routes.Where(_ => Chance(0.8)).OrderBy(_ => random.Next()).ToList() : [];
        foreach (var route in own)
        {
            var end = random.Next(8);
            var whole = OnFoot(route) + end;
            Stance.By(route, end, Chance(0.4) ? whole + random.Next(-1, 4) : null, Chance(0.4) ? whole + random.Next(-1, 4) : null);
        }

        var first = OnFoot(own.Count > 0 ? own[0] : Place.Routes[0]) + random.Next(6);
        Stance.Walk(first, first + random.Next(4), Chance(0.6), Chance(0.8) ? random.Next(0, 12) : null);

        Group = new Group(1 + random.Next(6), Chance(0.3) ? 1 + random.Next(6) * 0.1 : 1, Chance(0.2), Chance(0.2), Chance(0.3));
        if (Chance(0.4)) Group = new Group();
        Water = Tide();
        Stance.Compose(new Composition("out", "Out", "Looking out.", 90, new Almanac.Camera.Lens(35, new Almanac.Camera.Sensor(36, 24), Almanac.Camera.Orientation.Landscape), Almanac.Light.WantedLight.AnyDaylight, Almanac.Light.WantedLight.BlueLight));
    }

    public Position Position { get; }

    public LocalDate Date { get; }

    public Location Place { get; }

    public VantagePoint Stance { get; }

    public Group Group { get; }

    public PlaceWater Water { get; private set; }

    /// <summary>The same with the water so much higher.</summary>
    public void Raise(double metres) => Water = Made([.. waters.Select(water => water with { Metres = water.Metres + metres })]);

    /// <param name="gatesBeforeBoats">Car parks that are locked or flood, and paths with gates or crossings, on the home side of a boat too.</param>
    public static RandomShore Of(int seed, bool gatesBeforeBoats = false) => new(seed, gatesBeforeBoats);

    private bool Chance(double share) => random.NextDouble() < share;

    private T Pick<T>(params T[] from) => from[random.Next(from.Length)];

    private static double OnFoot(AccessRoute route) => route.Parking[0].WalkMinutes!.Value + route.Legs.Where(leg => leg.Kind == LegKind.Walk).Sum(leg => leg.Minutes!.Value);

    private VantagePoint MakeStance()
    {
        var reach = Pick(Reach.None, Reach.StillWaterOnly, Reach.Waves);
        var stance = Place.AddVantagePoint(new VantagePoint("green", "Green", VantageKind.OpenGround, Position, Footing.Anyone, "Grass.")
            .CheckedAs(Sign).Reached(reach, reach == Reach.Waves ? null : "Behind the dune"));
        if (Chance(0.35)) stance.CutOffAbove(Height(1.5, 4.5));
        else stance.NeverCutOff();
        if (reach != Reach.None)
        {
            var limit = Height(1.2, 5.5);
            stance.UsableBelow(limit);
            if (Chance(0.7)) stance.Measure(new GroundHeight(limit.Metres + random.NextDouble() * 2 - 0.5, 0.3, HeightMethod.Levelling, Station, Date.PlusDays(-90)));
        }

        if (reach == Reach.Waves && Chance(0.9))
        {
            var watch = new NearbyPlace("The bank", Position, random.Next(1, 9));
            stance.WatchFrom(Chance(0.2) ? watch.SeenFromMinusNine("Lamps on the pier") : watch);
        }

        return stance;
    }

    private void MakeRoute(int number)
    {
        var route = Place.AddRoute($"Way {number}");
        route.Then(Leg.Drive("Road", 10, 20, "Narrow.", LegalStatus.RightOfWay, Sign).NeverCutOff().ByNight(LightAtNight.KnownInTheDark));
        var isByBoat = Chance(0.25);
        if (isByBoat) route.Then(Path("To the wharf", isHomeSide: true)).Then(Boat());
        var legs = 1 + random.Next(2);
        for (var i = 0; i < legs; i++) route.Then(Path($"Path {i}"));
        var lots = 1 + random.Next(2);
        for (var i = 0; i < lots; i++)
        {
            var lot = Place.AddParking(new ParkingArea($"Lot {number}.{i}", Position, "Gravel", Sign));
            if (Chance(0.4) && (gates || !isByBoat)) lot.OpenBy(Hours(withPermit: false));
            if (Chance(0.25) && (gates || !isByBoat)) lot.FloodAbove(Height(2.5, 6));
            route.From(lot, random.Next(0, 6));
        }
    }

    private Leg Path(string name, bool isHomeSide = false)
    {
        var path = Leg.Walk(name, 1, random.Next(2, 25), 0, "Earth", Chance(0.88) ? LegalStatus.RightOfWay : Pick(LegalStatus.Private, LegalStatus.Unknown), Sign)
            .Over(Pick(LegGround.Firm, LegGround.Firm, LegGround.WetRock, LegGround.Weed, LegGround.SoftGround, LegGround.Boulders))
            .ByNight(Chance(0.8) ? Pick(LightAtNight.Lit, LightAtNight.KnownInTheDark) : LightAtNight.NotKnownInTheDark);
        if (isHomeSide && !gates) return path.NeverCutOff();
        if (Chance(0.2)) path.OpenBy(Hours(withPermit: false));
        if (!Chance(0.3)) return path.NeverCutOff();
        var crossing = new Crossing(Height(1.2, 4.5), Chance(0.5), !isHomeSide && Chance(0.6) ? random.Next(1, 15) : null);
        return path.PassableWhile(Chance(0.5) ? crossing.Sheltered("Behind the bar") : crossing);
    }

    private Leg Boat()
    {
        int first = random.Next(5, 9), last = random.Next(15, 22), every = Pick(20, 45, 90);
        var minutes = random.Next(5, 30);
        var facts = new FerryFacts(minutes, new LocalTime(first, 0), new LocalTime(last, 0), every, random.Next(0, 20));
        return Leg.ByFerry("Boat", facts.Sailing(SailingsNotation.Read($"first {first:00}:00 last {last - 1:00}:30 every {every}"), SailingsNotation.Read($"first {first:00}:40 last {last:00}:10 every {every}")),
            LegalStatus.RightOfWay, Sign).NeverCutOff();
    }

    private Almanac.Stays.OpeningHours Hours(bool withPermit) => HoursNotation.Read(random.Next(5) switch
    {
        0 => $"{random.Next(6, 10):00}:00-{random.Next(15, 23):00}:{Pick("00", "17", "30")}",
        1 => "sunrise-sunset" + (withPermit && Chance(0.5) ? " or by permit" : ""),
        2 => $"{random.Next(10, 60)} min before sunrise-{random.Next(10, 60)} min after sunset",
        3 => $"Mon-Fri {random.Next(6, 10):00}:30-{random.Next(15, 23):00}:00; open",
        _ => $"{random.Next(14, 18):00}:00-{random.Next(6, 10):00}:00",
    });

    private TideHeight Height(double least, double most) => new(Math.Round(least + random.NextDouble() * (most - least), 1), Station);

    private PlaceWater Tide()
    {
        var start = Date.PlusDays(-7).AtMidnight().InUtc().ToInstant() + Duration.FromMinutes(random.Next(745));
        var (spring, phase) = (random.NextDouble() * 0.9, random.NextDouble() * 6);
        waters = [.. Enumerable.Range(0, 80).Select(i => new TideExtreme(start + Duration.FromMinutes(372.6) * i, i % 2 == 0
            ? 1 - spring * Math.Cos(i / 9.0 + phase) : 4.4 + spring * Math.Cos(i / 9.0 + phase) + i % 4 * 0.1, i % 2 != 0))];
        return Made(waters);
    }

    private static PlaceWater Made(IReadOnlyList<TideExtreme> waters)
    {
        var table = new TableTide(waters);
        return new PlaceWater(Station, null, table.Between(table.Valid.Start, table.Valid.End), _ => null);
    }
}
