using System.Security.Cryptography;
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

    /// <summary>Made by the form, so that sending twice makes one; null for the club's first content.</summary>
    public Guid? FormId { get; private set; }

    /// <summary>The warden who entered it; null for the club's first content and for near misses, which keep no name.</summary>
    public Guid? MadeBy { get; private set; }

    public Instant? MadeAt { get; private set; }

    /// <summary>It stands because somebody nearly came to harm.</summary>
    public bool IsNearMiss { get; private set; }

    /// <summary>Who asked to lift it, and why: somebody else lifts it, where there are two wardens.</summary>
    public Guid? LiftAskedBy { get; private set; }

    public string? LiftReason { get; private set; }

    public Guid? LiftedBy { get; private set; }

    public Instant? LiftedAt { get; private set; }

    /// <summary>Lifted by the only warden, who had closed it or asked.</summary>
    public bool IsLiftedSingleHanded { get; private set; }

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

    public void AskToLift(Guid? by = null, string? reason = null)
    {
        Require.That(State is ClosureState.UnderReview or ClosureState.InForce, $"Only a closure in force can be asked to be lifted; this one is {State}.");
        (State, LiftAskedBy) = (ClosureState.LiftAsked, by);
        LiftReason = Require.TextOrNull(reason, 400, "Why it may be lifted");
    }

    /// <summary>It stays: what was asked is not done.</summary>
    public void KeepClosed()
    {
        Require.That(State == ClosureState.LiftAsked, $"Nobody has asked to lift this closure; it is {State}.");
        (State, LiftAskedBy, LiftReason) = (ClosureState.InForce, null, null);
    }

    /// <summary>Who may lift is a matter of the review (two wardens); here only the order of states is kept.</summary>
    public void Lift(Guid? by = null, Instant? at = null, bool isSingleHanded = false)
    {
        Require.That(State != ClosureState.Lifted, "This closure is lifted already.");
        (State, LiftedBy, LiftedAt, IsLiftedSingleHanded) = (ClosureState.Lifted, by, at, isSingleHanded);
    }

    public Closure Made(Guid formId, Guid? by, Instant at)
    {
        (FormId, MadeBy, MadeAt) = (formId, by, at);
        return this;
    }

    public void ForgetMaker(Guid member)
    {
        if (MadeBy == member) MadeBy = null;
        if (LiftAskedBy == member) LiftAskedBy = null;
        if (LiftedBy == member) LiftedBy = null;
    }

    /// <summary>
    /// Shut until a warden has looked: somebody nearly came to harm there. No name is kept with it, no time finer than the day, and its
    /// number is drawn, for one in sequence would stand between others whose times are known.
    /// </summary>
    public static Closure AfterNearMiss(LocalDate on, string whatHappened, Guid formId) =>
        new(whatHappened, "The club, after a near miss", ClosureState.UnderReview) { Id = -RandomNumberGenerator.GetInt32(1, int.MaxValue), From = on, IsNearMiss = true, FormId = formId };

    /// <summary>The same closure for readers who see the place blurred: who closed it, and a notice, would tell whose land it is.</summary>
    internal Closure WithoutOwner() => new(Reason, "those who keep the place", State)
    {
        Id = Id,
        LocationId = LocationId,
        Target = Target,
        From = From,
        Until = Until,
        YearlyFrom = YearlyFrom,
        YearlyUntil = YearlyUntil,
        IsNearMiss = IsNearMiss,
    };
}
