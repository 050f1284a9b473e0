using Foreshore.Guide.Access;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Api;

/// <summary>A way to the place.</summary>
/// <param name="Name">Its name.</param>
/// <param name="MayBeRecommended">No leg is private, closed or of unknown standing.</param>
/// <param name="ClosedToday">A closure stops one of its legs today.</param>
/// <param name="Notes">What to know.</param>
/// <param name="Parking">Car parks that serve it, the one the club would use first.</param>
/// <param name="Legs">In order.</param>
internal sealed record RouteAnswer(string Name, bool MayBeRecommended, bool ClosedToday, string? Notes, IReadOnlyList<RouteParkingAnswer> Parking, IReadOnlyList<LegAnswer> Legs)
{
    public static RouteAnswer Of(AccessRoute route, Location place, LocalDate today) => new(route.Name, route.MayBeRecommended,
        route.Legs.Any(leg => place.IsClosed(leg, today)), route.Notes,
        [.. route.Parking.OrderBy(served => served.Order).Select(served => new RouteParkingAnswer(served.ParkingArea.Name, served.WalkMinutes))], [.. route.Legs.Select(leg => LegAnswer.Of(leg, place, today))]);
}

/// <summary>A car park that serves a way.</summary>
/// <param name="Name">Its name among the place's parking areas.</param>
/// <param name="WalkMinutes">On foot, in daylight, to where the way begins; null: nobody has timed it.</param>
internal sealed record RouteParkingAnswer(string Name, double? WalkMinutes);

/// <summary>A way that leads to a vantage point.</summary>
/// <param name="Route">Its name among the place's ways in.</param>
/// <param name="EndMinutes">On foot from its end to the stance; null: nobody has timed it.</param>
/// <param name="WalkInMinutes">Timed whole from its first car park; null: not measured.</param>
/// <param name="WalkOutMinutes">The same on the way back.</param>
internal sealed record StanceWayAnswer(string Route, double? EndMinutes, double? WalkInMinutes, double? WalkOutMinutes);

/// <summary>One part of a way.</summary>
/// <param name="Kind">Drive, ferry, walk or other.</param>
/// <param name="Name">Its name.</param>
/// <param name="LegalStatus">By what right one passes.</param>
/// <param name="LegalWords">The same in words.</param>
/// <param name="ClosedToday">A closure holds today.</param>
/// <param name="DistanceKilometres">One way.</param>
/// <param name="Minutes">Usual, one way, in daylight.</param>
/// <param name="ClimbMetres">Up.</param>
/// <param name="Surface">Underfoot.</param>
/// <param name="Notes">What to know.</param>
/// <param name="Hours">When it can be passed, as rules; null: nobody has said.</param>
/// <param name="HoursWords">The same in words.</param>
/// <param name="HoursOfTheSign">In the words of the sign; with these and no hours, it is not known when it can be passed.</param>
/// <param name="AskWhom">For what is on request or by permit.</param>
/// <param name="Group">May a club group go?</param>
/// <param name="Tripod">May a tripod stand?</param>
/// <param name="Dogs">May dogs?</param>
/// <param name="Ferry">Facts of a ferry.</param>
/// <param name="Crossing">Cut off by the tide: when it can be passed.</param>
/// <param name="TidalCut">Whether the tide cuts it off; unknown until somebody answers, and never to be read as never.</param>
/// <param name="Ground">The worst one walks on.</param>
/// <param name="LightAtNight">How one finds it at night.</param>
/// <param name="Line">Latitude and longitude in degrees by turns, from one end to the other; empty when not drawn.</param>
/// <param name="SaysWho">The source of these facts.</param>
/// <param name="LastChecked">The day.</param>
internal sealed record LegAnswer(LegKind Kind, string Name, LegalStatus LegalStatus, string LegalWords, bool ClosedToday, double? DistanceKilometres,
    double? Minutes, double? ClimbMetres, string? Surface, string? Notes, string? Hours, string? HoursWords, string? HoursOfTheSign, string? AskWhom, Consent Group, Consent Tripod, DogRule Dogs,
    FerryAnswer? Ferry, CrossingAnswer? Crossing, TidalCut TidalCut, LegGround Ground, LightAtNight LightAtNight, IReadOnlyList<double> Line, string SaysWho, DateOnly LastChecked)
{
    public static LegAnswer Of(Leg leg, Location place, LocalDate today) => new(leg.Kind, leg.Name, leg.LegalStatus, leg.LegalStatus.Words(), place.IsClosed(leg, today),
        leg.DistanceKilometres, leg.Minutes, leg.ClimbMetres, leg.Surface, leg.Notes, leg.Hours is { } hours ? HoursNotation.Write(hours) : null, leg.Hours?.Words(leg.AskWhom), leg.HoursText, leg.AskWhom, leg.Group, leg.Tripod, leg.Dogs,
        leg.Ferry is { } f ? new(f.CrossingMinutes, SailingsNotation.Write(f.Out), f.Out.Words(leg.AskWhom), SailingsNotation.Write(f.Back), f.Back.Words(leg.AskWhom), f.LastCheckInMinutes, f.Fare, f.Currency, f.MinutesSaved) : null,
        leg.Crossing is { } c ? new(TideHeightAnswer.Of(c.PassableBelow, place)!, c.MinutesFromStance, c.ShelteredBecause) : null, leg.TidalCut, leg.Ground, leg.LightAtNight,
        [.. leg.LineDegrees.Select(d => Math.Round(d, 6))], leg.Check.SaysWho, leg.Check.LastChecked.Iso());
}

/// <summary>What one must know of a ferry; times are local.</summary>
/// <param name="CrossingMinutes">Under way.</param>
/// <param name="Out">Sailings towards the vantage point, as rules; empty: not known.</param>
/// <param name="OutWords">The same in words.</param>
/// <param name="Back">Sailings back, as rules; empty: not known.</param>
/// <param name="BackWords">The same in words.</param>
/// <param name="LastCheckInMinutes">Before the sailing.</param>
/// <param name="Fare">Return, one person on foot.</param>
/// <param name="Currency">ISO 4217.</param>
/// <param name="MinutesSaved">Over the road; null: there is no road.</param>
internal sealed record FerryAnswer(double CrossingMinutes, string Out, string OutWords, string Back, string BackWords, int LastCheckInMinutes, decimal? Fare, string? Currency, double? MinutesSaved);

/// <summary>A tidal crossing. The tide is not computed yet: whether it is open is not known here.</summary>
/// <param name="PassableBelow">Tide height.</param>
/// <param name="MinutesFromStance">Measured walk from the stance to beyond it.</param>
/// <param name="ShelteredBecause">Why no wave allowance is due, by a warden; null: it is due.</param>
internal sealed record CrossingAnswer(TideHeightAnswer PassableBelow, double? MinutesFromStance, string? ShelteredBecause);

/// <summary>A height with its datum and the station it was judged by.</summary>
/// <param name="Metres">Above the datum.</param>
/// <param name="Datum">Counted from.</param>
/// <param name="Station">Judged by.</param>
/// <param name="IsRepeated">False: one member's figure, not yet repeated.</param>
/// <param name="NeedsChecking">Judged by another station than the place has now.</param>
internal sealed record TideHeightAnswer(double Metres, TideDatum Datum, string Station, bool IsRepeated, bool NeedsChecking)
{
    public static TideHeightAnswer? Of(TideHeight? height, Location place) =>
        height is null ? null : new(height.Metres, height.Datum, height.StationId, height.IsRepeated, height.NeedsChecking(place.TideStationId));
}

/// <summary>A parking area.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Position">Where.</param>
/// <param name="ClosedToday">A closure holds today.</param>
/// <param name="Surface">Of what.</param>
/// <param name="Cars">How many.</param>
/// <param name="Cost">Of one stay; 0 is free.</param>
/// <param name="Currency">ISO 4217.</param>
/// <param name="HeightBarrierMetres">Clear height; null: none known.</param>
/// <param name="Hours">When a car gets in and out, as rules; null: nobody has said.</param>
/// <param name="HoursWords">The same in words.</param>
/// <param name="AskWhom">For what is on request or by permit.</param>
/// <param name="FloodsAbove">Tide height.</param>
/// <param name="Notes">What to know.</param>
/// <param name="LastChecked">The day.</param>
internal sealed record ParkingAnswer(string Name, PlaceAt Position, bool ClosedToday, string Surface, int? Cars, decimal? Cost, string? Currency,
    double? HeightBarrierMetres, string? Hours, string? HoursWords, string? AskWhom, TideHeightAnswer? FloodsAbove, string? Notes, DateOnly LastChecked)
{
    public static ParkingAnswer Of(ParkingArea area, Location place, LocalDate today) => new(area.Name, PlaceAt.Of(area.Position), place.IsClosed(area, today), area.Surface,
        area.Capacity, area.Cost, area.Currency, area.HeightBarrierMetres, area.Hours is { } hours ? HoursNotation.Write(hours) : null, area.Hours?.Words(area.AskWhom), area.AskWhom, TideHeightAnswer.Of(area.FloodsAbove, place), area.Notes, area.Check.LastChecked.Iso());
}

/// <summary>Whether one may stay the night.</summary>
/// <param name="Sleeper">In what.</param>
/// <param name="Standing">No rule found is not permission.</param>
/// <param name="Words">The same in words.</param>
/// <param name="ParkingArea">Which one; null: the whole place.</param>
/// <param name="LastChecked">The day.</param>
/// <param name="Link">To the rule.</param>
internal sealed record OvernightAnswer(Sleeper Sleeper, OvernightStanding Standing, string Words, string? ParkingArea, DateOnly LastChecked, string? Link);
