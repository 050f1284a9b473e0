using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Access;

public enum ClosureTarget { Location, VantagePoint, Leg, ParkingArea }

/// <summary>All but Lifted count as in force.</summary>
public enum ClosureState { UnderReview, InForce, LiftAsked, Lifted }

/// <summary>A place, vantage point, leg or parking area is shut: between dates, or every year between two days of the year.</summary>
public sealed class Closure
{
    private Closure() { }

    private Closure(string reason, string closedBy, ClosureState state)
    {
        Reason = Require.Text(reason, 400, "The reason");
        ClosedBy = Require.Text(closedBy, 120, "Who closed it");
        State = state;
    }

    public int Id { get; private set; }

    public int LocationId { get; private set; }

    public ClosureTarget Target { get; private set; }

    public int? VantagePointId { get; private set; }

    public VantagePoint? VantagePoint { get; private set; }

    public int? LegId { get; private set; }

    public Leg? Leg { get; private set; }

    public int? ParkingAreaId { get; private set; }

    public ParkingArea? ParkingArea { get; private set; }

    public string Reason { get; private set; } = "";

    /// <summary>The authority, owner or warden who closed it.</summary>
    public string ClosedBy { get; private set; } = "";

    public ClosureState State { get; private set; }

    public LocalDate? From { get; private set; }

    /// <summary>Last closed day; null: until further notice.</summary>
    public LocalDate? Until { get; private set; }

    public AnnualDate? YearlyFrom { get; private set; }

    /// <summary>Last closed day of the year; before <see cref="YearlyFrom"/> the range crosses New Year.</summary>
    public AnnualDate? YearlyUntil { get; private set; }

    public string? Link { get; private set; }

    public uint Version { get; private set; }

    public bool IsYearly => YearlyFrom is not null;

    public bool CountsAsInForce => State != ClosureState.Lifted;

    public static Closure Between(LocalDate from, LocalDate? until, string reason, string closedBy, ClosureState state = ClosureState.InForce)
    {
        Require.That(until is null || until >= from, "The closure ends before it begins. Check the two dates.");
        return new Closure(reason, closedBy, state) { From = from, Until = until };
    }

    public static Closure EveryYear(AnnualDate from, AnnualDate until, string reason, string closedBy, ClosureState state = ClosureState.InForce) =>
        new(reason, closedBy, state) { YearlyFrom = from, YearlyUntil = until };

    public Closure Of(VantagePoint vantagePoint)
    {
        (Target, VantagePoint) = (ClosureTarget.VantagePoint, vantagePoint);
        return this;
    }

    public Closure Of(Leg leg)
    {
        (Target, Leg) = (ClosureTarget.Leg, leg);
        return this;
    }

    public Closure Of(ParkingArea area)
    {
        (Target, ParkingArea) = (ClosureTarget.ParkingArea, area);
        return this;
    }

    public Closure See(string link)
    {
        Link = Require.LinkOrNull(link, "The link to the notice");
        return this;
    }

    public bool AppliesOn(LocalDate on)
    {
        if (!CountsAsInForce)
            return false;
        if (YearlyFrom is not { } from || YearlyUntil is not { } until)
            return (From is null || on >= From) && (Until is null || on <= Until);

        var day = new AnnualDate(on.Month, on.Day);
        return from <= until ? day >= from && day <= until : day >= from || day <= until;
    }

    public void Confirm()
    {
        Require.That(State == ClosureState.UnderReview, $"Only a closure under review can be confirmed; this one is {State}.");
        State = ClosureState.InForce;
    }

    public void AskToLift()
    {
        Require.That(State is ClosureState.UnderReview or ClosureState.InForce, $"Only a closure in force can be asked to be lifted; this one is {State}.");
        State = ClosureState.LiftAsked;
    }

    /// <summary>Who may lift is a matter of the review (two wardens); here only the order of states is kept.</summary>
    public void Lift()
    {
        Require.That(State != ClosureState.Lifted, "This closure is lifted already.");
        State = ClosureState.Lifted;
    }
}
