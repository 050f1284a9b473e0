using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Almanac.Light;

/// <summary>
/// The light table as it is defined: asked at even steps, by the plain forms of frame, bearing, skyline and air, with
/// nothing of the margins and marches that answer quickly.
/// </summary>
internal sealed class MinuteScan(Scene scene, SkyEphemeris ephemeris)
{
    /// <summary>Unbroken rows of steps at which a light holds, from the first to the last of each row, whatever their length.</summary>
    internal Dictionary<WantedLight, List<LightRun>> Rows(IReadOnlyList<WantedLight> lights, Instant from, Instant to, Duration step)
    {
        var rows = lights.ToDictionary(light => light, _ => new List<LightRun>());
        var held = new HashSet<WantedLight>();
        for (var time = from; time <= to; time += step)
        {
            var sky = SkyAt(time);
            foreach (var light in lights)
            {
                if (!Holds(light, sky))
                    held.Remove(light);
                else if (held.Add(light))
                    rows[light].Add(new LightRun(light, time, time));
                else
                    rows[light][^1] = rows[light][^1] with { End = time };
            }
        }

        return rows;
    }

    internal bool HoldsAt(WantedLight light, Instant time) => Holds(light, SkyAt(time));

    private Sky SkyAt(Instant time)
    {
        var sun = ephemeris.Sun.At(time, scene.Observer.Position);
        var seen = Refraction.Apparent(sun.AltitudeDegrees);
        var azimuth = Bearing.FromDegrees(sun.AzimuthDegrees);
        var edge = scene.Observer.Skyline.AltitudeDegreesAt(azimuth, scene.Observer.DipDegrees);
        return new Sky(
            sun.AltitudeDegrees,
            azimuth.AngleTo(scene.Frame.Facing),
            SunDisc.UpperLimbDegrees(sun.AltitudeDegrees, ephemeris.Sun.DistanceAuAt(time)) > edge,
            scene.Frame.Contains(sun.AzimuthDegrees, seen),
            scene.Observer.Skyline.KindAt(azimuth) == SkylineKind.Land && Math.Abs(seen - edge) <= 0.6,
            new Lazy<NightSky>(() => NightSky.At(time, scene, ephemeris.Moon)));
    }

    private static bool Holds(WantedLight light, Sky sky) => light switch
    {
        WantedLight.SunInFrame => sky is { IsVisible: true, InFrame: true, Altitude: <= 6 },
        WantedLight.SunburstOverSkyline => sky is { InFrame: true, NearLand: true },
        WantedLight.BackLight => sky is { IsVisible: true, InFrame: false, Rel: <= 60, Altitude: <= 20 },
        WantedLight.SideLight => sky is { IsVisible: true, Rel: >= 60 and <= 120, Altitude: <= 25 },
        WantedLight.FrontLight => sky is { IsVisible: true, Rel: >= 120, Altitude: <= 25 },
        WantedLight.GoldenLight => sky is { Altitude: >= -50.0 / 60 and <= 6 } and ({ Altitude: <= 0 } or { IsVisible: true }),
        WantedLight.TwilightGlow => sky is { Rel: <= 60, Altitude: >= -8 and <= 0 },
        WantedLight.AntiTwilightArch => sky is { Rel: >= 120, Altitude: >= -5 and <= -1 },
        WantedLight.BlueLight => sky is { Altitude: >= -8 and <= -4 },
        WantedLight.SoftLight or WantedLight.AnyDaylight => sky is { Altitude: > -4 },
        WantedLight.FullMoonBalanced => sky is { Altitude: >= -7 and <= 1, Night.Value: { Lit: >= 0.95, MoonInFrame: true, MoonOver: >= 0 and <= 6 } },
        WantedLight.ThinCrescent => sky is { Altitude: >= -12 and <= -4, Night.Value: { Lit: >= 0.02 and <= 0.15, MoonInFrame: true, IsMoonSeen: true } },
        WantedLight.MoonlitCoast => sky is { Altitude: <= -12, Night.Value: { Lit: >= 0.5, MoonInFrame: false, MoonAltitude: >= 10 and <= 45 } },
        WantedLight.GalaxyCore => sky is { Altitude: <= -18, Night.Value: { IsDark: true, IsCoreThere: true } },
        WantedLight.GalaxyBand => sky is { Altitude: <= -18, Night.Value: { IsDark: true, IsBandThere: true } },
        WantedLight.StarTrails => sky is { Altitude: <= -15, Night.Value.IsDark: true },
        _ => throw new ArgumentOutOfRangeException(nameof(light), light, "No definition."),
    };

    private readonly record struct Sky(double Altitude, double Rel, bool IsVisible, bool InFrame, bool NearLand, Lazy<NightSky> Night);
}
