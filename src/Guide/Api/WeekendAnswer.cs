using System.Text.Json.Serialization;
using Foreshore.Almanac.Light;
using Foreshore.Almanac.Stays;
using Foreshore.Guide.Outlooks;
using Foreshore.Guide.Tides;

namespace Foreshore.Guide.Api;

/// <summary>The weekend board: every composition judged for nine sessions, as far as light, tide and the way there can tell.</summary>
/// <param name="Notice">Present when the guide is a demo.</param>
/// <param name="Cautions">The usual cautions of the countries; read them before the rest.</param>
/// <param name="NotForNavigation">Stands in every answer.</param>
/// <param name="Sea">What is known of the sea.</param>
/// <param name="Tide">How far predicted heights and times of tide may be leant on.</param>
/// <param name="From">Local date of the first evening.</param>
/// <param name="SensitiveNotJudged">Places shown only roughly, and therefore not judged.</param>
/// <param name="Compositions">The rows, best verdict first.</param>
internal sealed record WeekendAnswer(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Notice, IReadOnlyList<string> Cautions, string NotForNavigation, string Sea, string Tide,
    DateOnly From, int SensitiveNotJudged, IReadOnlyList<WeekendRowAnswer> Compositions)
{
    public static WeekendAnswer Of(WeekendBoard board, string? notice, IEnumerable<string> cautions) =>
        new(notice, [.. cautions.Distinct()], Words.NotForNavigation, Words.SeaUnknown, TideWords.Disclaimer, board.From.Iso(), board.Blurred, [.. board.Rows.Select(WeekendRowAnswer.Of)]);
}

/// <summary>One composition.</summary>
/// <param name="Composition">Its name.</param>
/// <param name="Page">Address of its page.</param>
/// <param name="Location">Slug of its place.</param>
/// <param name="Zone">IANA time zone of its times.</param>
/// <param name="Sessions">Friday dusk to Sunday dusk, in order.</param>
internal sealed record WeekendRowAnswer(string Composition, string Page, string Location, string Zone, IReadOnlyList<WeekendCellAnswer> Sessions)
{
    public static WeekendRowAnswer Of(BoardRow row) => new(row.Composition.Name, row.Address, row.Place.Slug, row.Place.ZoneId,
        [.. row.Cells.Select(cell => WeekendCellAnswer.Of(cell, row.Place.Zone))]);
}

/// <summary>One session.</summary>
/// <param name="Date">The place's own date; a night bears its evening's.</param>
/// <param name="Session">Dawn, day, dusk or night.</param>
/// <param name="Verdict">One of the five words; null when the session is past or does not exist.</param>
/// <param name="Light">The wanted light of the best window.</param>
/// <param name="WindowStart">The best window; null where there is none, or the verdict forbids one.</param>
/// <param name="WindowEnd">Its end.</param>
/// <param name="TurnBack">When to leave the stance at the latest, rounded down to five minutes; null where nothing calls one back, or where what would is not recorded.</param>
/// <param name="TurnBackCause">What calls one back: tideGate, ledge, clockGate, dark, watch, endOfTide.</param>
/// <param name="Way">The way the verdict, window and turn back hold for: route and car park.</param>
/// <param name="ArriveBy">When to have arrived, at the watch place where watching comes first.</param>
/// <param name="LightEnds">When the light of the window ends, whether or not one can stay so long.</param>
/// <param name="WavesNotCounted">Turn back is told at the latest: waves can come to a crossing, and the sea is not known.</param>
/// <param name="InsteadOf">The club's first way, where it leaves no window and another is told; else null.</param>
/// <param name="Alternates">What the other open ways would give.</param>
/// <param name="Reasons">The weightiest first.</param>
/// <param name="Missing">Why there is no such session, or that it is past.</param>
internal sealed record WeekendCellAnswer(
    DateOnly Date, SessionKind Session, string? Verdict, WantedLight? Light, DateTimeOffset? WindowStart, DateTimeOffset? WindowEnd,
    DateTimeOffset? TurnBack, StayCause? TurnBackCause, string? Way, DateTimeOffset? ArriveBy, DateTimeOffset? LightEnds, bool WavesNotCounted, string? InsteadOf,
    IReadOnlyList<WeekendAlternateAnswer> Alternates, IReadOnlyList<string> Reasons, string? Missing)
{
    public static WeekendCellAnswer Of(BoardCell cell, NodaTime.DateTimeZone zone) => new(
        cell.Session.Date.Iso(), cell.Session.Kind, cell.Judgement?.Verdict.Word(), cell.Judgement?.Window?.Light,
        cell.Judgement?.Window?.Start.At(zone), cell.Judgement?.Window?.End.At(zone),
        cell.Plan?.TurnBack?.At(zone), cell.Plan is { TurnBack: not null, Stay: { } stay } ? stay.Closing : null,
        cell.By?.Way.Name, cell.Plan?.ArriveBy?.At(zone), cell.Plan?.LightEnds.At(zone), cell.By?.Way.IsAtTheLatest ?? false, cell.First?.Way.Name,
        [.. cell.Others.Select(other => WeekendAlternateAnswer.Of(other, zone))], cell.Judgement?.Reasons ?? [], cell.IsPast ? "past" : cell.Missing);
}

/// <summary>What another way would give in the same session; never in place of the first without being named.</summary>
/// <param name="Way">Route and car park.</param>
/// <param name="Verdict">One of the five words.</param>
/// <param name="WindowStart">Its best window, or null.</param>
/// <param name="WindowEnd">Its end.</param>
/// <param name="TurnBack">When to leave the stance by this way.</param>
/// <param name="WavesNotCounted">As above.</param>
internal sealed record WeekendAlternateAnswer(string Way, string Verdict, DateTimeOffset? WindowStart, DateTimeOffset? WindowEnd, DateTimeOffset? TurnBack, bool WavesNotCounted)
{
    public static WeekendAlternateAnswer Of(Alternate other, NodaTime.DateTimeZone zone) => new(other.Way.Name, other.Judgement.Verdict.Word(),
        other.Judgement.Window?.Start.At(zone), other.Judgement.Window?.End.At(zone), other.Plan?.TurnBack?.At(zone), other.Way.IsAtTheLatest);
}
