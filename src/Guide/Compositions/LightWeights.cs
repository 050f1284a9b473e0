using Foreshore.Almanac.Light;
using Foreshore.Almanac.Stays;

namespace Foreshore.Guide.Compositions;

/// <summary>What kept light takes in memory, bytes: a little more than the objects hold, which a test counts field by field.</summary>
internal static class LightWeights
{
    private const int Head = 300;
    private const int List = 100;
    private const int Month = 330;
    private const int BestHour = 40;
    private const int Date = 1900;
    private const int Opening = 40;
    private const int Passage = 120;

    /// <summary>What a page draws of one picture. It varies little: the same figures with more or fewer points.</summary>
    public const int Drawings = 60_000;

    public static long Of(SeasonTable table) => Head + Of(table.Months, table.BestHours)
        + (table.Use is { } use ? Of(use.Months, use.BestHours) : 0) + table.PerLight.Where(layer => !ReferenceEquals(layer.Months, table.Months)).Sum(layer => Of(layer.Months, layer.BestHours));

    /// <summary>Dates, and once for all of them the ways they hold for, with every opening of a year.</summary>
    public static long Of(IReadOnlyList<GoodDate> dates) => List + (long)dates.Count * Date
        + dates.SelectMany(date => date.Stays).OfType<Stay>().Select(stay => stay.Plan).Distinct(ReferenceEqualityComparer.Instance).Cast<StayPlan>()
            .Sum(plan => Head + plan.ClockGates.Sum(gate => (long)gate.Open.Count) * Opening);

    public static long Of(SubjectAlignments behind) => List * 3 + (long)(behind.Found.Count + behind.FullMoons.Count) * Passage;

    private static long Of(IReadOnlyList<SeasonMonth> months, IReadOnlyList<SeasonHour> best) => Head + (long)months.Count * Month + best.Count * BestHour;
}
