using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>Sailings of one direction within a span of time.</summary>
/// <param name="Departures">In order, each once.</param>
/// <param name="Unknown">When nobody knows whether or when it sails; disjoint and in order. Otherwise it does not sail at any other time.</param>
public sealed record Sailings(IReadOnlyList<Instant> Departures, IReadOnlyList<Interval> Unknown);

/// <summary>The sailings of one local date.</summary>
public abstract record DaySailings
{
    private DaySailings() { }

    /// <summary>A first and a last sailing; with an interval also those between, counted from the first by the clock.</summary>
    /// <param name="First">Local time.</param>
    /// <param name="Last">Local time; before <paramref name="First"/> that is on the next day.</param>
    /// <param name="IntervalMinutes">Minutes, more than zero; null: nothing is known of what sails between, so nothing counts.</param>
    public sealed record FirstLast(LocalTime First, LocalTime Last, int? IntervalMinutes = null) : DaySailings;

    /// <summary>The sailings, one by one.</summary>
    public sealed record Times : DaySailings
    {
        /// <summary>Sailings at clock times of the date.</summary>
        /// <param name="at">Local times; at least one.</param>
        /// <exception cref="ArgumentException">There is none.</exception>
        public Times(IEnumerable<LocalTime> at)
        {
            At = [.. at.Order().Distinct()];
            if (At.Count == 0) throw new ArgumentException("A list of sailings has at least one.", nameof(at));
        }

        /// <summary>In order, each once.</summary>
        public IReadOnlyList<LocalTime> At { get; }

        /// <inheritdoc />
        public bool Equals(Times? other) => other is not null && At.SequenceEqual(other.At);

        /// <inheritdoc />
        public override int GetHashCode() => At.Aggregate(0, HashCode.Combine);
    }

    /// <summary>Sails when somebody asks and it is agreed.</summary>
    public sealed record OnRequest : DaySailings;

    /// <summary>Does not sail.</summary>
    public sealed record None : DaySailings;
}

/// <summary>The sailings of some dates.</summary>
/// <param name="Dates">For which dates it speaks.</param>
/// <param name="Sailings">The sailings of each.</param>
public sealed record SailingRule(RuleDates Dates, DaySailings Sailings);

/// <summary>
/// One direction of a ferry as data: rules in order, of which the first that speaks for a local date counts, and sailings agreed
/// by hand. A date that no rule speaks for has no sailing; without any rule nothing is known of any date.
/// </summary>
public sealed class Timetable : IEquatable<Timetable>
{
    /// <summary>Sailings by rules, and those agreed.</summary>
    /// <param name="rules">In order; none: nothing is known.</param>
    /// <param name="agreed">Local dates and times.</param>
    public Timetable(IEnumerable<SailingRule> rules, IEnumerable<LocalDateTime>? agreed = null) =>
        (Rules, Agreed) = ([.. rules], [.. (agreed ?? []).Order().Distinct()]);

    /// <summary>Nothing is known.</summary>
    public static Timetable Unknown { get; } = new([]);

    /// <summary>The rules, in order.</summary>
    public IReadOnlyList<SailingRule> Rules { get; }

    /// <summary>Sailings entered by hand, local time, in order; they come on top of the rules.</summary>
    public IReadOnlyList<LocalDateTime> Agreed { get; }

    /// <summary>What the rules say of a local date; null: nothing is known.</summary>
    public DaySailings? On(LocalDate date) => Rules.Count == 0 ? null : Rules.FirstOrDefault(rule => rule.Dates.Hold(date))?.Sailings ?? new DaySailings.None();

    /// <summary>
    /// The sailings within a span of time. On request: not known until a sailing is agreed for the date. A time that the clock skips
    /// is the moment of the change; of one that it shows twice the earlier is given, and from there to the later nothing is known.
    /// </summary>
    /// <param name="span">Both ends set; the start is included, the end is not.</param>
    /// <param name="zone">The clock of the place.</param>
    public Sailings Over(Interval span, DateTimeZone zone)
    {
        List<LocalDateTime> sailings = [.. Agreed];
        List<Interval> unknown = [];
        foreach (var date in span.Around(zone))
        {
            switch (On(date))
            {
                case DaySailings.FirstLast day: sailings.AddRange(Between(date, day)); break;
                case DaySailings.Times day: sailings.AddRange(day.At.Select(time => date + time)); break;
                case DaySailings.None: break;
                default:
                    if (!Agreed.Any(sailing => sailing.Date == date)) unknown.Add(zone.Whole(date));
                    break;
            }
        }

        var departures = new SortedSet<Instant>();
        foreach (var sailing in sailings)
        {
            var (earlier, later) = (zone.Shutting(sailing), zone.Opening(sailing));
            departures.Add(earlier);
            if (earlier < later) unknown.Add(new(earlier, later));
        }

        return new([.. departures.Where(time => time >= span.Start && time < span.End)], unknown.Joined(span));
    }

    /// <inheritdoc />
    public bool Equals(Timetable? other) => other is not null && Rules.SequenceEqual(other.Rules) && Agreed.SequenceEqual(other.Agreed);

    /// <inheritdoc />
    public override bool Equals(object? obj) => Equals(obj as Timetable);

    /// <inheritdoc />
    public override int GetHashCode() => Agreed.Aggregate(Rules.Aggregate(0, HashCode.Combine), HashCode.Combine);

    private static IEnumerable<LocalDateTime> Between(LocalDate date, DaySailings.FirstLast day)
    {
        var last = (day.Last < day.First ? date.PlusDays(1) : date) + day.Last;
        if (day.IntervalMinutes is > 0 and { } interval)
        {
            for (var sailing = date + day.First; sailing < last; sailing = sailing.PlusMinutes(interval))
                yield return sailing;
        }
        else
        {
            yield return date + day.First;
        }

        yield return last;
    }
}
