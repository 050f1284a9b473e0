using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Guide.Access;

/// <summary>How the pages say what the access entities hold. Unknown is said as unknown, never left out.</summary>
public static class AccessWords
{
    private static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture("HH:mm");

    public static string Words(this LegKind kind) => kind switch
    {
        LegKind.Drive => "drive",
        LegKind.Ferry => "ferry",
        LegKind.Walk => "walk",
        LegKind.Other => "other",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such kind of leg."),
    };

    public static string Words(this LegalStatus status) => status switch
    {
        LegalStatus.RightOfWay => "right of way",
        LegalStatus.OpenAccess => "open access",
        LegalStatus.Permissive => "permissive: by the owner's leave, which can end",
        LegalStatus.Customary => "customary: used, no recorded right",
        LegalStatus.Private => "private – ask first",
        LegalStatus.Closed => "closed",
        LegalStatus.Unknown => "legal status unknown",
        _ => throw new ArgumentOutOfRangeException(nameof(status), status, "No such legal status."),
    };

    public static string Words(this Consent consent) => consent switch
    {
        Consent.Yes => "yes",
        Consent.No => "no",
        Consent.AskFirst => "ask first",
        Consent.Unknown => "not known",
        _ => throw new ArgumentOutOfRangeException(nameof(consent), consent, "No such consent."),
    };

    public static string Words(this DogRule rule) => rule switch
    {
        DogRule.Yes => "yes",
        DogRule.OnLead => "on a lead",
        DogRule.No => "no",
        DogRule.Unknown => "not known",
        _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "No such rule for dogs."),
    };

    public static string Words(this LegGround ground) => ground switch
    {
        LegGround.Unknown => "not known",
        LegGround.Firm => "firm",
        LegGround.WetRock => "rock that is wet",
        LegGround.Weed => "weed",
        LegGround.Boulders => "boulders",
        LegGround.SoftGround => "soft ground",
        _ => throw new ArgumentOutOfRangeException(nameof(ground), ground, "No such ground."),
    };

    public static string Words(this LightAtNight light) => light switch
    {
        LightAtNight.Unknown => "not known",
        LightAtNight.Lit => "lit",
        LightAtNight.KnownInTheDark => "walked in the dark by a member",
        LightAtNight.NotKnownInTheDark => "not known in the dark",
        _ => throw new ArgumentOutOfRangeException(nameof(light), light, "No such light."),
    };

    public static string Words(this TidalCut cut) => cut switch
    {
        TidalCut.Unknown => "not known",
        TidalCut.Never => "no, at no tide",
        TidalCut.Crossing => "yes, above a height of the tide",
        _ => throw new ArgumentOutOfRangeException(nameof(cut), cut, "No such answer."),
    };

    public static string Words(this Sleeper sleeper) => sleeper switch
    {
        Sleeper.Vehicle => "in a car or van",
        Sleeper.Motorhome => "in a motorhome",
        Sleeper.Tent => "in a tent",
        _ => throw new ArgumentOutOfRangeException(nameof(sleeper), sleeper, "No such sleeper."),
    };

    public static string Words(this OvernightRule rule) => rule.Standing switch
    {
        OvernightStanding.Allowed => $"allowed: {rule.GrantedBy}",
        OvernightStanding.NoRuleFound => "no rule found – that is not permission",
        OvernightStanding.Forbidden => "forbidden",
        OvernightStanding.Unknown => "not known",
        _ => throw new ArgumentOutOfRangeException(nameof(rule), rule.Standing, "No such standing."),
    };

    public static string Words(this ClosureState state) => state switch
    {
        ClosureState.UnderReview => "under review: counts as closed",
        ClosureState.InForce => "in force",
        ClosureState.LiftAsked => "lifting asked for: still counts as closed",
        ClosureState.Lifted => "lifted",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, "No such state."),
    };

    /// <summary>What is shut: "the place", or the part's own name.</summary>
    public static string What(this Closure closure) => closure.Target switch
    {
        ClosureTarget.Location => "the place",
        ClosureTarget.VantagePoint => closure.VantagePoint?.Name ?? "a vantage point",
        ClosureTarget.Leg => closure.Leg?.Name ?? "part of a way in",
        ClosureTarget.ParkingArea => closure.ParkingArea?.Name ?? "a parking area",
        _ => throw new ArgumentOutOfRangeException(nameof(closure), closure.Target, "No such target."),
    };

    /// <summary>For example "every year 15 Mar – 31 Jul", "from 3 Nov 2026 until further notice".</summary>
    public static string When(this Closure closure)
    {
        if (closure is { YearlyFrom: { } first, YearlyUntil: { } last })
            return $"every year {Day(first)} – {Day(last)}";
        var from = closure.From is { } start ? $"from {Day(start)}" : "from now";
        return closure.Until is { } end ? $"{from} to {Day(end)}" : $"{from} until further notice";
    }

    /// <summary>"free", "12.50 USD" or "cost not known".</summary>
    public static string Price(decimal? amount, string? currency) => amount switch
    {
        null => "not known",
        0 => "free",
        { } cost => string.Create(CultureInfo.InvariantCulture, $"{cost:0.##} {currency}"),
    };

    /// <summary>What is known of a leg in figures: "walk 1.2 km, 40 m up, 25 min, shingle".</summary>
    public static string Figures(this Leg leg)
    {
        var parts = new[]
        {
            leg.DistanceKilometres is { } kilometres ? string.Create(CultureInfo.InvariantCulture, $"{kilometres:0.#} km") : null,
            leg.ClimbMetres is > 0 and { } climb ? string.Create(CultureInfo.InvariantCulture, $"{climb:0} m up") : null,
            leg.Minutes is { } minutes ? Minutes(minutes) : "time not measured",
            leg.Surface is { } surface ? $"{char.ToLowerInvariant(surface[0])}{surface[1..]}" : null,
        };
        return $"{(leg.Kind == LegKind.Other ? "" : leg.Kind.Words() + " ")}{string.Join(", ", parts.OfType<string>())}";
    }

    /// <summary>Where the car stands for a way: "Car: Net yard, 4 min on foot to where the way begins; else Verge, walk not timed."</summary>
    public static string CarParks(this AccessRoute route) => route.Parking.Count == 0 ? "No car park is named for this way."
        : $"Car: {string.Join("; else ", route.Parking.OrderBy(served => served.Order).Select(served => $"{served.ParkingArea.Name}, {Walk(served.WalkMinutes)}"))}.";

    private static string Walk(double? minutes) => minutes switch
    {
        null => "the walk from it not timed",
        < 0.5 => "where the way begins",
        { } walk => $"{Minutes(walk)} on foot from where the way begins",
    };

    /// <summary>"gravel, about 8 cars, free, no height barrier".</summary>
    public static string Facts(this ParkingArea area)
    {
        var cars = area.Capacity is { } capacity ? $"about {capacity} {(capacity == 1 ? "car" : "cars")}" : "nobody has counted how many cars";
        var cost = area.Cost is null ? "cost not known" : Price(area.Cost, area.Currency);
        var barrier = area.HeightBarrierMetres is { } height
            ? string.Create(CultureInfo.InvariantCulture, $"height barrier {height:0.0#} m") : "no height barrier";
        return $"{char.ToUpperInvariant(area.Surface[0])}{area.Surface[1..]}, {cars}, {cost}, {barrier}.";
    }

    public static string Hours(LocalTime from, LocalTime until) => $"{Clock.Format(from)}–{Clock.Format(until)}";

    /// <summary>"35 min", "1 h 20 min".</summary>
    public static string Minutes(double minutes)
    {
        var whole = (int)Math.Round(minutes);
        return whole < 60 ? $"{whole} min" : whole % 60 == 0 ? $"{whole / 60} h" : $"{whole / 60} h {whole % 60} min";
    }

    public static string Day(LocalDate date) => date.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    private static string Day(AnnualDate date) => date.InYear(2000).ToString("d MMM", CultureInfo.InvariantCulture);
}
