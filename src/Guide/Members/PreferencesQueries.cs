using Foreshore.Almanac.Light;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Members;

internal static class PreferencesQueries
{
    /// <summary>Hours out of a guide whose club has set none yet: common practice, no source.</summary>
    private static readonly HoursOut BeforeSettings = new(new LocalTime(4, 0), new LocalTime(23, 0));

    /// <summary>The club's hours out, which hold for whoever chose none of their own.</summary>
    public static async Task<HoursOut> UsualHoursAsync(this GuideDb db, CancellationToken cancel = default)
    {
        var club = await db.ClubSettings.Select(settings => new { settings.EarliestAlarm, settings.LatestHome }).SingleOrDefaultAsync(cancel);
        return club is null ? BeforeSettings : new HoursOut(club.EarliestAlarm, club.LatestHome);
    }
}
