using Foreshore.Almanac.Light;
using Foreshore.Almanac.Stays;
using Foreshore.Almanac.Sun;
using Foreshore.Guide.Shell;
using NodaTime;

namespace Foreshore.Guide.Access;

/// <summary>What every page says of a window: by which way, when to be there, when the light ends, when to turn back.</summary>
/// <param name="Window">The wanted light that can be used.</param>
/// <param name="LightEnds">When that light itself ends: another, softer time than turn back.</param>
/// <param name="Stay">The open period that holds it; null where none was reckoned.</param>
/// <param name="Itinerary">How it is reached and left; null where the walk is not known.</param>
public sealed record WindowPlan(Way Way, LightRun Window, Instant LightEnds, Stay? Stay, StayItinerary? Itinerary)
{
    public const string FirstVisit = "first visit: see it at low water by day before you come in the dark";

    private const double CivilDegrees = -6;

    /// <summary>Some of the walk in is dark: whoever has not been there comes by day first.</summary>
    public bool IsReachedInTheDark { get; private init; }

    /// <param name="light">The wanted light of the session, whether or not one can be there.</param>
    /// <param name="sun">Covers the window and a day either side.</param>
    public static WindowPlan Of(Way way, LightRun window, IReadOnlyList<LightRun> light, Stay? stay, Session session, SunEphemeris sun)
    {
        var told = way.TellsTurnBackIn(session.Span);
        var ends = light.Where(run => run.Light == window.Light && run.Start <= window.Start && run.End >= window.End).Select(run => run.End).DefaultIfEmpty(window.End).Max();
        var itinerary = told && stay is not null ? StayItinerary.Of(stay, new Interval(window.Start, window.End), sun) : null;
        return new(way, window, ends, told ? stay : null, itinerary)
        {
            IsReachedInTheDark = itinerary?.WalkIn is { } walk && new[] { walk.Start, walk.End }.Any(time => sun.At(time, way.Plan.Position).AltitudeDegrees < CivilDegrees),
        };
    }

    /// <summary>When to leave the stance; null where nothing calls one back, or it can't be told.</summary>
    public Instant? TurnBack => Stay?.TurnBackFrom(Window.End);

    /// <summary>When to have arrived, at the watch place where watching comes first; null where it can't be told.</summary>
    public Instant? ArriveBy => Itinerary?.ArriveBy;

    /// <summary>One leaves before the best of it.</summary>
    public bool LeavesBeforeLightEnds => TurnBack < LightEnds;

    /// <summary>In words: "by the bar, car at Bar Road; arrive by 16:20; light ends 17:52; turn back 17:40".</summary>
    public string Words(DateTimeZone zone) => string.Join("; ", new[]
    {
        Way.Name,
        ArriveBy is { } arrive ? $"{(Itinerary!.Watch is null ? "arrive by" : "at the watch place by")} {arrive.Clock(zone)}" : null,
        $"light ends {LightEnds.Clock(zone)}",
        TurnBack is { } back ? $"turn back {back.Clock(zone)}{(Way.IsAtTheLatest ? StayWords.AtTheLatest : "")}{(LeavesBeforeLightEnds ? ": you will leave before the best of it" : "")}" : null,
    }.OfType<string>());
}
