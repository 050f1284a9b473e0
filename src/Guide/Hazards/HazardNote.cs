using System.Security.Cryptography;
using Foreshore.Almanac.Earth;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Photos;
using NodaTime;

namespace Foreshore.Guide.Hazards;

public enum HazardState { Reported, Confirmed, Rejected, Ended }

/// <summary>A warning about a place. A severe note shows at once, reviewed or not, and never ends by date alone.</summary>
public sealed class HazardNote
{
    public const int Severe = 4;

    private HazardNote() { }

    public HazardNote(HazardKind kind, int severity, string text, LocalDate from, LocalDate? until = null)
    {
        Kind = kind;
        Severity = Require.Between(severity, 0, Severe, "The severity", "(0 to 4)");
        Text = Require.Text(text, 600, "What others should know");
        Require.That(until is null || until >= from, "The note ends before it begins. Check the two dates.");
        (From, Until) = (from, until);
    }

    public int Id { get; private set; }

    public int LocationId { get; private set; }

    public int? VantagePointId { get; private set; }

    /// <summary>Null: the whole place.</summary>
    public VantagePoint? VantagePoint { get; private set; }

    public HazardKind Kind { get; private set; }

    /// <summary>0 to 4; 4 is severe.</summary>
    public int Severity { get; private set; }

    public string Text { get; private set; } = "";

    /// <summary>Where just, in words; null when withheld or the whole place is meant.</summary>
    public string? Place { get; private set; }

    public double? LatitudeDegrees { get; private set; }

    public double? LongitudeDegrees { get; private set; }

    public Position? Position => LatitudeDegrees is { } latitude && LongitudeDegrees is { } longitude ? new Position(latitude, longitude) : null;

    public LocalDate From { get; private set; }

    /// <summary>Last day it is expected to hold. A severe note goes on showing after it.</summary>
    public LocalDate? Until { get; private set; }

    public HazardState State { get; private set; }

    /// <summary>The day a warden last confirmed it.</summary>
    public LocalDate? ConfirmedOn { get; private set; }

    /// <summary>Made by the form, so that sending twice makes one; null for the club's first content.</summary>
    public Guid? FormId { get; private set; }

    /// <summary>Null for the club's first content, or once the account is erased.</summary>
    public Guid? ReportedBy { get; private set; }

    public Instant? ReportedAt { get; private set; }

    public Guid? DecidedBy { get; private set; }

    public Instant? DecidedAt { get; private set; }

    /// <summary>Why it was rejected or ended.</summary>
    public string? DecisionWords { get; private set; }

    /// <summary>Told as a near miss from which nobody came to harm: no name is kept with it, and no time finer than the day.</summary>
    public bool IsNearMiss { get; private set; }

    /// <summary>What its reporter photographed; shows for as long as the note does.</summary>
    public Photo? Photo { get; private set; }

    public uint Version { get; private set; }

    public bool IsSevere => Severity == Severe;

    /// <summary>Neither ended nor rejected.</summary>
    public bool Stands => State is HazardState.Reported or HazardState.Confirmed;

    /// <summary>Reads "reported, not yet checked".</summary>
    public bool IsUnchecked => State == HazardState.Reported;

    /// <summary>A standing severe note about water, rockfall or the way back makes every verdict there <em>keep off</em>; other severe ones cap it at borderline.</summary>
    public bool KeepsOff => IsSevere && Stands && Kind is HazardKind.Waves or HazardKind.BoatWash or HazardKind.CutOff
        or HazardKind.SoftGround or HazardKind.ColdWater or HazardKind.Rockfall or HazardKind.Path;

    public HazardNote At(string place, Position? position = null, VantagePoint? vantagePoint = null)
    {
        Place = Require.Text(place, 200, "The place");
        (LatitudeDegrees, LongitudeDegrees, VantagePoint) = (position?.LatitudeDegrees, position?.LongitudeDegrees, vantagePoint);
        return this;
    }

    public HazardNote By(Guid formId, Guid member, Instant at)
    {
        (FormId, ReportedBy, ReportedAt) = (formId, member, at);
        return this;
    }

    /// <summary>
    /// A near miss without harm. It caps every verdict there at borderline, as severe notes do, and keeps nobody off. Its number is drawn,
    /// for one in sequence would stand between others whose times are known.
    /// </summary>
    public static HazardNote AfterNearMiss(LocalDate on, string whatHappened, Guid formId) =>
        new(HazardKind.Other, Severe, $"Near miss: {Require.Text(whatHappened, 400, "What happened")}", on) { Id = -RandomNumberGenerator.GetInt32(1, int.MaxValue), IsNearMiss = true, FormId = formId };

    public HazardNote With(Photo photo)
    {
        Photo = photo;
        return this;
    }

    public void ForgetReporter() => ReportedBy = null;

    public void Decided(Guid by, Instant at, string? words)
    {
        (DecidedBy, DecidedAt) = (by, at);
        DecisionWords = Require.TextOrNull(words, 400, "The reason");
    }

    /// <summary>What a warden puts right before others read it.</summary>
    public void Reword(HazardKind kind, int severity, string text, LocalDate from, LocalDate? until)
    {
        Require.That(Stands, $"A note that is {State} is not changed any more; report it again.");
        Require.That(until is null || until >= from, "The note ends before it begins. Check the two dates.");
        (Kind, Severity) = (kind, Require.Between(severity, 0, Severe, "The severity", "(0 to 4)"));
        (Text, From, Until) = (Require.Text(text, 600, "What others should know"), from, until);
    }

    /// <summary>The same warning without saying where, for readers who see the place blurred.</summary>
    internal HazardNote WithoutPlace() => new(Kind, Severity, Text, From, Until) { Id = Id, LocationId = LocationId, State = State, ConfirmedOn = ConfirmedOn };

    /// <summary>Severe notes show from the moment they are reported until ended or rejected; others when confirmed and within their dates.</summary>
    public bool ShowsOn(LocalDate on)
    {
        if (!Stands)
            return false;
        if (IsSevere)
            return true;
        return State == HazardState.Confirmed && on >= From && (Until is null || on <= Until);
    }

    public bool NeedsChecking(LocalDate on) => Stands && (ConfirmedOn ?? From) + FactCheck.HazardPeriod < on;

    public void Confirm(LocalDate on)
    {
        Require.That(Stands, $"A note that is {State} cannot be confirmed; report it again.");
        (State, ConfirmedOn) = (HazardState.Confirmed, on);
    }

    public void Reject()
    {
        Require.That(State == HazardState.Reported, $"Only a reported note can be rejected; this one is {State}. End it instead.");
        State = HazardState.Rejected;
    }

    public void End(LocalDate on)
    {
        Require.That(Stands, $"This note is {State} already.");
        (State, Until) = (HazardState.Ended, on < From ? From : on);
    }
}
