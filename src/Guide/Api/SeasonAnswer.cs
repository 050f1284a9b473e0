using System.Text.Json.Serialization;
using Foreshore.Almanac.Light;
using Foreshore.Guide.Compositions;
using Foreshore.Guide.Locations;
using Foreshore.Guide.Shell;
using NodaTime;

namespace Foreshore.Guide.Api;

/// <summary>The season table of a composition.</summary>
/// <param name="Notice">Present when the guide is a demo.</param>
/// <param name="Cautions">The usual cautions of the country; read them before the rest.</param>
/// <param name="NotForNavigation">Stands in every answer.</param>
/// <param name="Composition">Its name.</param>
/// <param name="Page">Address of its page.</param>
/// <param name="Zone">IANA time zone of the clock hours.</param>
/// <param name="FacingDegrees">Clockwise from true north.</param>
/// <param name="AngleOfViewDegrees">Across the picture.</param>
/// <param name="Wanted">Any of these lights suits.</param>
/// <param name="NotComputed">Wanted lights that need cloud: not known, and not in the table.</param>
/// <param name="EarliestAlarm">The hours a member goes out: from this…</param>
/// <param name="LatestHome">…to this; earlier than the alarm means after midnight.</param>
/// <param name="Horizon">What the skyline was taken to be.</param>
/// <param name="NotJudged">What the table leaves out.</param>
/// <param name="Months">Twelve whole local months.</param>
/// <param name="BestHours">Up to three clock hours with the greatest share.</param>
/// <param name="PerLight">Each wanted light apart.</param>
/// <param name="Use">What tide and the way back leave of the light; null where nothing of them limits it, or where they are not known.</param>
/// <param name="UseWords">What the use counts, or why there is none though something limits it; null where nothing does.</param>
internal sealed record SeasonAnswer(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Notice, IReadOnlyList<string> Cautions, string NotForNavigation,
    string Composition, string Page, string Zone, double FacingDegrees, double AngleOfViewDegrees,
    IReadOnlyList<WantedLight> Wanted, IReadOnlyList<WantedLight> NotComputed, TimeOnly EarliestAlarm, TimeOnly LatestHome, string Horizon, string NotJudged,
    IReadOnlyList<SeasonMonthAnswer> Months, IReadOnlyList<SeasonHourAnswer> BestHours, IReadOnlyList<SeasonLayerAnswer> PerLight,
    SeasonUseAnswer? Use, string? UseWords)
{
    /// <summary>From the same table as the composition's page, so that both tell the same.</summary>
    public static SeasonAnswer Of(PictureView view, PictureUse use, Masthead head, SeasonTable table)
    {
        var (place, point, picture) = (view.Place, view.Stance, view.Picture);
        var hours = head.Hours;
        return new(head.DemoLine, view.From.At.Cautions.Lines, Words.NotForNavigation, picture.Name, picture.Address(place, point), place.ZoneId,
            Math.Round(picture.FacingDegrees, 3), Math.Round(picture.Lens.HorizontalAngleDegrees, 2), picture.Wanted, table.Unknown,
            hours.EarliestAlarm.ToTimeOnly(), hours.LatestHome.ToTimeOnly(),
            point.Skyline.IsAssumed ? "No skyline is recorded: an open sea horizon is assumed." : point.Skyline.HasUnknown ? "The recorded skyline; its unknown pieces count as level." : "The recorded skyline.",
            table.Use is null ? $"Light alone. Tide, ground, sea, access and closures are not judged here. {Words.SeaUnknown}"
                : $"Months, best hours and lights count light alone; the use counts tide and the way back as well. The sea is not judged here. {Words.SeaUnknown}",
            Monthly(table.Months), Hourly(table.BestHours), [.. table.PerLight.Select(l => new SeasonLayerAnswer(l.Light, Monthly(l.Months), Hourly(l.BestHours)))],
            SeasonUseAnswer.Of(table.Use, use, view.From.At.Tide), use.Words);
    }

    internal static IReadOnlyList<SeasonMonthAnswer> Monthly(IReadOnlyList<SeasonMonth> months) => [.. months.Select(m => new SeasonMonthAnswer(Iso(m.Month),
        [.. m.ShareByHour.Select(share => Math.Round(share, 3))], Math.Round(m.MeanMinutesWithinHours, 1), Math.Round(m.MeanMinutesUnrestricted, 1), m.Rank, m.UnrestrictedRank))];

    internal static IReadOnlyList<SeasonHourAnswer> Hourly(IReadOnlyList<SeasonHour> hours) =>
        [.. hours.Select(h => new SeasonHourAnswer(Iso(h.Month), h.Hour, Math.Round(h.Share, 3)))];

    private static string Iso(YearMonth month) => NodaTime.Text.YearMonthPattern.Iso.Format(month);
}

/// <summary>One month.</summary>
/// <param name="Month">Year and month, ISO 8601.</param>
/// <param name="ShareByHour">For each clock hour 0 to 23, the share of the month's days on which the light holds.</param>
/// <param name="MeanMinutesWithinHours">Minutes a day within the hours a member goes out.</param>
/// <param name="MeanMinutesUnrestricted">Minutes a day at any hour.</param>
/// <param name="Rank">1 is the best by minutes within the hours; null for a month without any.</param>
/// <param name="UnrestrictedRank">The same at any hour.</param>
internal sealed record SeasonMonthAnswer(string Month, IReadOnlyList<double> ShareByHour, double MeanMinutesWithinHours, double MeanMinutesUnrestricted, int? Rank, int? UnrestrictedRank);

/// <summary>A clock hour of a month.</summary>
/// <param name="Month">Year and month, ISO 8601.</param>
/// <param name="Hour">0 to 23.</param>
/// <param name="Share">Of the month's days.</param>
internal sealed record SeasonHourAnswer(string Month, int Hour, double Share);

/// <summary>The table of one wanted light.</summary>
/// <param name="Light">Which.</param>
/// <param name="Months">Its months.</param>
/// <param name="BestHours">Its best hours.</param>
internal sealed record SeasonLayerAnswer(WantedLight Light, IReadOnlyList<SeasonMonthAnswer> Months, IReadOnlyList<SeasonHourAnswer> BestHours);
