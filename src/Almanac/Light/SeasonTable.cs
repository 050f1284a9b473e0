using Foreshore.Almanac.Stays;
using NodaTime;

namespace Foreshore.Almanac.Light;

/// <summary>When a scene works: twelve whole local months by the 24 hours of the clock.</summary>
/// <param name="Months">Twelve, from the one asked for; all computed wanted lights together.</param>
/// <param name="BestHours">
/// Up to three clock hours with the greatest share, at least 0.2, each with the month in which it has it; of equals the
/// hour of the better month first.
/// </param>
/// <param name="PerLight">Each computed wanted light apart.</param>
/// <param name="Unknown">Wanted lights that may hold in these months but can't be judged; they count for nothing in the table.</param>
/// <param name="Skyline">What must be said about the skyline.</param>
public sealed record SeasonTable(
    IReadOnlyList<SeasonMonth> Months,
    IReadOnlyList<SeasonHour> BestHours,
    IReadOnlyList<SeasonLayer> PerLight,
    IReadOnlyList<WantedLight> Unknown,
    SkylineCautions Skyline)
{
    /// <summary>The second layer: light, tide and access together, the sea left out. Null where nothing asks for it, or where it cannot be computed.</summary>
    public SeasonUse? Use { get; init; }

    /// <summary>Why there is no second layer though something asks for one; empty otherwise. The ranks are then those of light alone.</summary>
    public IReadOnlyList<StayUnknown> UseUnknown { get; init; } = [];

    /// <summary>The months that rank: by usable minutes where there is a second layer, else by light.</summary>
    public IReadOnlyList<SeasonMonth> Ranked => Use?.Months ?? Months;

    /// <summary>The best hours by the same.</summary>
    public IReadOnlyList<SeasonHour> BestRankedHours => Use?.BestHours ?? BestHours;
}

/// <summary>What tide and access leave of a season table's light.</summary>
/// <param name="Months">Twelve; shares and minutes are of usable minutes, ranks are by them.</param>
/// <param name="BestHours">As in <see cref="SeasonTable"/>, by usable minutes.</param>
public sealed record SeasonUse(IReadOnlyList<SeasonMonth> Months, IReadOnlyList<SeasonHour> BestHours)
{
    /// <summary>An hour is marked where light and tide hold together on half of the month's days.</summary>
    public const double MarkedShare = 0.5;

    /// <summary>Whether an hour of a month, by its place in the table, is marked.</summary>
    public bool IsMarked(int month, int hour) => Months[month].ShareByHour[hour] >= MarkedShare;
}

/// <summary>One wanted light of a season table, apart.</summary>
/// <param name="Light">Which.</param>
/// <param name="Months">Twelve, ranked among themselves.</param>
/// <param name="BestHours">As in <see cref="SeasonTable"/>.</param>
public sealed record SeasonLayer(WantedLight Light, IReadOnlyList<SeasonMonth> Months, IReadOnlyList<SeasonHour> BestHours);

/// <summary>One month of a season table.</summary>
/// <param name="Month">Which.</param>
/// <param name="ShareByHour">For each clock hour, 0 to 23, the share of the month's days that count for it, 0…1.</param>
/// <param name="MeanMinutesWithinHours">Minutes a day within the hours somebody goes out, mean over the month.</param>
/// <param name="MeanMinutesUnrestricted">Minutes a day at any hour, mean over the month.</param>
/// <param name="Rank">1 for the month with most minutes within the hours; none without any.</param>
/// <param name="UnrestrictedRank">The same by minutes at any hour.</param>
public sealed record SeasonMonth(
    YearMonth Month,
    IReadOnlyList<double> ShareByHour,
    double MeanMinutesWithinHours,
    double MeanMinutesUnrestricted,
    int? Rank,
    int? UnrestrictedRank);

/// <summary>One cell of a season table.</summary>
/// <param name="Month">Which month.</param>
/// <param name="Hour">Clock hour, 0…23.</param>
/// <param name="Share">Share of the month's days, 0…1.</param>
public sealed record SeasonHour(YearMonth Month, int Hour, double Share);
