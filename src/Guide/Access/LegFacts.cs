using Foreshore.Almanac.Stays;
using Foreshore.Guide.Locations;
using NodaTime;

namespace Foreshore.Guide.Access;

/// <summary>What one must know of a ferry.</summary>
public sealed record FerryFacts
{
    private FerryFacts() { }

    public FerryFacts(double crossingMinutes, LocalTime firstSailing, LocalTime lastSailing, double? intervalMinutes, int lastCheckInMinutes)
    {
        CrossingMinutes = Require.Between(crossingMinutes, 1, 2880, "The crossing time", "minutes");
        (FirstSailing, LastSailing) = (firstSailing, lastSailing);
        IntervalMinutes = Require.BetweenOrNull(intervalMinutes, 1, 10080, "The interval between sailings", "minutes");
        LastCheckInMinutes = Require.Between(lastCheckInMinutes, 0, 240, "The last check-in before a sailing", "minutes");
    }

    public double CrossingMinutes { get; private init; }

    public LocalTime FirstSailing { get; private init; }

    public LocalTime LastSailing { get; private init; }

    public double? IntervalMinutes { get; private init; }

    /// <summary>Sailings towards the stance.</summary>
    public Timetable Out { get; private init; } = Timetable.Unknown;

    /// <summary>Sailings from the stance's side.</summary>
    public Timetable Back { get; private init; } = Timetable.Unknown;

    /// <summary>Minutes before the sailing by which one must be there.</summary>
    public int LastCheckInMinutes { get; private init; }

    /// <summary>Return fare for one person on foot.</summary>
    public decimal? Fare { get; private init; }

    /// <summary>ISO 4217 code of the fare.</summary>
    public string? Currency { get; private init; }

    /// <summary>Minutes saved over the road; null when there is no road.</summary>
    public double? MinutesSaved { get; private init; }

    public FerryFacts Sailing(Timetable outwards, Timetable back) => this with { Out = outwards, Back = back };

    /// <summary>A ferry of whose sailings nobody has said anything yet.</summary>
    public static FerryFacts WithoutSailings(double crossingMinutes, int lastCheckInMinutes) =>
        new(crossingMinutes, LocalTime.Midnight, LocalTime.Midnight, null, lastCheckInMinutes);

    /// <summary>The same boat at the same times, with other figures.</summary>
    public FerryFacts Take(double crossingMinutes, double? intervalMinutes, int lastCheckInMinutes) => this with
    {
        CrossingMinutes = Require.Between(crossingMinutes, 1, 2880, "The crossing time", "minutes"),
        IntervalMinutes = Require.BetweenOrNull(intervalMinutes, 1, 10080, "The interval between sailings", "minutes"),
        LastCheckInMinutes = Require.Between(lastCheckInMinutes, 0, 240, "The last check-in before a sailing", "minutes"),
    };

    /// <summary>What it costs, and the minutes it saves; null: not known, or no road.</summary>
    public FerryFacts Costing(decimal? fare, string? currency, double? minutesSaved)
    {
        Require.That(fare is not null || currency is null, "A currency without a fare says nothing. Enter the fare, or clear the currency.");
        Require.That(fare is null || currency is not null, "A fare needs its currency, as the three letters of ISO 4217, for example USD.");
        var cleared = this with { Fare = null, Currency = null, MinutesSaved = Require.BetweenOrNull(minutesSaved, 0, 1440, "The time saved over the road", "minutes") };
        return fare is { } price ? cleared.Costing(price, currency!) : cleared;
    }

    public FerryFacts Costing(decimal fare, string currency)
    {
        Require.That(fare is >= 0 and <= 100_000, "The fare is out of range. Enter the price of one return ticket on foot.");
        Require.That(currency.Length == 3 && currency.All(char.IsAsciiLetterUpper), $"\"{currency}\" is not a currency code. Use the three letters of ISO 4217, for example USD.");
        return this with { Fare = fare, Currency = currency };
    }

    public FerryFacts Saving(double minutes) => this with { MinutesSaved = Require.Between(minutes, 0, 1440, "The time saved over the road", "minutes") };
}

/// <summary>Passable, both ways, only while the tide is below a height.</summary>
public sealed record Crossing
{
    private Crossing() { }

    public Crossing(TideHeight passableBelow, bool isBeach, double? minutesFromStance)
    {
        PassableBelow = passableBelow;
        IsBeach = isBeach;
        MinutesFromStance = Require.BetweenOrNull(minutesFromStance, 0, 600, "The walk from the stance to beyond the crossing", "minutes");
    }

    public TideHeight PassableBelow { get; private init; } = null!;

    /// <summary>On a beach run-up counts, elsewhere half the significant wave height.</summary>
    public bool IsBeach { get; private init; }

    /// <summary>Measured walk from the stance to beyond the crossing; null: the whole walk to beyond reach counts.</summary>
    public double? MinutesFromStance { get; private init; }

    /// <summary>Why no wave allowance is due; only a warden writes it. Null: the allowance is due.</summary>
    public string? ShelteredBecause { get; private init; }

    public Crossing Sheltered(string because) => this with { ShelteredBecause = Require.Text(because, 300, "Why the crossing is sheltered") };
}
