using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>The stance that the drawings are tested with: a ledge on an east coast, looking out past a head of land.</summary>
internal static class Scenes
{
    public static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["America/New_York"];

    public static readonly SkyEphemeris Sky = SkyEphemeris.Covering(Instant.FromUtc(2026, 9, 1, 0, 0), Instant.FromUtc(2027, 12, 31, 0, 0));
    public static readonly SunEphemeris Sun = Sky.Sun;

    public static readonly Observer Ledge = new(new(44.652, -67.198), 8.6, new Skyline(
    [
        new(20, 3, SkylineKind.Land), new(60, 6, SkylineKind.Land), new(79, 1.2, SkylineKind.Land), new(84, 0.2, SkylineKind.Sea),
        new(172, 0.3, SkylineKind.Land), new(196, 6.5, SkylineKind.Land), new(210, 7, SkylineKind.Unknown), new(240, 0, SkylineKind.Land),
    ]));

    public static readonly Frame WideToSea = Looking(112, 24);

    public static readonly LocalDate Today = new(2026, 10, 3), Best = new(2027, 2, 14);

    public static Frame Looking(double facing, double focalMm, double tilt = 0, Orientation held = Orientation.Landscape) =>
        new(Bearing.FromDegrees(facing), tilt, new Lens(focalMm, Sensor.FullFrame, held));

    public static Observer At(double latitude, double longitude = 0) => new(new(latitude, longitude), 3, Skyline.AssumedSea);

    public static SunDay Day(LocalDate date) => SunDays.On(date, Ledge, Zone, Sun);
}
