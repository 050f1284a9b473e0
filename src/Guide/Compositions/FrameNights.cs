using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Almanac.Moon;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>The galaxy's band over the picture at one moment: its two edges, cut where land hides them.</summary>
public sealed record FrameBand(Instant Time, IReadOnlyList<IReadOnlyList<(double X, double Y)>> Edges);

/// <summary>
/// Moon and galaxy over the picture tonight and in the night of the best date, as far as they can matter: the moon while it is
/// up from the beginning of dusk to the end of dawn, the galaxy while the sky is dark.
/// </summary>
public sealed record FrameNights(IReadOnlyList<FrameTrack> Tracks, FrameBand? Band)
{
    /// <summary>The light table's least moon: less is not seen beside the sun.</summary>
    private const double LeastLit = 0.02;

    private const double BandStep = 2;

    public static FrameNights None { get; } = new([], null);

    /// <param name="scene">Who looks where, and what is wanted.</param>
    /// <param name="today">The evening's date of tonight.</param>
    /// <param name="best">The best of the coming dates; null when there is none.</param>
    /// <param name="zone">The clock of the place.</param>
    /// <param name="sky">Covers both nights.</param>
    public static FrameNights Of(Scene scene, LocalDate today, GoodDate? best, DateTimeZone zone, SkyEphemeris sky)
    {
        var picture = new FramePicture(scene.Frame);
        List<(LocalDate Date, bool IsBest)> nights = [(today, false)];
        if (best is not null && Evening(best.Session) != today) nights.Add((Evening(best.Session), true));

        var tracks = new List<FrameTrack>();
        foreach (var (date, isBest) in nights)
        {
            if (Night(date) is not { } night) continue;
            var middle = night.Start + night.Duration / 2;
            var lit = MoonPhases.At(middle).IlluminatedFraction;
            if (lit >= LeastLit)
                Add(new FrameTracer(FrameBody.Moon, isBest, picture, scene.Observer, FrameTracer.MoonsRadius, time => sky.Moon.At(time, scene.Observer.Position)).Trace(date, middle, [night]) with { LitFraction = lit });
            Add(new FrameTracer(FrameBody.Core, isBest, picture, scene.Observer, 0, time => sky.Galaxy.CentreAt(time, scene.Observer.Position)).Trace(date, middle, DarkSky.Between(scene.Observer.Position, night.Start, night.End, sky)));
        }

        return new(tracks, scene.Wanted.Any(light => light is WantedLight.GalaxyBand or WantedLight.GalaxyCore) && best is not null
            && IsDark(Middle(best)) ? BandAt(Middle(best), picture, scene.Observer, sky) : null);

        bool IsDark(Instant time) => DarkSky.Between(scene.Observer.Position, time, time + Duration.FromMinutes(1), sky).Count > 0;

        // Dusk begins and dawn ends with the sun ten degrees up; where there is neither, the night itself may be.
        Interval? Night(LocalDate date)
        {
            var (evening, morning) = (Sessions.On(date, scene.Observer.Position, zone, sky.Sun), Sessions.On(date.PlusDays(1), scene.Observer.Position, zone, sky.Sun));
            var night = evening.Of(SessionKind.Night);
            var (start, end) = (evening.Of(SessionKind.Dusk)?.Start ?? night?.Start, morning.Of(SessionKind.Dawn)?.End ?? night?.End);
            return start < end ? new Interval(start, end) : null;
        }

        void Add(FrameTrack track)
        {
            if (track.Runs.Count > 0) tracks.Add(track);
        }
    }

    /// <summary>The evening whose night a session belongs to: a dawn ends the night before.</summary>
    private static LocalDate Evening(Session session) => session.Kind == SessionKind.Dawn ? session.Date.PlusDays(-1) : session.Date;

    private static Instant Middle(GoodDate date)
    {
        var longest = date.Windows.MaxBy(window => window.Duration);
        return longest.Start + longest.Duration / 2;
    }

    private static FrameBand? BandAt(Instant time, FramePicture picture, Observer observer, SkyEphemeris sky)
    {
        var edges = new List<IReadOnlyList<(double X, double Y)>>();
        foreach (var latitude in new[] { Almanac.Stars.Galactic.BandHalfWidthDegrees, -Almanac.Stars.Galactic.BandHalfWidthDegrees })
        {
            List<(double X, double Y)>? run = null;
            (double X, double Y)? last = null;
            for (double longitude = 0; longitude <= 360; longitude += BandStep)
            {
                var point = Point(longitude, latitude);
                if (point is { } now && last is { } before && (picture.Holds(now) || picture.Holds(before)))
                {
                    if (run is null) edges.Add(run = [before]);
                    run.Add(now);
                }
                else run = null;
                last = point;
            }
        }

        return edges.Count == 0 ? null : new(time, edges);

        (double X, double Y)? Point(double longitude, double latitude)
        {
            var at = sky.Galaxy.At(time, observer.Position, longitude, latitude);
            var altitude = Refraction.Apparent(at.AltitudeDegrees);
            return altitude < observer.Skyline.AltitudeDegreesAt(Bearing.FromDegrees(at.AzimuthDegrees), observer.DipDegrees) ? null : picture.At(at.AzimuthDegrees, altitude);
        }
    }
}
