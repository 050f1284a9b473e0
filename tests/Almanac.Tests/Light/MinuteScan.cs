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
    private readonly SunPath path = ephemeris.Sun.SeenFrom(scene.Observer.Position);

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

    private Sky SkyAt(Instant time) => new(time, path.At(time), scene, ephemeris);

    private static bool Holds(WantedLight light, Sky sky) => light switch
    {
        WantedLight.SunInFrame => sky is { Altitude: <= 6, IsVisible: true, InFrame: true },
        WantedLight.SunburstOverSkyline => sky is { NearLand: true, InFrame: true },
        WantedLight.BackLight => sky is { Altitude: <= 20, Rel: <= 60, IsVisible: true, InFrame: false },
        WantedLight.SideLight => sky is { Altitude: <= 25, Rel: >= 60 and <= 120, IsVisible: true },
        WantedLight.FrontLight => sky is { Altitude: <= 25, Rel: >= 120, IsVisible: true },
        WantedLight.GoldenLight => sky is { Altitude: >= -50.0 / 60 and <= 6 } and ({ Altitude: <= 0 } or { IsVisible: true }),
        WantedLight.TwilightGlow => sky is { Altitude: >= -8 and <= 0, Rel: <= 60 },
        WantedLight.AntiTwilightArch => sky is { Altitude: >= -5 and <= -1, Rel: >= 120 },
        WantedLight.BlueLight => sky is { Altitude: >= -8 and <= -4 },
        WantedLight.SoftLight or WantedLight.AnyDaylight => sky is { Altitude: > -4 },
        WantedLight.FullMoonBalanced => sky is { Altitude: >= -7 and <= 1, Night: { Lit: >= 0.95, MoonInFrame: true, MoonOver: >= 0 and <= 6 } },
        WantedLight.ThinCrescent => sky is { Altitude: >= -12 and <= -4, Night: { Lit: >= 0.02 and <= 0.15, MoonInFrame: true, IsMoonSeen: true } },
        WantedLight.MoonlitCoast => sky is { Altitude: <= -12, Night: { Lit: >= 0.5, MoonInFrame: false, MoonAltitude: >= 10 and <= 45 } },
        WantedLight.GalaxyCore => sky is { Altitude: <= -18, Night: { IsDark: true, IsCoreThere: true } },
        WantedLight.GalaxyBand => sky is { Altitude: <= -18, Night: { IsDark: true, IsBandThere: true } },
        WantedLight.StarTrails => sky is { Altitude: <= -15, Night.IsDark: true },
        _ => throw new ArgumentOutOfRangeException(nameof(light), light, "No definition."),
    };

    /// <summary>What the table asks of an instant, each worked out when it is asked for, once.</summary>
    private sealed class Sky(Instant time, Direction sun, Scene scene, SkyEphemeris ephemeris)
    {
        private double? seen, azimuth, edge;
        private bool? isVisible, inFrame;
        private NightSky? night;

        internal double Altitude { get; } = sun.AltitudeDegrees;

        internal double Rel => Bearing.FromDegrees(Azimuth).AngleTo(scene.Frame.Facing);

        internal bool IsVisible => isVisible ??= SunDisc.UpperLimbDegrees(Altitude, ephemeris.Sun.DistanceAuAt(time)) > Edge;

        internal bool InFrame => inFrame ??= scene.Frame.Contains(Azimuth, Seen);

        internal bool NearLand => Math.Abs(Seen - Edge) <= 0.6 && scene.Observer.Skyline.KindAt(Bearing.FromDegrees(Azimuth)) == SkylineKind.Land;

        internal NightSky Night => night ??= NightSky.At(time, scene, ephemeris.Moon);

        private double Azimuth => azimuth ??= sun.AzimuthDegrees;

        private double Seen => seen ??= Refraction.Apparent(Altitude);

        private double Edge => edge ??= scene.Observer.Skyline.AltitudeDegreesAt(Bearing.FromDegrees(Azimuth), scene.Observer.DipDegrees);
    }
}
