using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Earth;
using NodaTime;

namespace Foreshore.Almanac.Light;

/// <summary>Places, scenes and spans that the light's tests share.</summary>
internal static class Coast
{
    internal static readonly Position Eastport = new(44.9, -66.99);
    internal static readonly DateTimeZone NewYork = Zone("America/New_York");

    internal static SkyEphemeris Year2026 { get; } = SkyEphemeris.Covering(Instant.FromUtc(2025, 12, 20, 0, 0), Instant.FromUtc(2027, 6, 30, 0, 0));

    internal static DateTimeZone Zone(string id) => DateTimeZoneProviders.Tzdb[id];

    internal static Scene Scene(Position position, double facing, params WantedLight[] wanted) =>
        Scene(new Observer(position, null, Skyline.AssumedSea), facing, wanted);

    internal static Scene Scene(Observer observer, double facing, params WantedLight[] wanted) =>
        new(observer, new Frame(Bearing.FromDegrees(facing), 0, new Lens(24, Sensor.FullFrame, Orientation.Landscape)), wanted);

    /// <summary>A bay: an island ahead in the east, cliffs behind, sea and an unrecorded piece between.</summary>
    internal static Skyline Bay { get; } = new(
    [
        new SkylinePoint(0, 2, SkylineKind.Land), new SkylinePoint(40, 5, SkylineKind.Land), new SkylinePoint(60, 1, SkylineKind.Sea),
        new SkylinePoint(95, 0.5, SkylineKind.Land), new SkylinePoint(100, 4, SkylineKind.Land), new SkylinePoint(104, 9, SkylineKind.Land),
        new SkylinePoint(106, 3, SkylineKind.Land), new SkylinePoint(120, 0, SkylineKind.Sea), new SkylinePoint(200, 1, SkylineKind.Unknown),
        new SkylinePoint(230, 4, SkylineKind.Land), new SkylinePoint(300, 12, SkylineKind.Land), new SkylinePoint(330, 3, SkylineKind.Land),
    ]);
}
