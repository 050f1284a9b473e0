using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Guide.Outlooks;

/// <summary>How light is printed: from solid night to bare day.</summary>
public enum LightInk { Night, Astronomical, Nautical, Civil, LowSun, Day }

/// <summary>A stretch of one kind of light; shares of the strip from its left end.</summary>
public sealed record LightBand(LightInk Ink, double From, double To);

/// <summary>A short ray of the low sun, slanted at the sun's altitude: rising light leans up to the right, sinking light down.</summary>
public sealed record LightRay(double At, double AltitudeDegrees, bool Rising);

/// <summary>Sunrise or sunset over the place's own skyline.</summary>
public sealed record LightTick(double At, bool Rises, Instant Time);

/// <summary>A window that suits, cut to the strip.</summary>
public sealed record LightBracket(double From, double To, Interval Window);

/// <summary>The light of a session strip: time runs across, everything is a share of the strip's width.</summary>
public sealed record LightDrawing(
    Interval Span,
    IReadOnlyList<LightBand> Bands,
    IReadOnlyList<LightRay> Rays,
    IReadOnlyList<LightTick> Ticks,
    IReadOnlyList<LightBracket> Windows,
    IReadOnlyList<(double At, LocalTime Clock)> Clock)
{
    /// <summary>Where the low sun ends and the day begins: the end of the dawn session.</summary>
    public const double LowSunEndsDegrees = 10;

    private const double RayApart = 0.021;
    private const int MostFigures = 6;

    private static readonly int[] FigureSteps = [10, 15, 20, 30, 60, 120, 180, 240, 360]; // minutes

    // Twilights end at −6, −12 and −18 degrees (Explanatory Supplement to the Astronomical Almanac, section 9.33).
    private static readonly (double Altitude, LightInk Below)[] Edges =
        [(-18, LightInk.Night), (-12, LightInk.Astronomical), (-6, LightInk.Nautical), (SunDisc.StandardAltitudeDegrees, LightInk.Civil), (LowSunEndsDegrees, LightInk.LowSun)];

    /// <param name="span">What the strip shows.</param>
    /// <param name="observer">Who stands there, with skyline and eye height.</param>
    /// <param name="windows">Windows that suit; parts outside the strip are cut off.</param>
    /// <param name="zone">The place's zone.</param>
    /// <param name="sun">Covers the strip and two days on either side.</param>
    public static LightDrawing Of(Interval span, Observer observer, IEnumerable<Interval> windows, DateTimeZone zone, SunEphemeris sun)
    {
        if (span.Duration <= Duration.Zero) throw new ArgumentOutOfRangeException(nameof(span), span, "A strip shows some time.");
        var bands = BandsOf();
        return new(span, bands, [.. bands.Where(b => b.Ink == LightInk.LowSun).SelectMany(Rays)], [.. Ticks()],
            [.. windows.Where(w => w.Start < span.End && w.End > span.Start)
                .Select(w => new LightBracket(Math.Max(0, Share(w.Start)), Math.Min(1, Share(w.End)), w))],
            [.. Figures()]);

        double Share(Instant time) => (time - span.Start) / span.Duration;

        double Altitude(double share) => sun.At(span.Start + span.Duration * share, observer.Position).AltitudeDegrees;

        List<LightBand> BandsOf()
        {
            var cuts = Edges.SelectMany(e => SunCrossings.OfAltitude(e.Altitude, observer.Position, span, sun)).Select(c => Share(c.Time))
                .Where(at => at is > 0 and < 1).Append(0).Append(1).Order().ToList();
            var found = new List<LightBand>();
            for (var i = 1; i < cuts.Count; i++)
            {
                if (cuts[i] - cuts[i - 1] < 1e-9) continue;
                var middle = Altitude((cuts[i - 1] + cuts[i]) / 2);
                var ink = Edges.Where(e => middle < e.Altitude).Select(e => e.Below).DefaultIfEmpty(LightInk.Day).First();
                if (found.Count > 0 && found[^1].Ink == ink) found[^1] = found[^1] with { To = cuts[i] };
                else found.Add(new(ink, cuts[i - 1], cuts[i]));
            }
            return found;
        }

        IEnumerable<LightRay> Rays(LightBand band)
        {
            for (var at = band.From + RayApart / 3; at < band.To - RayApart * 0.8; at += RayApart)
                yield return new(at, Altitude(at), Altitude(Math.Min(1, at + 0.01)) >= Altitude(Math.Max(0, at - 0.01)));
        }

        IEnumerable<LightTick> Ticks()
        {
            var last = span.End.InZone(zone).Date.PlusDays(1);
            for (var date = span.Start.InZone(zone).Date.PlusDays(-1); date <= last; date = date.PlusDays(1))
            {
                var day = SunDays.On(date, observer, zone, sun);
                if (day.Rise is { } rise && Share(rise) is >= 0 and <= 1) yield return new(Share(rise), true, rise);
                if (day.Set is { } set && Share(set) is >= 0 and <= 1) yield return new(Share(set), false, set);
            }
        }

        IEnumerable<(double, LocalTime)> Figures()
        {
            var step = FigureSteps.First(m => m == FigureSteps[^1] || span.Duration.TotalMinutes / m <= MostFigures);
            // Whole minutes of the place's clock, and of those every so many: right over a clock change too.
            var time = span.Start - Duration.FromNanoseconds(span.Start.InZone(zone).NanosecondOfDay % NodaConstants.NanosecondsPerMinute);
            for (; time <= span.End; time += Duration.FromMinutes(1))
            {
                var clock = time.InZone(zone).TimeOfDay;
                if (time >= span.Start && (clock.Hour * 60 + clock.Minute) % step == 0) yield return (Share(time), clock);
            }
        }
    }
}
