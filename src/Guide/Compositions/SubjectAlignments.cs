using Foreshore.Almanac.Light;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>When sun and moon stand behind a picture's subject over some local dates; or why that can't be told.</summary>
public sealed record SubjectAlignments(SubjectSeen? Seen, string? Why, IReadOnlyList<Alignment> Found)
{
    /// <summary>A disc's width: common practice, no source.</summary>
    public const double UsualToleranceDegrees = 0.5;

    public const int MostYears = 5;

    public static SubjectAlignments None { get; } = new(null, null, []);

    public static SubjectAlignments Of(Location place, VantagePoint stance, Composition picture, LocalDate from, LocalDate to, double toleranceDegrees, SkyEphemeris? shared = null)
    {
        if (picture.Subject is not { } subject)
            return new(null, "No subject is recorded: a lighthouse, a stack, a tree with its position and height.", []);
        var seen = subject.SeenFrom(stance, place.MeanSeaLevelAboveChartDatumMetres);
        if (seen is not { FootAltitudeDegrees: { } foot, TopAltitudeDegrees: { } top })
            return new(seen, "The height of the ground here above the sea is not recorded, so nobody knows how high the subject stands in the sky.", []);

        var (start, end) = (place.Zone.AtStartOfDay(from).ToInstant(), place.Zone.AtStartOfDay(to.PlusDays(1)).ToInstant());
        var sky = shared is { } table && table.From <= start && end <= table.To ? table : SkyEphemeris.Covering(start, end);
        var observer = picture.ToScene(stance, place).Observer;
        var line = new Upright(seen.Bearing, foot, top);
        return new(seen, null,
        [
            .. Enum.GetValues<SkyBody>().SelectMany(body => Almanac.Light.Alignments.Between(body, observer, line, toleranceDegrees, start, end, sky)).OrderBy(one => one.Time),
        ]);
    }
}
