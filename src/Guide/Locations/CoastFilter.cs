using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Access;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Shell;
using Foreshore.Guide.Tides;
using NodaTime;

namespace Foreshore.Guide.Locations;

/// <summary>What shortens the coast: words searched for and the wishes that matter on a map. All of it stands in the address.</summary>
public sealed record CoastFilter
{
    public string? Words { get; private init; }

    /// <summary>The most demanding footing one accepts.</summary>
    public Footing? Footing { get; private init; }

    public WantedLight? Light { get; private init; }

    /// <summary>What the tide does now; places whose tide is not known are left out and counted.</summary>
    public TideState? Tide { get; private init; }

    public bool Parking { get; private init; }

    public bool Overnight { get; private init; }

    /// <summary>As the crow flies from the home point; asked for only where one is set.</summary>
    public double? WithinKilometres { get; private init; }

    /// <summary>What could not be read, in words that say what to do; null when all could.</summary>
    public string? Fault { get; private init; }

    /// <summary>Whether the database alone can say what fits: a long coast then need not be read whole.</summary>
    public bool IsOfWordsAlone => this == new CoastFilter { Words = Words };

    public bool IsEmpty => this with { Fault = null } == new CoastFilter();

    /// <summary>More than words is asked for: the disclosure with the filters stands open.</summary>
    public bool IsMoreThanWords => !(this with { Words = null }).IsEmpty;

    public static CoastFilter From(IQueryCollection query)
    {
        string Value(string name) => query[name].ToString().Trim();

        var filter = new CoastFilter
        {
            Words = Value("q") is { Length: > 0 } words ? words : null,
            Parking = Value("parking") == "yes",
            Overnight = Value("overnight") == "yes",
        };
        if (Value("footing") is { Length: > 0 } footing)
            filter = PartOfAddress.TryRead<Footing>(footing, out var known) ? filter with { Footing = known }
                : filter with { Fault = "The footing in this address is none the guide knows. Choose one from the list." };
        if (Value("light") is { Length: > 0 } light)
            filter = PartOfAddress.TryRead<WantedLight>(light, out var known) ? filter with { Light = known }
                : filter with { Fault = "The light in this address is none the guide knows. Choose one from the list." };
        if (Value("tide") is { Length: > 0 } tide)
            filter = PartOfAddress.TryRead<TideState>(tide, out var known) ? filter with { Tide = known }
                : filter with { Fault = "The state of tide in this address is none the guide knows. Choose one from the list." };
        if (Value("within") is { Length: > 0 } within)
            filter = TypedValue.Number(within) is > 0 and <= 20_000 and var kilometres
                ? filter with { WithinKilometres = kilometres }
                : filter with { Fault = "The distance from home in this address can't be read. Enter kilometres as a number above 0, like 40." };
        return filter;
    }

    /// <summary>One stance meets both: a light that is had from a cliff's edge is none for somebody who stays on level ground.</summary>
    private bool Keeps(VantagePoint stance) =>
        (Footing is not { } footing || stance.Footing <= footing) && (Light is not { } light || stance.Compositions.Any(c => c.Wanted.Contains(light)));

    /// <summary>Whether a place already met by the search stays on the shortened coast. What isn't recorded never counts as met.</summary>
    public bool Keeps(Location place, Position? home, LocalDate today) =>
        (Footing is null && Light is null || place.VantagePoints.Any(Keeps))
        && (!Parking || place.Parking.Any(area => !place.IsClosed(area, today)))
        && (!Overnight || place.OvernightRules.Any(rule => rule.Standing == OvernightStanding.Allowed))
        && (WithinKilometres is not { } kilometres || home is not { } from || Geodesic.Between(from, place.Position).Metres <= kilometres * 1000);
}
