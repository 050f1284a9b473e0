using Foreshore.Almanac.Earth;
using Foreshore.Almanac.Sun;
using NodaTime;

namespace Foreshore.Almanac.Stays;

/// <summary>When something can be passed or used.</summary>
/// <param name="Open">Disjoint and in order; what touches is one.</param>
/// <param name="Unknown">When nobody knows; as the other, and apart from it. All else is shut.</param>
public sealed record Availability(IReadOnlyList<Interval> Open, IReadOnlyList<Interval> Unknown);

/// <summary>
/// The hours of a way, a car park or a place as data: rules in order, of which the first that speaks for a local date counts.
/// A date that none speaks for is shut.
/// </summary>
public sealed class OpeningHours : IEquatable<OpeningHours>
{
    /// <summary>Hours by rules.</summary>
    /// <param name="rules">In order; at least one.</param>
    /// <exception cref="ArgumentException">There is no rule.</exception>
    public OpeningHours(IEnumerable<HoursRule> rules)
    {
        Rules = [.. rules];
        if (Rules.Count == 0)
            throw new ArgumentException("Hours have at least one rule; where nothing is known there are no hours.", nameof(rules));
    }

    /// <summary>Open at any hour of every date.</summary>
    public static OpeningHours Always { get; } = Every(new DayHours.Always());

    /// <summary>The rules, in order.</summary>
    public IReadOnlyList<HoursRule> Rules { get; }

    /// <summary>Whether it is never shut and always known.</summary>
    public bool IsAlways
    {
        get
        {
            foreach (var rule in Rules)
            {
                if (rule.Hours is not DayHours.Always) return false;
                if (rule.Dates.IsEvery) return true;
            }

            return false;
        }
    }

    /// <summary>The same hours on every date.</summary>
    public static OpeningHours Every(DayHours hours) => new([new(RuleDates.Every, hours)]);

    /// <summary>The rule that counts on a local date; null: none speaks for it, and it is shut.</summary>
    public HoursRule? On(LocalDate date)
    {
        foreach (var rule in Rules)
            if (rule.Dates.Hold(date)) return rule;
        return null;
    }

    /// <summary>
    /// When it is open within a span of time. When the clock is changed, a time that it skips is the moment of the change; of one
    /// that it shows twice the later opens and the earlier shuts.
    /// </summary>
    /// <param name="span">Both ends set.</param>
    /// <param name="zone">The clock of the place.</param>
    /// <param name="position">Where the sun is seen from; to a kilometre is enough, which is 4 s of time.</param>
    /// <param name="sun">Covers the span.</param>
    /// <param name="permits">Local dates, ends included, of the letters in force.</param>
    /// <exception cref="ArgumentOutOfRangeException">The ephemeris does not cover the span.</exception>
    public Availability Over(Interval span, DateTimeZone zone, Position position, SunEphemeris sun, IReadOnlyList<DateInterval> permits)
    {
        ArgumentNullException.ThrowIfNull(sun);
        ArgumentNullException.ThrowIfNull(permits);
        if (span.Start < sun.From || span.End > sun.To)
            throw new ArgumentOutOfRangeException(nameof(span), span, "The sun's ephemeris has to cover the span.");
        if (IsAlways)
            return new(new[] { span }.Joined(span), []);

        List<Interval> open = [], unknown = [];
        var dates = new SunDates(position, zone, sun);
        foreach (var date in span.Around(zone))
        {
            if (On(date) is not { } rule) continue;
            var byPermit = rule.OtherwiseByPermit || rule.Hours is DayHours.ByPermit;
            if (rule.Hours is DayHours.Always || byPermit && permits.Any(permit => permit.Contains(date)))
                open.Add(zone.Whole(date));
            else if (rule.Hours is DayHours.OnRequest)
                unknown.Add(zone.Whole(date));
            else if (rule.Hours is DayHours.Sun hours && dates.Open(hours, date) is { } lit)
                open.Add(lit);
            else if (rule.Hours is DayHours.Clock clock)
                AddClock(open, clock, date, zone);
        }

        var joined = open.Joined(span);
        return new(joined, unknown.Joined(span).Without(joined));
    }

    /// <inheritdoc />
    public bool Equals(OpeningHours? other) => other is not null && Rules.SequenceEqual(other.Rules);

    /// <inheritdoc />
    public override bool Equals(object? obj) => Equals(obj as OpeningHours);

    /// <inheritdoc />
    public override int GetHashCode() => Rules.Aggregate(0, HashCode.Combine);

    private static void AddClock(List<Interval> open, DayHours.Clock hours, LocalDate date, DateTimeZone zone)
    {
        var end = hours.Until <= hours.From ? date.PlusDays(1) : date;
        var (opens, shuts) = (zone.Opening(date + hours.From), zone.Shutting(end + hours.Until));
        // Hours that lie within what the clock skips, or within the hour that it shows twice, are no hours.
        if (opens < shuts) open.Add(new(opens, shuts));
    }
}
