using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Almanac.Stays;
using Foreshore.Almanac.Sun;
using Foreshore.Almanac.Tides;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Tides;
using NodaTime;

namespace Foreshore.Guide.Outlooks;

/// <summary>An invented place without any doubt about it: dry level ground, known in the dark, one right of way.</summary>
internal sealed class Shore
{
    public static readonly LocalDate Saturday = new(2026, 11, 28);
    private static readonly FactCheck Sign = new("Sign", new LocalDate(2026, 11, 1));

    public Shore(double latitude = 44.6, double longitude = -67.2, string zone = "America/New_York", bool darkWay = true,
        VantageKind kind = VantageKind.OpenGround, double? walkMinutes = 10, LocalDate? on = null)
    {
        Date = on ?? Saturday;
        Place = new Location("shore", "Shore", new Position(latitude, longitude), zone, "US", null, 1);
        Stance = Place.AddVantagePoint(new VantagePoint("green", "Green", kind, Place.Position, Footing.Anyone, "Grass.")
            .CheckedAs(Sign).Reached(Reach.None, "Behind the dune").NeverCutOff());
        if (walkMinutes is { } minutes)
            Stance.Walk(minutes, minutes, darkWay);
        Picture = Stance.Compose(new Composition("east", "East", "Looking out.", 90, new Lens(35, new Sensor(36, 24), Orientation.Landscape), WantedLight.AnyDaylight));
        Sky = SkyEphemeris.Covering(Midnight(Date.PlusDays(-4)), Midnight(Date.PlusDays(6)));
    }

    public LocalDate Date { get; }

    public Location Place { get; }

    public VantagePoint Stance { get; }

    public Composition Picture { get; private set; }

    public SkyEphemeris Sky { get; }

    public SunDay Day => DayOn(Date);

    public static Leg Path(double minutes = 10, LegalStatus status = LegalStatus.RightOfWay) => Leg.Walk("Path", 1, minutes, 0, "Earth", status, Sign);

    public static Leg Road(double minutes) => Leg.Drive("Island road", 10, minutes, "Narrow.", LegalStatus.RightOfWay, Sign);

    public static Leg Boat(int first, int last, double minutes = 20, int checkIn = 15) =>
        Leg.ByFerry("Boat", new FerryFacts(minutes, new LocalTime(first, 0), new LocalTime(last, 0), 60, checkIn).Sailing(Hourly(first, last), Hourly(first, last)), LegalStatus.RightOfWay, Sign);

    /// <summary>The same hours on every date.</summary>
    public static OpeningHours Daily(LocalTime opens, LocalTime shuts) => OpeningHours.Every(new DayHours.Clock(opens, shuts));

    public static ParkingArea Lot(string name, LocalTime? locked = null, LocalTime? unlocked = null)
    {
        var lot = new ParkingArea(name, new Position(44.6, -67.2), "Gravel", Sign);
        return locked is { } from && unlocked is { } until ? lot.OpenBy(Daily(until, from)) : lot;
    }

    /// <summary>A car park that serves every way, after those that do already, as near as they are.</summary>
    public ParkingArea Park(ParkingArea lot)
    {
        Place.AddParking(lot);
        foreach (var route in Place.Routes)
            route.From(lot, 0);
        return lot;
    }

    public Shore By(params Leg[] legs)
    {
        var route = Place.AddRoute($"Way {Place.Routes.Count + 1}");
        foreach (var leg in legs)
            route.Then(leg.TidalCut == TidalCut.Unknown ? leg.NeverCutOff() : leg);
        // The stance's own figures hold for its first way; of another its end is at the stance.
        Stance.By(route, endMinutes: Place.Routes.Count > 1 ? 0 : null);
        return this;
    }

    public Shore Want(params WantedLight[] wanted)
    {
        Picture.Want(wanted);
        return this;
    }

    public SunDay DayOn(LocalDate date) => SunDays.On(date, new Observer(Stance.Position, null, Stance.Skyline), Place.Zone, Sky.Sun);

    public Session Of(SessionKind kind) => Sessions.On(Date, Stance.Position, Place.Zone, Sky.Sun).Of(kind)!;

    /// <summary>What each way and car park leaves of a session.</summary>
    public IReadOnlyList<Stay> Stays(SessionKind kind)
    {
        var span = Of(kind);
        return
        [
            .. Ways(span).In(span).Open.SelectMany(way => StayTimes.Between(way.Plan, null, span.Start, span.End, Sky.Sun)),
        ];
    }

    public StanceFacts Facts(SessionKind kind = SessionKind.Day) =>
        Stance.FactsOn(Place, Of(kind).Dates(Place.Zone), Ways(Of(kind)).In(Of(kind))) with { NotKnown = Picture.NotKnownAt(Stance) };

    private StanceWays Ways(Session span) => new(Stance, Place, PlaceWater.None, span.Start, span.End, Sky.Sun);

    private static Timetable Hourly(int first, int last) =>
        new([new SailingRule(RuleDates.Every, new DaySailings.FirstLast(new LocalTime(first, 0), new LocalTime(last, 0), 60))]);

    /// <summary>The cell of the board on <see cref="Date"/>, asked long before.</summary>
    public BoardCell Cell(SessionKind kind, Instant? now = null) =>
        WeekendBoard.Of([Place], Date.PlusDays(-1), now ?? Midnight(Date.PlusDays(-3)), BoardFilter.Everything, null, Sky)
            .Rows[0].Cells.Single(cell => cell.Session.Date == Date && cell.Session.Kind == kind);

    /// <summary>The same over a tide of half cosines: low water 0.8 m at a time, high water 5.4 m 6.2 h from it.</summary>
    public BoardCell CellAtLow(SessionKind kind, Instant lowWater)
    {
        var table = new TableTide([.. Enumerable.Range(-24, 49).Select(i => new TideExtreme(lowWater + Duration.FromHours(6.2) * i, i % 2 == 0 ? 0.8 : 5.4, i % 2 != 0))]);
        var water = new PlaceWater(Place.TideStationId, null, table.Between(table.Valid.Start, table.Valid.End), _ => null);
        return WeekendBoard.Of([Place], Date.PlusDays(-1), Midnight(Date.PlusDays(-3)), BoardFilter.Everything, null, Sky, waterOf: _ => water)
            .Rows[0].Cells.Single(cell => cell.Session.Date == Date && cell.Session.Kind == kind);
    }

    public Instant At(int hour, int minute = 0, int daysOn = 0) =>
        Date.PlusDays(daysOn).At(new LocalTime(hour, minute)).InZoneLeniently(Place.Zone).ToInstant();

    private static Instant Midnight(LocalDate date) => date.AtMidnight().InUtc().ToInstant();
}
