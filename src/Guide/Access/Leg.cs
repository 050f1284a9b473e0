using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Stays;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Access;

public enum LegKind { Drive, Ferry, Walk, Other }

/// <summary>By what right one passes. Customary: used, no recorded right. Private: ask first.</summary>
public enum LegalStatus { RightOfWay, OpenAccess, Permissive, Customary, Private, Closed, Unknown }

public enum Consent { Unknown, Yes, No, AskFirst }

public enum DogRule { Unknown, Yes, OnLead, No }

/// <summary>One part of a route. Facts that are not known stay null or Unknown and are printed so.</summary>
public sealed partial class Leg
{
    private Leg() { }

    private Leg(LegKind kind, string name, LegalStatus status, FactCheck check)
    {
        Kind = kind;
        Name = Require.Text(name, 120, "The leg's name");
        LegalStatus = status;
        Check = check;
    }

    public int Id { get; private set; }

    public int AccessRouteId { get; private set; }

    /// <summary>1 is the first leg from home.</summary>
    public int Order { get; private set; }

    public LegKind Kind { get; private set; }

    public string Name { get; private set; } = "";

    /// <summary>Road notes, surface, what to look for.</summary>
    public string? Notes { get; private set; }

    public LegalStatus LegalStatus { get; private set; }

    /// <summary>Who says so, when last checked, link.</summary>
    public FactCheck Check { get; private set; } = null!;

    public double? DistanceKilometres { get; private set; }

    /// <summary>Usual minutes one way, in daylight.</summary>
    public double? Minutes { get; private set; }

    public double? ClimbMetres { get; private set; }

    public string? Surface { get; private set; }

    /// <summary>May a club group go?</summary>
    public Consent Group { get; private set; }

    /// <summary>May a tripod stand?</summary>
    public Consent Tripod { get; private set; }

    public DogRule Dogs { get; private set; }

    /// <summary>Gate or hours of the way; both null when it is never locked or nothing is known (see <see cref="HoursText"/>).</summary>
    public LocalTime? OpensAt { get; private set; }

    public LocalTime? ClosesAt { get; private set; }

    /// <summary>When it can be passed; null: nobody has said. With words about hours and no hours, they are unknown.</summary>
    public OpeningHours? Hours { get; private set; }

    /// <summary>The hours as a sign has them.</summary>
    public string? HoursText { get; private set; }

    /// <summary>Whom to ask for a permit, a sailing or hours on request, and how.</summary>
    public string? AskWhom { get; private set; }

    /// <summary>Somebody wrote of hours, and nobody has entered them yet: whether it is open is not known.</summary>
    public bool HoursAreToBeEntered => Hours is null && HoursText is not null;

    public FerryFacts? Ferry { get; private set; }

    /// <summary>The height of the tide that cuts it off, and how far it is to beyond; null unless <see cref="TidalCut"/> says Crossing.</summary>
    public Crossing? Crossing { get; private set; }

    public TidalCut TidalCut { get; private set; }

    /// <summary>What one walks on, at its worst.</summary>
    public LegGround Ground { get; private set; }

    public LightAtNight LightAtNight { get; private set; }

    /// <summary>Latitude and longitude by turns; use <see cref="Line"/>.</summary>
    public IReadOnlyList<double> LineDegrees { get; private set; } = [];

    public uint Version { get; private set; }

    /// <summary>The way as drawn; empty when nobody has drawn it.</summary>
    public IReadOnlyList<Position> Line =>
        [.. Enumerable.Range(0, LineDegrees.Count / 2).Select(i => new Position(LineDegrees[2 * i], LineDegrees[2 * i + 1]))];

    public bool MayBeRecommended => LegalStatus is not (LegalStatus.Private or LegalStatus.Closed or LegalStatus.Unknown);

    public static Leg Drive(string name, double kilometres, double minutes, string notes, LegalStatus status, FactCheck check) =>
        new(LegKind.Drive, name, status, check)
        {
            DistanceKilometres = Require.Between(kilometres, 0, 2000, "The distance", "km"),
            Minutes = Require.Between(minutes, 0, 1440, "The usual time", "minutes"),
            Notes = Require.TextOrNull(notes, 600, "The road notes"),
        };

    public static Leg ByFerry(string name, FerryFacts ferry, LegalStatus status, FactCheck check) =>
        new(LegKind.Ferry, name, status, check) { Ferry = ferry, Minutes = ferry.CrossingMinutes };

    public static Leg Walk(string name, double kilometres, double minutes, double climbMetres, string surface, LegalStatus status, FactCheck check) =>
        new(LegKind.Walk, name, status, check)
        {
            DistanceKilometres = Require.Between(kilometres, 0, 60, "The distance", "km"),
            Minutes = Require.Between(minutes, 0, 1440, "The usual time", "minutes"),
            ClimbMetres = Require.Between(climbMetres, 0, 3000, "The climb", "m"),
            Surface = Require.TextOrNull(surface, 120, "The surface"),
        };

    public static Leg Otherwise(string name, double minutes, string notes, LegalStatus status, FactCheck check) =>
        new(LegKind.Other, name, status, check)
        {
            Minutes = Require.Between(minutes, 0, 1440, "The usual time", "minutes"),
            Notes = Require.Text(notes, 600, "How one gets over this leg"),
        };

    /// <summary>A leg of which nothing but its name and standing is known yet.</summary>
    public static Leg Named(LegKind kind, string name, LegalStatus status, FactCheck check) => new(kind, name, status, check);

    public Leg Call(string name, string? notes)
    {
        Name = Require.Text(name, 120, "The leg's name");
        Notes = Require.TextOrNull(notes, 600, "The notes");
        return this;
    }

    /// <summary>By what right one passes, and who says so.</summary>
    public Leg Stand(LegalStatus status, FactCheck check)
    {
        (LegalStatus, Check) = (status, check);
        return this;
    }

    public Leg Measure(double? kilometres, double? minutes, double? climbMetres, string? surface)
    {
        DistanceKilometres = Require.BetweenOrNull(kilometres, 0, 2000, "The distance", "km");
        Minutes = Require.BetweenOrNull(minutes, 0, 2880, "The usual time", "minutes");
        ClimbMetres = Require.BetweenOrNull(climbMetres, 0, 3000, "The climb", "m");
        Surface = Require.TextOrNull(surface, 120, "The surface");
        return this;
    }

    /// <summary>May a group go, may a tripod stand, dogs.</summary>
    public Leg Allow(Consent group, Consent tripod, DogRule dogs)
    {
        (Group, Tripod, Dogs) = (group, tripod, dogs);
        return this;
    }

    public Leg Open(LocalTime? from, LocalTime? until, string? hoursText)
    {
        Require.That(from is null || from != until, "A way that opens and shuts at the same time is never open or never shut. Enter two different times, or write \"at any hour\" and leave both out.");
        (OpensAt, ClosesAt) = (from, until);
        HoursText = Require.TextOrNull(hoursText, 200, "The hours");
        return this;
    }

    /// <summary>When it can be passed, the words of the sign beside it, and whom to ask.</summary>
    public Leg OpenBy(OpeningHours? hours, string? hoursText = null, string? askWhom = null)
    {
        Hours = hours;
        HoursText = Require.TextOrNull(hoursText, 300, "The hours in words");
        AskWhom = Require.TextOrNull(askWhom, 200, "Whom to ask");
        return this;
    }

    /// <summary>The sailings of a ferry, for each direction.</summary>
    public Leg Sail(Timetable outwards, Timetable back)
    {
        Require.That(Ferry is not null || (outwards.Equals(Timetable.Unknown) && back.Equals(Timetable.Unknown)), "Only a ferry has sailings. Enter hours instead, or enter the ferry first.");
        Ferry = Ferry?.Sailing(outwards, back);
        return this;
    }

    public Leg Note(string notes)
    {
        Notes = Require.Text(notes, 600, "The notes");
        return this;
    }

    /// <summary>This leg is cut off by the tide.</summary>
    public Leg PassableWhile(Crossing crossing)
    {
        (Crossing, TidalCut) = (crossing, TidalCut.Crossing);
        return this;
    }

    /// <summary>Somebody says that no tide cuts this leg off.</summary>
    public Leg NeverCutOff()
    {
        (Crossing, TidalCut) = (null, TidalCut.Never);
        return this;
    }

    /// <summary>Nobody knows whether the tide cuts it off: the ways over it are not judged.</summary>
    public Leg CutOffUnknown()
    {
        (Crossing, TidalCut) = (null, TidalCut.Unknown);
        return this;
    }

    /// <summary>What is known of the boat.</summary>
    public Leg Sail(FerryFacts ferry)
    {
        Require.That(Kind == LegKind.Ferry, "Only a leg by ferry has a crossing time, a check-in and a fare. Clear them.");
        (Ferry, Minutes) = (ferry, ferry.CrossingMinutes);
        return this;
    }

    public Leg Over(LegGround ground)
    {
        Ground = ground;
        return this;
    }

    public Leg ByNight(LightAtNight light)
    {
        LightAtNight = light;
        return this;
    }

    public Leg Draw(params Position[] line)
    {
        Require.That(line.Length >= 2, "A drawn way needs at least two points. Draw it from one end to the other.");
        LineDegrees = [.. line.SelectMany(p => new[] { p.LatitudeDegrees, p.LongitudeDegrees })];
        return this;
    }

    public Leg StillCorrect(LocalDate on, string by)
    {
        Check = Check.StillCorrect(on, by);
        return this;
    }

    internal void TakePlace(int order) => Order = order;
}
