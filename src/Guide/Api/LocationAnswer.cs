using System.Text.Json.Serialization;
using Foreshore.Guide.Access;
using Foreshore.Guide.Hazards;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Api;

/// <summary>All that is known of a place; null always means not known or not recorded, never none.</summary>
/// <param name="Notice">Present when the guide is a demo.</param>
/// <param name="Cautions">The usual cautions of the country; read them before the rest.</param>
/// <param name="NotForNavigation">Stands in every answer.</param>
/// <param name="Place">Name, position, closures of today in short.</param>
/// <param name="Background">What the place is.</param>
/// <param name="Withheld">Why parts are missing for this reader; null when nothing is.</param>
/// <param name="Emergency">Whom to ring and what to read out.</param>
/// <param name="Closures">All but lifted ones, with whether they hold today.</param>
/// <param name="HazardNotes">Notes that show today, worst first.</param>
/// <param name="HazardRatings">How bad each kind is.</param>
/// <param name="Hours">When one may be at the place, as rules; null: nobody has said.</param>
/// <param name="HoursWords">The same in words.</param>
/// <param name="HoursAreToBeEntered">There are byelaws and no hours: whether one may be there is not known.</param>
/// <param name="AskWhom">For what is on request or by permit.</param>
/// <param name="Routes">Ways in, in the order the club prefers them.</param>
/// <param name="Parking">Parking areas.</param>
/// <param name="Overnight">Whether one may stay the night.</param>
/// <param name="VantagePoints">Where tripods have stood.</param>
/// <param name="Sea">What is known of the sea.</param>
internal sealed record LocationAnswer(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Notice, IReadOnlyList<string> Cautions, string NotForNavigation,
    LocationLine Place, string Background, string? Withheld, EmergencyAnswer? Emergency,
    IReadOnlyList<ClosureAnswer> Closures, IReadOnlyList<HazardNoteAnswer> HazardNotes, IReadOnlyList<HazardRatingAnswer> HazardRatings,
    string? Hours, string? HoursWords, bool HoursAreToBeEntered, string? AskWhom,
    IReadOnlyList<RouteAnswer> Routes, IReadOnlyList<ParkingAnswer> Parking, IReadOnlyList<OvernightAnswer> Overnight,
    IReadOnlyList<VantageAnswer> VantagePoints, string Sea)
{
    public static LocationAnswer Of(Location place, Instant now, string? notice, CountryCautions? cautions)
    {
        var today = now.InZone(place.Zone).Date;
        return new(notice, cautions.ToPrint().Lines, Words.NotForNavigation, LocationLine.Of(place, now), place.Background,
            place.IsBlurred ? "A sensitive place: its exact position, ways, parking, emergency block, vantage points and compositions are not shown." : null,
            EmergencyAnswer.Of(place.Emergency, cautions),
            [.. place.Closures.Where(c => c.CountsAsInForce).Select(c => ClosureAnswer.From(c, today))],
            [.. place.NotesShown(today).Select(n => new HazardNoteAnswer(n.Kind, n.Severity, HazardWords.SeverityWords(n.Severity), n.IsUnchecked, n.Text, n.Place,
                n.Position is { } at ? PlaceAt.Of(at) : null, n.VantagePoint?.Slug))],
            [.. place.HazardRatings.Select(r => new HazardRatingAnswer(r.Kind, r.Severity, HazardWords.SeverityWords(r.Severity), r.VantagePoint?.Slug, r.Check.LastChecked.Iso(), r.NeedsChecking(today)))],
            place.Hours is { } hours ? HoursNotation.Write(hours) : null, place.Hours?.Words(place.AskWhom), place.HoursAreToBeEntered, place.AskWhom,
            [.. place.Routes.Select(r => RouteAnswer.Of(r, place, today))],
            [.. place.Parking.Select(p => ParkingAnswer.Of(p, place, today))],
            [.. place.OvernightRules.Select(o => new OvernightAnswer(o.Sleeper, o.Standing, o.Words(), o.ParkingArea?.Name, o.Check.LastChecked.Iso(), o.Check.Link))],
            [.. place.VantagePoints.Select(v => VantageAnswer.Of(v, place, today))],
            Api.Words.SeaUnknown);
    }
}

/// <summary>What one reads out or looks for when it has gone wrong.</summary>
/// <param name="WhomToRing">Number and service.</param>
/// <param name="ReadOut">The position in degrees and decimal minutes.</param>
/// <param name="Position">The position to give.</param>
/// <param name="GridReference">Where a national grid is in use.</param>
/// <param name="NearestRoad">That an ambulance can reach.</param>
/// <param name="LastPhoneSignal">The last point on the walk with signal.</param>
/// <param name="ThrowLine">The nearest throw-line or ring.</param>
/// <param name="WayOutOfWater">Where one gets out.</param>
/// <param name="Shelter">The nearest shelter.</param>
/// <param name="Warnings">Link to the official warnings.</param>
internal sealed record EmergencyAnswer(string WhomToRing, string ReadOut, PlaceAt Position, string? GridReference, string? NearestRoad,
    string? LastPhoneSignal, string? ThrowLine, string? WayOutOfWater, string? Shelter, string? Warnings)
{
    public static EmergencyAnswer? Of(EmergencyBlock? block, CountryCautions? country) => block is null ? null : new(block.WhomToRing, block.ReadOut,
        PlaceAt.Of(block.Position), block.GridReference, block.NearestRoad, block.LastPhoneSignal, block.ThrowLine, block.WayOutOfWater, block.Shelter,
        block.WarningsLink ?? country?.WarningsLink);
}

/// <summary>A closure.</summary>
/// <param name="Of">What is closed.</param>
/// <param name="Name">Which one; null for the place itself.</param>
/// <param name="When">In words.</param>
/// <param name="AppliesToday">It holds today.</param>
/// <param name="Reason">Why.</param>
/// <param name="ClosedBy">By whom.</param>
/// <param name="State">All of these count as closed.</param>
/// <param name="Link">To the notice.</param>
internal sealed record ClosureAnswer(ClosureTarget Of, string? Name, string When, bool AppliesToday, string Reason, string ClosedBy, ClosureState State, string? Link)
{
    public static ClosureAnswer From(Closure closure, LocalDate today) => new(closure.Target,
        closure.VantagePoint?.Name ?? closure.Leg?.Name ?? closure.ParkingArea?.Name, closure.When(), closure.AppliesOn(today), closure.Reason, closure.ClosedBy, closure.State, closure.Link);
}

/// <summary>A warning.</summary>
/// <param name="Kind">Of what.</param>
/// <param name="Severity">0 to 4; 4 is severe.</param>
/// <param name="SeverityWords">The same in words.</param>
/// <param name="NotYetChecked">Reported, not yet checked by a warden; it counts all the same.</param>
/// <param name="Text">What others should know.</param>
/// <param name="Where">In words.</param>
/// <param name="Position">Where just, as far as shown.</param>
/// <param name="VantagePoint">Slug; null: the whole place.</param>
internal sealed record HazardNoteAnswer(HazardKind Kind, int Severity, string SeverityWords, bool NotYetChecked, string Text, string? Where, PlaceAt? Position, string? VantagePoint);

/// <summary>How bad one kind of hazard is.</summary>
/// <param name="Kind">Of what.</param>
/// <param name="Severity">0 none known on that day, to 4 severe; null: not rated.</param>
/// <param name="SeverityWords">The same in words.</param>
/// <param name="VantagePoint">Slug; null: the whole place.</param>
/// <param name="LastChecked">The day.</param>
/// <param name="NeedsChecking">Older than three months.</param>
internal sealed record HazardRatingAnswer(HazardKind Kind, int? Severity, string SeverityWords, string? VantagePoint, DateOnly LastChecked, bool NeedsChecking);
