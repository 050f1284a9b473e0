using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Foreshore.Almanac.Earth;
using Foreshore.Guide.Tides;
using NodaTime;
using NodaTime.Text;

namespace Foreshore.Guide.Api;

/// <summary>A stretch of time to be told the tide of, read from a query; whatever is wrong is said in words with what to write instead.</summary>
internal sealed record TideQuestion(Instant From, Instant To, Duration Step)
{
    /// <summary>A year at a time: more than that is a download of its own.</summary>
    public const int MostDays = 366;

    public const int MostHeights = 5000;

    private const int UsualMinutes = 10;

    /// <summary>No tide is known near these; a day can still be added to what lies between.</summary>
    private static readonly Instant Earliest = Instant.FromUtc(1, 1, 1, 0, 0), Latest = Instant.FromUtc(9000, 1, 1, 0, 0);

    /// <param name="from">Where it begins.</param>
    /// <param name="to">Where it ends; a day after it begins when left out.</param>
    /// <param name="step">Minutes from one height to the next; null where none are asked for.</param>
    /// <param name="hasSteps">Heights are asked for.</param>
    /// <param name="tide">What is asked.</param>
    /// <param name="question">The question, when it can be answered.</param>
    /// <param name="fault">What is wrong with it, when it cannot.</param>
    public static bool TryRead(string? from, string? to, string? step, bool hasSteps, PlaceTide tide,
        [NotNullWhen(true)] out TideQuestion? question, [NotNullWhen(false)] out string? fault)
    {
        question = null;
        fault = null;
        var valid = tide.Source.Valid;
        var start = Moment("from", from, valid, ref fault);
        var end = to is null ? start + Duration.FromDays(1) : Moment("to", to, valid, ref fault);
        var minutes = Minutes(step, ref fault);
        if (fault is not null) return false;

        if (end <= start)
            fault = "to must be later than from. Give the later time as to, or leave it out for one day.";
        else if (end - start > Duration.FromDays(MostDays))
            fault = $"from and to lie more than {MostDays} days apart. Ask for a year at a time.";
        else if (start < valid.Start || end > valid.End)
            fault = KnownFrom(valid);
        else if (hasSteps && (end - start).TotalMinutes / minutes >= MostHeights)
            fault = $"That makes more than {MostHeights} heights. Give a longer step or a shorter time.";
        if (fault is not null) return false;
        question = new(start, end, Duration.FromMinutes(minutes));
        return true;
    }

    /// <summary>A position as "44.9,-66.98".</summary>
    public static bool TryReadPosition(string? near, out Position position, [NotNullWhen(false)] out string? fault)
    {
        position = default;
        fault = "near must be latitude and longitude in degrees with decimal points, parted by a comma, for example 44.90,-66.98.";
        if (near?.Split(',') is not [var lat, var lon]
            || !double.TryParse(lat, NumberStyles.Float, CultureInfo.InvariantCulture, out var latitude) || !(Math.Abs(latitude) <= 90)
            || !double.TryParse(lon, NumberStyles.Float, CultureInfo.InvariantCulture, out var longitude) || !(Math.Abs(longitude) <= 180))
            return false;
        position = new Position(latitude, longitude);
        fault = null;
        return true;
    }

    /// <summary>How many stations to list.</summary>
    public static bool TryReadCount(string? text, out int count, [NotNullWhen(false)] out string? fault)
    {
        const int usual = 10;
        count = usual;
        fault = text is null || (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out count) && count is >= 1 and <= StationQueries.Most)
            ? null : $"count must be a whole number from 1 to {StationQueries.Most}; leave it out for {usual}.";
        return fault is null;
    }

    private static Instant Moment(string name, string? text, Interval valid, ref string? fault)
    {
        // An address turns the plus sign of an offset into a blank unless it was written as %2B.
        var typed = text?.Trim().Replace(' ', '+') ?? "";
        Instant? read = OffsetDateTimePattern.ExtendedIso.Parse(typed) is { Success: true, Value: var moment } ? moment.ToInstant()
            : LocalDatePattern.Iso.Parse(typed) is { Success: true, Value: var date } ? date.AtMidnight().InUtc().ToInstant() : null;
        if (read is { } instant && instant > Earliest && instant < Latest)
            return instant;
        fault ??= read is not null ? $"{name} is too far off. {KnownFrom(valid)}"
            : text is null
            ? $"{name} is missing. Give it as 2026-11-25T05:00:00Z, with another offset in place of Z, or as a date, which begins at midnight UTC."
            : $"{name} must be a time with its offset, for example 2026-11-25T05:00:00Z, or a date; \"{(typed.Length <= 40 ? typed : typed[..40] + "…")}\" is not.";
        return default;
    }

    private static string KnownFrom(Interval valid) => $"This station's tide is known from {valid.Start} to {valid.End}. Ask within that.";

    private static double Minutes(string? text, ref string? fault)
    {
        if (text is null) return UsualMinutes;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var minutes) && minutes is >= 1 and <= 1440) return minutes;
        fault ??= "step must be a whole number of minutes from 1 to 1440; leave it out for 10.";
        return UsualMinutes;
    }
}
