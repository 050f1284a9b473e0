using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Outlooks;

/// <summary>Reads off a place what an outlook must know besides light, tide and way.</summary>
public static class Stance
{
    public const string SeaNotJudged = "the sea is not judged";

    /// <summary>The same for all compositions of a stance: what is not known of each comes on top.</summary>
    /// <param name="ways">The ways of that session, with what floods.</param>
    public static StanceFacts FactsOn(this VantagePoint vantagePoint, Location place, IReadOnlyList<LocalDate> dates, SessionWays ways)
    {
        IReadOnlyList<string> floods = ways.Floods is { } words ? [words] : [];
        return new([.. ways.Stops, .. ways.FloodKeepsOff ? floods : []],
            ways.NoWayIn,
            [],
            [.. ways.FloodKeepsOff ? [] : floods, .. dates.SelectMany(date => Doubts(place, vantagePoint, date)).Distinct()],
            Remarks(place, vantagePoint, dates[0]));
    }

    /// <summary>What only the sea answers, of which nothing is known, and what nobody has recorded about it.</summary>
    public static IReadOnlyList<string> NotKnownAt(this Composition composition, VantagePoint vantagePoint)
    {
        List<string> unknown = [];
        if (vantagePoint.IsWaveExposed || vantagePoint.Sea is not null)
            unknown.Add(SeaNotJudged);
        if (vantagePoint is { IsWaveExposed: true, Sea: null })
            unknown.Add("no highest usable sea is recorded");
        if (composition.Sea is not null)
            unknown.Add("the wished sea is not known");
        if (vantagePoint is { Kind: VantageKind.UnderCliff, Cliff: null })
            unknown.Add("nobody has measured the cliff above");
        return unknown;
    }

    private static List<string> Doubts(Location place, VantagePoint vantagePoint, LocalDate date)
    {
        List<string> doubts =
            [.. place.NotesShown(date, vantagePoint).Where(note => note is { IsSevere: true, KeepsOff: false }).Select(StopWords.InWords)];
        if (vantagePoint.Edge != EdgeDistance.None)
            doubts.Add("within 5 m of an edge, and gusts are not known");
        return doubts;
    }

    private static List<string> Remarks(Location place, VantagePoint vantagePoint, LocalDate date)
    {
        List<string> remarks = [];
        if (vantagePoint.Skyline.IsAssumed)
            remarks.Add("a sea horizon is assumed: no skyline drawn yet");
        else if (vantagePoint.Skyline.HasUnknown)
            remarks.Add("part of the skyline is unknown and counts as level");
        remarks.AddRange(place.NotesShown(date, vantagePoint).Where(note => !note.IsSevere).Take(1).Select(StopWords.InWords));
        return remarks;
    }
}
