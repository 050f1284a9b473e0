using System.Globalization;
using Foreshore.Almanac.Earth;
using Foreshore.Guide.Access;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Members;
using Foreshore.Guide.Tides;
using Microsoft.Extensions.Primitives;
using NodaTime;

namespace Foreshore.Guide.Locations;

/// <summary>The guide's page: the coast as the filter leaves it.</summary>
/// <param name="Filter">What shortens it.</param>
/// <param name="Entries">Places that fit, in coast order.</param>
/// <param name="Cautions">Rows of cautions for their countries.</param>
/// <param name="TideUnknown">How many a tide filter left out because their tide is not known now.</param>
/// <param name="Part">Which stretch of a long coast, from 1.</param>
/// <param name="GoesOn">Whether another stretch follows.</param>
public sealed record CoastView(CoastFilter Filter, IReadOnlyList<CoastEntry> Entries, IReadOnlyList<CountryCautions> Cautions, int TideUnknown = 0, int Part = 1, bool GoesOn = false)
{
    /// <summary>More makes a page that nobody reads to its end, and that a phone with a bad signal waits for.</summary>
    public const int MostPlaces = 40;

    private const int MostParts = 1000;

    public bool IsWhole => Part == 1 && !GoesOn;

    public string MapTitle => !IsWhole ? "This stretch of the coast" : Filter.IsEmpty ? "The whole coast" : "The places that fit";

    public string CountWords => $"{Entries.Count} places{(IsWhole ? "" : $", part {Part} of a longer coast")}{(Filter.IsEmpty ? "" : " that fit")}";

    /// <summary>What can't be read is the beginning.</summary>
    public static int PartFrom(IQueryCollection query) =>
        int.TryParse(query["part"], CultureInfo.InvariantCulture, out var part) && part is >= 1 and <= MostParts ? part : 1;

    /// <summary>The address of another stretch with the same filters.</summary>
    public static string Address(IQueryCollection query, int part) =>
        "/" + QueryString.Create(query.Where(pair => pair.Key != "part").Concat(
            part == 1 ? [] : [KeyValuePair.Create("part", new StringValues(part.ToString(CultureInfo.InvariantCulture)))]));

    public static CoastView Nothing { get; } = new(new(), [], []);
}

/// <summary>A place in coast order with what one must know before its picture: what stops one, hazards, the way in.</summary>
public sealed record CoastEntry(Location Place, LocalDate Today)
{
    /// <summary>The tide there now, where a filter asked for it and it is known.</summary>
    public TideNow? Tide { get; init; }

    /// <summary>In force today for the whole place or its last way in.</summary>
    public IReadOnlyList<Closure> Closures { get; } = Place.ClosuresThatStop(Today);

    /// <summary>Closures that don't stop one today: of parts, or at another time of the year.</summary>
    public IReadOnlyList<Closure> OtherClosures => [.. Place.Closures.Where(c => c.CountsAsInForce && !Closures.Contains(c) && (c.AppliesOn(Today) || c.IsYearly || c.From > Today))];

    public IReadOnlyList<HazardNote> Severe => [.. Place.NotesShown(Today).Where(note => note.IsSevere)];

    /// <summary>The greatest hazard there, notes and ratings together; null when nothing is rated.</summary>
    public int? Severity => Place.NotesShown(Today).Select(n => (int?)n.Severity).Concat(Place.HazardRatings.Select(r => r.Severity)).Max();

    public string HazardLine
    {
        get
        {
            var found = Place.NotesShown(Today).Select(n => (n.Kind, Severity: (int?)n.Severity)).Concat(Place.HazardRatings.Select(r => (r.Kind, r.Severity)))
                .Where(h => h.Severity > 0).GroupBy(h => h.Kind).Select(g => (Kind: g.Key, Severity: g.Max(h => h.Severity)))
                .OrderByDescending(h => h.Severity).ToList();
            if (found.Count > 0)
                return string.Join("; ", found.Take(3).Select(h => $"{h.Kind.Words()}: {HazardWords.SeverityWords(h.Severity)}"));
            return Place.HazardRatings.Where(r => r.Severity == 0).ToList() is { Count: > 0 } none
                ? $"none known on {AccessWords.Day(none.Min(r => r.Check.LastChecked))}"
                : "hazards not rated";
        }
    }

    /// <summary>The default way's legs in order; for a blurred place that they are not shown.</summary>
    public string WayIn => Place.IsBlurred ? "ways in are not shown"
        : Place.DefaultRoute(Today) is { } route ? string.Join(" · ", route.Legs.Select(leg => $"{leg.Kind.Words()} {(leg.Minutes is { } minutes ? AccessWords.Minutes(minutes) : "?")}{(leg.Crossing is null ? "" : ", cut off by the tide")}"))
        : Place.Routes.Count == 0 ? "no way in recorded" : "no way in that the club may recommend";

    /// <summary>The first drawn sketch of the place.</summary>
    public string? Sketch => Place.VantagePoints.Select(v => v.Sketch ?? v.Compositions.Select(c => c.Sketch).FirstOrDefault(s => s is not null)).FirstOrDefault(s => s is not null);

    private Leg? Ferry => Place.DefaultRoute(Today)?.Legs.FirstOrDefault(leg => leg.Kind == LegKind.Ferry);

    /// <summary>As the strip beside the list draws it.</summary>
    public CoastPlace Drawn => new(Place.Position, Place.IsBlurred, Ferry is not null, Ferry?.Minutes is { } minutes ? $"ferry {AccessWords.Minutes(minutes)}" : null);
}

public static class CoastQueries
{
    public static async Task<CoastView> GuideAsync(
        this GuideDb db, CoastFilter filter, int part, Reader reader, Position? home, Instant now, TideCurves curves, CancellationToken cancel = default)
    {
        var before = (part - 1) * CoastView.MostPlaces;
        // One more than is shown tells whether the coast goes on.
        var places = await db.CoastAsync(reader, Parts.All, filter.Words, now, filter.IsOfWordsAlone ? (before, CoastView.MostPlaces + 1) : null, cancel);
        var kept = places.Select(place => new CoastEntry(place, now.InZone(place.Zone).Date)).Where(entry => filter.Keeps(entry.Place, home, entry.Today)).ToList();
        var (tides, cautions) = await db.TidesAndCautionsAsync(filter.Tide is null ? [] : kept.Select(entry => entry.Place.TideStationId),
            kept.Select(entry => entry.Place.CountryCode), cancel);
        if (filter.Tide is not { } wanted)
            return Cut(kept, 0);

        List<CoastEntry> told = [.. kept.Select(entry => entry with { Tide = tides.Of(entry.Place) is { } tide ? TideNow.Of(curves.Around(tide, now), now) : null })];
        return Cut([.. told.Where(entry => entry.Tide?.State == wanted)], told.Count(entry => entry.Tide is null));

        CoastView Cut(List<CoastEntry> all, int tideUnknown)
        {
            var rest = filter.IsOfWordsAlone ? all : [.. all.Skip(before)];
            return new(filter, [.. rest.Take(CoastView.MostPlaces)], cautions, tideUnknown, part, rest.Count > CoastView.MostPlaces);
        }
    }
}
