using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Stays;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Hazards;
using NodaTime;

namespace Foreshore.Guide.Locations;

/// <summary>Sensitive places are seen exactly by wardens, their proposer and members granted by name; by all others blurred.</summary>
public enum Visibility { Public, Members, Sensitive }

/// <summary>A stretch of coast a person would name as one place.</summary>
public sealed partial class Location
{
    private readonly List<AccessRoute> routes = [];
    private readonly List<ParkingArea> parking = [];
    private readonly List<OvernightRule> overnightRules = [];
    private readonly List<PermissionLetter> permissionLetters = [];
    private readonly List<Closure> closures = [];
    private readonly List<HazardRating> hazardRatings = [];
    private readonly List<HazardNote> hazardNotes = [];
    private readonly List<VantagePoint> vantagePoints = [];
    private readonly List<LocationGrant> grants = [];

    private Location() { }

    public Location(string slug, string name, Position position, string zoneId, string countryCode, string? subdivisionCode, int coastOrder)
    {
        Slug = Locations.Slug.Of(slug);
        Name = Require.Text(name, 80, "The place's name");
        MoveTo(position);
        ZoneId = DateTimeZoneProviders.Tzdb.GetZoneOrNull(zoneId) is { } zone ? zone.Id : throw new NotAcceptedException(
            $"\"{zoneId}\" is not a time zone of the IANA list. Use a name such as America/New_York.");
        CountryCode = Country(countryCode);
        SubdivisionCode = Require.TextOrNull(subdivisionCode, 6, "The subdivision's code");
        Require.That(SubdivisionCode is null || SubdivisionCode.StartsWith(CountryCode + "-", StringComparison.Ordinal),
            $"The subdivision \"{subdivisionCode}\" does not belong to {CountryCode}. ISO 3166-2 codes begin with their country, for example US-ME.");
        CoastOrder = coastOrder;
    }

    public int Id { get; private set; }

    public string Slug { get; private set; } = "";

    public string Name { get; private set; } = "";

    /// <summary>Other names people use; found by search.</summary>
    public IReadOnlyList<string> OtherNames { get; private set; } = [];

    public double LatitudeDegrees { get; private set; }

    public double LongitudeDegrees { get; private set; }

    /// <summary>The place's middle; for readers who see it blurred, the centre of its 1 km cell.</summary>
    public Position Position => new(LatitudeDegrees, LongitudeDegrees);

    /// <summary>IANA name; use <see cref="Zone"/>.</summary>
    public string ZoneId { get; private set; } = "";

    public DateTimeZone Zone => DateTimeZoneProviders.Tzdb[ZoneId];

    /// <summary>ISO 3166-1 alpha-2.</summary>
    public string CountryCode { get; private set; } = "";

    /// <summary>ISO 3166-2, for example US-ME.</summary>
    public string? SubdivisionCode { get; private set; }

    /// <summary>Place in the order in which one passes with the sea on the left hand; lowest first.</summary>
    public int CoastOrder { get; private set; }

    /// <summary>One or two lines for the guide.</summary>
    public string Summary { get; private set; } = "";

    /// <summary>What the place is: its features, their sizes and ages. Paragraphs parted by blank lines.</summary>
    public string Background { get; private set; } = "";

    public Visibility Visibility { get; private set; }

    /// <summary>The member who proposed it; sees a sensitive place exactly.</summary>
    public Guid? ProposedBy { get; private set; }

    public string? TideStationId { get; private set; }

    /// <summary>The place's own corrections to the station; <c>null</c> when none are known.</summary>
    public TideCorrections? TideCorrections { get; private set; }

    /// <summary>Mean sea level above chart datum, metres; without it heights cannot be carried to an eye height above the sea.</summary>
    public double? MeanSeaLevelAboveChartDatumMetres { get; private set; }

    /// <summary>Null: not recorded, or withheld from this reader.</summary>
    public EmergencyBlock? Emergency { get; private set; }

    /// <summary>Owner of the foreshore and byelaws, as far as known.</summary>
    public string? ForeshoreOwner { get; private set; }

    public string? Byelaws { get; private set; }

    /// <summary>When one may be there, by byelaw or by the owner; null: nobody has said. With byelaws and no hours, they are unknown.</summary>
    public OpeningHours? Hours { get; private set; }

    /// <summary>Whom to ask for a permit or for hours on request, and how.</summary>
    public string? AskWhom { get; private set; }

    /// <summary>There are byelaws, and nobody has entered what hours they leave: whether one may be there is not known.</summary>
    public bool HoursAreToBeEntered => Hours is null && Byelaws is not null;

    /// <summary>Folded names and summaries of all below it, for the search index; written on save.</summary>
    public string SearchText { get; private set; } = "";

    public uint Version { get; private set; }

    /// <summary>Ways in, in the order the club prefers them.</summary>
    public IReadOnlyList<AccessRoute> Routes => routes;

    public IReadOnlyList<ParkingArea> Parking => parking;

    public IReadOnlyList<OvernightRule> OvernightRules => overnightRules;

    public IReadOnlyList<PermissionLetter> PermissionLetters => permissionLetters;

    /// <summary>Closures of the place or of anything in it.</summary>
    public IReadOnlyList<Closure> Closures => closures;

    public IReadOnlyList<HazardRating> HazardRatings => hazardRatings;

    public IReadOnlyList<HazardNote> HazardNotes => hazardNotes;

    public IReadOnlyList<VantagePoint> VantagePoints => vantagePoints;

    /// <summary>Members who may see a sensitive place exactly.</summary>
    public IReadOnlyList<LocationGrant> Grants => grants;

    public Location Call(string name)
    {
        Name = Require.Text(name, 80, "The place's name");
        return this;
    }

    public Location Describe(string summary, string background, params string[] otherNames)
    {
        Summary = Require.Text(summary, 200, "The summary");
        Background = Require.Text(background, 4000, "The background");
        OtherNames = [.. otherNames.Select(n => Require.Text(n, 80, "Another name"))];
        return this;
    }

    /// <summary>Gives a new address; the old one answers 301 for good.</summary>
    public Location ChangeSlug(string slug)
    {
        Slug = Locations.Slug.Of(slug);
        return this;
    }

    /// <summary>Where on the coast it stands: lowest first.</summary>
    public Location TakeOrder(int order)
    {
        CoastOrder = order;
        return this;
    }

    public Location MoveTo(Position position)
    {
        (LatitudeDegrees, LongitudeDegrees) = (position.LatitudeDegrees, position.LongitudeDegrees);
        return this;
    }

    public Location ShowTo(Visibility visibility, Guid? proposedBy = null)
    {
        (Visibility, ProposedBy) = (visibility, proposedBy ?? ProposedBy);
        return this;
    }

    public Location Grant(Guid memberId)
    {
        if (!grants.Any(g => g.MemberId == memberId))
            grants.Add(new LocationGrant(memberId));
        return this;
    }

    /// <summary>Assigns the tide station. Heights judged by another station read "needs checking" from then on.</summary>
    public Location JudgeTideBy(string stationId, double? meanSeaLevelAboveChartDatumMetres, TideCorrections? corrections = null)
    {
        TideStationId = Require.Text(stationId, StationIds.Longest, "The tide station");
        MeanSeaLevelAboveChartDatumMetres = Require.BetweenOrNull(meanSeaLevelAboveChartDatumMetres, -2, 12, "Mean sea level above chart datum", "m");
        TideCorrections = corrections;
        return this;
    }

    public Location InEmergency(EmergencyBlock? block)
    {
        Emergency = block;
        return this;
    }

    public Location OwnForeshore(string? owner, string? byelaws)
    {
        ForeshoreOwner = Require.TextOrNull(owner, 200, "The foreshore's owner");
        Byelaws = Require.TextOrNull(byelaws, 600, "The byelaws");
        return this;
    }

    /// <summary>When one may be there, and whom to ask.</summary>
    public Location OpenBy(OpeningHours? hours, string? askWhom = null)
    {
        (Hours, AskWhom) = (hours, Require.TextOrNull(askWhom, 200, "Whom to ask"));
        return this;
    }

    internal static string Country(string? code)
    {
        var upper = code?.Trim().ToUpperInvariant() ?? "";
        Require.That(upper.Length == 2 && upper.All(char.IsAsciiLetterUpper), $"\"{code}\" is not a country code. Use the two letters of ISO 3166, for example US.");
        return upper;
    }
}

/// <summary>A member named as one who may see a sensitive place exactly.</summary>
public sealed class LocationGrant
{
    private LocationGrant() { }

    internal LocationGrant(Guid memberId) => MemberId = memberId;

    public int LocationId { get; private set; }

    public Guid MemberId { get; private set; }
}
