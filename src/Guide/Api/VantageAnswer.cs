using Foreshore.Almanac.Camera;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Api;

/// <summary>Where a tripod has stood; not a place where one can stand now.</summary>
/// <param name="Slug">Its name in addresses.</param>
/// <param name="Name">Its name.</param>
/// <param name="Page">Address of its page.</param>
/// <param name="Position">Where.</param>
/// <param name="ClosedToday">A closure stops one from going there today.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Summary">In a sentence or two.</param>
/// <param name="Reach">How far the water comes; unknown counts as waves.</param>
/// <param name="Footing">Who finds a footing there.</param>
/// <param name="GroundMetresAboveChartDatum">The lower end of the measurement, by which limits are judged; null: unknown.</param>
/// <param name="HighestUsableTide">Null: not recorded.</param>
/// <param name="PathCutOff">Tide height that cuts the way back; null: not recorded, unless it is never cut off.</param>
/// <param name="IsNeverCutOff">Somebody recorded that the way back is never cut off.</param>
/// <param name="HighestSeaMetres">Significant wave height; null: not recorded.</param>
/// <param name="LongestPeriodSeconds">Peak period at which that was seen to hold.</param>
/// <param name="WalkInMinutes">In daylight.</param>
/// <param name="WalkOutMinutes">In daylight.</param>
/// <param name="MinutesToBeyondReach">From the stance to beyond the last place the water can reach.</param>
/// <param name="WalkedInTheDark">A member has walked the way in the dark.</param>
/// <param name="Ways">Its own ways in order; empty: all of the place's lead there, in the place's order.</param>
/// <param name="Edge">How near an edge is.</param>
/// <param name="Compositions">What is photographed from there.</param>
internal sealed record VantageAnswer(string Slug, string Name, string Page, PlaceAt Position, bool ClosedToday, VantageKind Kind, string Summary,
    Reach Reach, Footing Footing, double? GroundMetresAboveChartDatum, TideHeightAnswer? HighestUsableTide, TideHeightAnswer? PathCutOff, bool IsNeverCutOff,
    double? HighestSeaMetres, double? LongestPeriodSeconds, double? WalkInMinutes, double? WalkOutMinutes, double? MinutesToBeyondReach, bool WalkedInTheDark,
    IReadOnlyList<StanceWayAnswer> Ways, EdgeDistance Edge, IReadOnlyList<CompositionAnswer> Compositions)
{
    public static VantageAnswer Of(VantagePoint point, Location place, LocalDate today) => new(point.Slug, point.Name, point.Address(place), PlaceAt.Of(point.Position),
        place.ClosuresThatStop(point, today).Count > 0, point.Kind, point.Summary, point.Reach, point.Footing,
        point.Ground is { } ground ? Math.Round(ground.LowerEndMetres, 2) : null,
        TideHeightAnswer.Of(point.HighestUsableTide, place), TideHeightAnswer.Of(point.PathCutOff, place), point.IsNeverCutOff, point.Sea?.HighestWaveMetres, point.Sea?.LongestPeriodSeconds,
        point.WalkInMinutes, point.WalkOutMinutes, point.MinutesToBeyondReach, point.WalkedInTheDark,
        [.. point.Ways.OrderBy(way => way.Order).Select(way => new StanceWayAnswer(way.Route.Name, way.EndMinutes, way.WalkInMinutes, way.WalkOutMinutes))], point.Edge,
        [.. point.Compositions.Select(c => CompositionAnswer.Of(c, point, place))]);
}

/// <summary>A composition.</summary>
/// <param name="Slug">Its name in addresses.</param>
/// <param name="Name">Its name.</param>
/// <param name="Page">Address of its page.</param>
/// <param name="Season">Address of its season table in this API.</param>
/// <param name="Summary">In a sentence or two.</param>
/// <param name="FacingDegrees">Clockwise from true north.</param>
/// <param name="Compass">How the facing was read from a compass; null: it was not.</param>
/// <param name="TiltDegrees">Above the level.</param>
/// <param name="FocalLengthMm">As used.</param>
/// <param name="SensorWidthMm">Of the sensor's long side.</param>
/// <param name="SensorHeightMm">Of its short side.</param>
/// <param name="Orientation">Of the camera.</param>
/// <param name="AngleOfViewDegrees">Across the picture.</param>
/// <param name="Wanted">Any of these lights suits.</param>
internal sealed record CompositionAnswer(string Slug, string Name, string Page, string Season, string Summary, double FacingDegrees, CompassAnswer? Compass, double TiltDegrees,
    double FocalLengthMm, double SensorWidthMm, double SensorHeightMm, Orientation Orientation, double AngleOfViewDegrees, IReadOnlyList<WantedLight> Wanted)
{
    public static CompositionAnswer Of(Composition picture, VantagePoint point, Location place) => new(picture.Slug, picture.Name, picture.Address(place, point),
        $"{ReadApi.Root}/compositions/{place.Slug}/{point.Slug}/{picture.Slug}/season", picture.Summary, Math.Round(picture.FacingDegrees, 3), CompassAnswer.Of(picture.Compass), picture.TiltDegrees,
        picture.FocalLengthMm, picture.SensorWidthMm, picture.SensorHeightMm, picture.Orientation, Math.Round(picture.Lens.HorizontalAngleDegrees, 2), picture.Wanted);
}

/// <summary>A facing as it was read from a compass.</summary>
/// <param name="ReadingDegrees">As the compass showed it.</param>
/// <param name="DeclinationDegrees">Added to it, east positive.</param>
/// <param name="TrueDegrees">Reading plus declination, 0 to just under 360.</param>
/// <param name="ReadOn">The day.</param>
/// <param name="Model">The magnetic model that gave the declination; null: somebody entered it.</param>
internal sealed record CompassAnswer(double ReadingDegrees, double DeclinationDegrees, double TrueDegrees, DateOnly ReadOn, string? Model)
{
    public static CompassAnswer? Of(CompassReading? reading) => reading is null ? null
        : new(reading.ReadingDegrees, reading.DeclinationDegrees, Math.Round(reading.TrueDegrees, 3), reading.ReadOn.Iso(), reading.Model);
}
