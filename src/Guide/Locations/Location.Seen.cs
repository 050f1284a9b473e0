using Foreshore.Guide.Access;
using Foreshore.Guide.Members;

namespace Foreshore.Guide.Locations;

/// <summary>Who sees the place, and how exactly.</summary>
public sealed partial class Location
{
    /// <summary>
    /// The reader gets the centre of a 1 km cell: sun, moon and tide are for that centre, and routes, parking, emergency block,
    /// hazard positions, vantage points and compositions are withheld. Pages say so.
    /// </summary>
    public bool IsBlurred { get; private set; }

    public bool MayBeSeenBy(Reader reader) => Visibility != Visibility.Members || reader.IsMember;

    public bool MayBeSeenExactlyBy(Reader reader) =>
        Visibility != Visibility.Sensitive
        || reader.IsWarden
        || (reader is { IsMember: true, MemberId: { } member } && (ProposedBy == member || grants.Any(g => g.MemberId == member)));

    /// <summary>
    /// A copy, never tracked. What is carried over is named one by one, so that a property added later stays withheld until
    /// somebody decides otherwise. Background, other names and owners tell where a place is; they stay behind too.
    /// </summary>
    internal Location Blurred()
    {
        var blurred = new Location
        {
            Id = Id,
            Slug = Slug,
            Name = Name,
            Summary = Summary,
            ZoneId = ZoneId,
            CountryCode = CountryCode,
            SubdivisionCode = SubdivisionCode,
            CoastOrder = CoastOrder,
            Visibility = Visibility,
            // The station's own tide: corrections would tell where in its square the place lies.
            TideStationId = TideStationId,
            MeanSeaLevelAboveChartDatumMetres = MeanSeaLevelAboveChartDatumMetres,
            IsBlurred = true,
        };
        blurred.MoveTo(Blur.Cell(Position));
        blurred.hazardRatings.AddRange(hazardRatings.Where(r => r.VantagePointId is null && r.VantagePoint is null));
        blurred.hazardNotes.AddRange(hazardNotes.Where(n => n.VantagePointId is null && n.VantagePoint is null).Select(n => n.WithoutPlace()));
        blurred.closures.AddRange(closures.Where(c => c.Target == ClosureTarget.Location).Select(c => c.WithoutOwner()));
        return blurred;
    }

    /// <summary>
    /// A sensitive place is found by its own name alone: words from below it would let a stranger search their way to it.
    /// </summary>
    internal void WriteSearchText()
    {
        IEnumerable<string> words = [Name, Summary];
        if (Visibility != Visibility.Sensitive)
            words = [.. words, .. OtherNames, .. vantagePoints.SelectMany(v => (string[])[v.Name, v.Summary, .. v.Compositions.SelectMany(c => (string[])[c.Name, c.Summary])])];
        SearchText = SearchWords.Fold(string.Join(' ', words));
    }
}
