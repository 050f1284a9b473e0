using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>Which bodies are asked for, and whether a moon by day counts.</summary>
public sealed record WantedBodies(bool Sun, bool Moon, bool DaytimeMoon)
{
    public static WantedBodies Usual { get; } = new(true, true, true);

    public IEnumerable<SkyBody> Bodies => Enum.GetValues<SkyBody>().Where(body => body == SkyBody.Sun ? Sun : Moon);

    public bool Counts(Alignment one) => DaytimeMoon || !one.IsDaytimeMoon;

    /// <summary>"neither passes", "the sun doesn't pass": what was looked for and not found.</summary>
    public string NoneWords => Sun && Moon ? "Neither passes" : Sun ? "The sun does not pass" : "The moon does not pass";
}

/// <summary>Which local dates, how near and which bodies.</summary>
public sealed record BehindAsk(LocalDate From, LocalDate To, double ToleranceDegrees, WantedBodies Bodies)
{
    /// <summary>Whole years from today with the usual tolerance: what pages ask for unless somebody chooses otherwise.</summary>
    public bool IsUsual(LocalDate today) => From == today && ToleranceDegrees == SubjectAlignments.UsualToleranceDegrees
        && Enumerable.Range(1, SubjectAlignments.MostYears).Any(years => To == today.PlusYears(years));
}

/// <summary>When sun and moon stand behind a picture's subject over some local dates; or why that can't be told.</summary>
public sealed record SubjectAlignments(SubjectSeen? Seen, string? Why, IReadOnlyList<Alignment> Found)
{
    /// <summary>A disc's width: common practice, no source.</summary>
    public const double UsualToleranceDegrees = 0.5;

    public const int MostYears = 5;

    public static SubjectAlignments None { get; } = new(null, null, []);

    /// <summary>Moons near full that come up at dusk or go down at dawn over the own skyline, whatever stands before them; none where no moon is asked for.</summary>
    public IReadOnlyList<FullMoonAtTwilight> FullMoons { get; init; } = [];

    /// <summary>Those of them that stand within the picture's width.</summary>
    public IReadOnlyList<FullMoonAtTwilight> FullMoonsIn(Frame frame) =>
        [.. FullMoons.Where(one => Bearing.FromDegrees(one.AzimuthDegrees).AngleTo(frame.Facing) <= frame.Lens.HorizontalAngleDegrees / 2)];

    /// <summary>Those of some bodies, as if only they had been looked for.</summary>
    public SubjectAlignments Only(WantedBodies bodies) => this with
    {
        Found = [.. Found.Where(one => bodies.Bodies.Contains(one.Body) && bodies.Counts(one))],
        FullMoons = bodies.Moon ? FullMoons : [],
    };

    public static SubjectAlignments Of(Location place, VantagePoint stance, Composition picture, LocalDate from, LocalDate to, double toleranceDegrees, SkyEphemeris? shared = null, WantedBodies? wanted = null)
    {
        var bodies = wanted ?? WantedBodies.Usual;
        var (start, end) = (place.Zone.AtStartOfDay(from).ToInstant(), place.Zone.AtStartOfDay(to.PlusDays(1)).ToInstant());
        // Twilights about the first and last dates reach beyond them.
        var (before, after) = (start - Duration.FromDays(2), end + Duration.FromDays(2));
        var sky = shared is { } table && table.From <= before && after <= table.To ? table : SkyEphemeris.Covering(before, after);
        var observer = picture.ToScene(stance, place).Observer;
        var fullMoons = bodies.Moon ? Almanac.Light.FullMoons.Between(from, to, observer, place.Zone, sky) : [];
        if (picture.Subject is not { } subject)
            return new(null, "No subject is recorded: a lighthouse, a stack, a tree with its position and height.", []) { FullMoons = fullMoons };
        var seen = subject.SeenFrom(stance, place.MeanSeaLevelAboveChartDatumMetres);
        if (seen is not { FootAltitudeDegrees: { } foot, TopAltitudeDegrees: { } top })
            return new(seen, "The height of the ground here above the sea is not recorded, so nobody knows how high the subject stands in the sky.", []) { FullMoons = fullMoons };

        var line = new Upright(seen.Bearing, foot, top);
        return new(seen, null,
        [
            .. bodies.Bodies.SelectMany(body => Almanac.Light.Alignments.Between(body, observer, line, toleranceDegrees, start, end, sky)).Where(bodies.Counts).OrderBy(one => one.Time),
        ])
        { FullMoons = fullMoons };
    }
}
