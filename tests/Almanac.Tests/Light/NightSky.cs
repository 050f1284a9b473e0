using System.Collections.Concurrent;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Moon;
using Foreshore.Almanac.Stars;
using Foreshore.Almanac.Sun;
using Foreshore.Almanac.Time;
using NodaTime;

namespace Foreshore.Almanac.Light;

/// <summary>
/// Moon and galaxy as the light table asks for them, by the plain forms: the moon's phase by its right ascension, the
/// galaxy's place by its apparent right ascension, its band by a lattice of points in the picture.
/// </summary>
internal sealed class NightSky
{
    private const double Radian = Math.PI / 180;
    private static readonly ConcurrentDictionary<Instant, Shared> Known = new();
    private static readonly ConcurrentDictionary<Camera.Frame, Direction[]> Lattices = new();

    private readonly Scene scene;
    private readonly Shared shared;
    private readonly Horizontal moon;
    private readonly double seen, edge;

    private NightSky(Instant time, Scene scene, MoonEphemeris ephemeris)
    {
        this.scene = scene;
        shared = Known.GetOrAdd(time, Shared.At);
        moon = ephemeris.At(time, scene.Observer.Position);
        seen = Refraction.Apparent(moon.AltitudeDegrees);
        edge = EdgeBelow(moon);
    }

    internal double Lit => shared.Phase.IlluminatedFraction;

    internal double MoonAltitude => moon.AltitudeDegrees;

    internal bool MoonInFrame => scene.Frame.Contains(moon.AzimuthDegrees, seen);

    internal double MoonOver => seen - edge;

    internal bool IsMoonSeen => Refraction.Apparent(moon.AltitudeDegrees + Semidiameter) > edge;

    internal bool IsDark => shared.Phase.RelativeBrightness <= 0.05 || moon.AltitudeDegrees <= -34.0 / 60 - Semidiameter;

    internal bool IsCoreThere
    {
        get
        {
            var core = Seen(shared.Centre);
            var direction = Bearing.FromDegrees(core.AzimuthDegrees);
            var least = scene.IsCoreLowOverSea && scene.Observer.Skyline.KindAt(direction) == SkylineKind.Sea ? 5 : 10;
            return core.AltitudeDegrees >= least && direction.AngleTo(scene.Frame.Facing) <= scene.Frame.Lens.HorizontalAngleDegrees / 2
                && Refraction.Apparent(core.AltitudeDegrees) >= EdgeBelow(core);
        }
    }

    internal bool IsBandThere
    {
        get
        {
            // The sine of a point's galactic latitude is the cosine of its distance from the pole.
            var pole = Seen(shared.Pole);
            var towards = Direction.Of(pole.AzimuthDegrees, pole.AltitudeDegrees);
            var (lowest, highest) = (1.0, -1.0);
            foreach (var point in Lattices.GetOrAdd(scene.Frame, frame => [.. Lattice(frame)]))
            {
                var sine = point.East * towards.East + point.North * towards.North + point.Up * towards.Up;
                (lowest, highest) = (Math.Min(lowest, sine), Math.Max(highest, sine));
            }

            // The lattice is all of one piece: between its least and greatest latitude every other one occurs.
            return lowest <= Math.Sin(5 * Radian) && highest >= -Math.Sin(5 * Radian);
        }
    }

    private double Semidiameter => 0.2725076 * Math.Asin(6378.137 / shared.DistanceKm) / Radian * (1 + Math.Sin(moon.AltitudeDegrees * Radian) * 6378.137 / shared.DistanceKm);

    internal static NightSky At(Instant time, Scene scene, MoonEphemeris ephemeris) => new(time, scene, ephemeris);

    private static IEnumerable<Direction> Lattice(Camera.Frame frame)
    {
        var (wide, high) = (Math.Tan(frame.Lens.HorizontalAngleDegrees / 2 * Radian), Math.Tan(frame.Lens.VerticalAngleDegrees / 2 * Radian));
        // On the picture the level horizon is a level line.
        var horizon = Math.Clamp(-Math.Tan(frame.TiltDegrees * Radian), -high, high);
        for (var i = 0; i <= 20; i++)
            for (var j = 0; j <= 21; j++)
            {
                var x = wide * (i - 10) / 10;
                var y = j == 21 ? horizon : high * (j - 10) / 10;
                var turn = Math.Atan2(x, Math.Cos(frame.TiltDegrees * Radian) - y * Math.Sin(frame.TiltDegrees * Radian));
                var up = Math.Asin((Math.Sin(frame.TiltDegrees * Radian) + y * Math.Cos(frame.TiltDegrees * Radian)) / Math.Sqrt(1 + x * x + y * y));
                if (up >= -1e-9) yield return Direction.Of(frame.Facing.Degrees + turn / Radian, up / Radian);
            }
    }

    private double EdgeBelow(Horizontal body) =>
        scene.Observer.Skyline.AltitudeDegreesAt(Bearing.FromDegrees(body.AzimuthDegrees), scene.Observer.DipDegrees);

    private Horizontal Seen(Equatorial star)
    {
        var (latitude, hour) = (scene.Observer.Position.LatitudeDegrees * Radian, (shared.Sidereal + scene.Observer.Position.LongitudeDegrees - star.RightAscensionDegrees) * Radian);
        var declination = star.DeclinationDegrees * Radian;
        var altitude = Math.Asin(Math.Sin(latitude) * Math.Sin(declination) + Math.Cos(latitude) * Math.Cos(declination) * Math.Cos(hour));
        var fromSouth = Math.Atan2(Math.Sin(hour) * Math.Cos(declination), Math.Cos(hour) * Math.Sin(latitude) * Math.Cos(declination) - Math.Sin(declination) * Math.Cos(latitude));
        return new Horizontal(Bearing.FromDegrees(fromSouth / Radian + 180).Degrees, altitude / Radian);
    }

    private sealed record Shared(MoonPhase Phase, double DistanceKm, Equatorial Centre, Equatorial Pole, double Sidereal)
    {
        internal static Shared At(Instant time)
        {
            var centuries = JulianDay.TerrestrialCenturies(time);
            var moon = MoonPosition.At(time);
            return new Shared(
                MoonPhases.Of(SunPosition.At(JulianDay.DaysFromJ2000(time), DeltaT.Seconds(time)), moon), moon.DistanceKm,
                ApparentPlace.Of(Galactic.Centre, centuries), ApparentPlace.Of(Galactic.NorthPole, centuries), moon.SiderealDegrees);
        }
    }
}
