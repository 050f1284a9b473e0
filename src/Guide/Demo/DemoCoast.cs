using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Stays;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Demo;

/// <summary>
/// Words the demo's pages of coast are written in. Positions are real, on the Downeast coast of Maine; names, people, access,
/// limits and hazards are invented. Dates count back from the day of loading, so that the demo never looks stale.
/// </summary>
internal sealed class DemoCoast(LocalDate today)
{
    /// <summary>Stations of the national tide service (public domain); mean sea level above chart datum (MLLW) from their published datums.</summary>
    public const string Eastport = "noaa/8410140";
    public const string Cutler = "noaa/8411060";
    public const string Milbridge = "noaa/8412581";
    public const double EastportMeanSea = 2.96;
    public const double CutlerMeanSea = 2.19;
    public const double MilbridgeMeanSea = 1.85;

    public LocalDate Today => today;

    public LocalDate DaysAgo(int days) => today.PlusDays(-days);

    /// <summary>By the model in its years; before and after them somebody read the declination off a chart.</summary>
    public CompassReading Compass(double reading, Almanac.Earth.Position at, int daysAgo) =>
        DaysAgo(daysAgo) is var on && Almanac.Earth.MagneticField.On(on, at) is null ? new CompassReading(reading, -16, on) : CompassReading.ByModel(reading, at, DaysAgo(daysAgo));

    public FactCheck Says(string who, int daysAgo, string? by = null, string? link = null) => new(who, DaysAgo(daysAgo), by, link);

    public static Position At(double latitude, double longitude) => new(latitude, longitude);

    public static Lens Full(double millimetres, Orientation orientation = Orientation.Landscape) => new(millimetres, Sensor.FullFrame, orientation);

    public static Location Place(int order, string slug, string name, double latitude, double longitude) =>
        new(slug, name, At(latitude, longitude), "America/New_York", "US", "US-ME", order);

    public static Skyline Drawn(string triplets) => SkylineNotation.Parse(triplets);

    public static TideHeight Above(double metres, string station, bool repeated = false) => new(metres, station, repeated);

    public static OpeningHours Hours(string text) => HoursNotation.Read(text);

    public static Timetable Sails(string text) => SailingsNotation.Read(text);

    /// <summary>Every way begins with a drive on public roads.</summary>
    public Leg Road(string name, double kilometres, double minutes, string notes) =>
        Leg.Drive(name, kilometres, minutes, $"From the club's room. {notes}", LegalStatus.RightOfWay, Says("Public road", 60, "Wes Pettibone"))
            .Allow(Consent.Yes, Consent.Yes, DogRule.Yes).NeverCutOff().Over(LegGround.Firm).ByNight(LightAtNight.KnownInTheDark);

    public OvernightRule Night(Sleeper sleeper, OvernightStanding standing, string who, int daysAgo, string? grantedBy = null, ParkingArea? area = null) =>
        new(sleeper, standing, Says(who, daysAgo, "Marguerite Doyle"), grantedBy, area);
}
