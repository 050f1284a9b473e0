using Foreshore.Almanac.Light;
using Foreshore.Guide.Members;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Shell;

/// <summary>
/// The head of the page, kept for a minute: every page needs it and it changes once in years. When the database does not
/// answer, the last one read stands, so that the page about the fault can still be printed.
/// </summary>
public sealed class MastheadQueries(IDbContextFactory<GuideDb> database, IClock clock)
{
    private static readonly Duration Keep = Duration.FromMinutes(1);
    private volatile Kept kept = new(Masthead.Unnamed, Instant.MinValue);

    /// <summary>As read before this request's page began: a layout that waited for it could be sent out without its demo line.</summary>
    public Masthead Latest => kept.Masthead;

    /// <summary>A setting was changed here: the next page reads it anew.</summary>
    public void Forget() => kept = kept with { ReadAt = Instant.MinValue };

    public async ValueTask<Masthead> CurrentAsync(CancellationToken cancel = default)
    {
        var now = clock.GetCurrentInstant();
        if (kept.ReadAt > now - Keep && kept.ReadAt <= now)
            return kept.Masthead;

        try
        {
            await using var db = await database.CreateDbContextAsync(cancel);
            var club = await db.Set<ClubSettings>().AsNoTracking().SingleOrDefaultAsync(cancel);
            kept = new(club is null ? Masthead.Unnamed : new(club.ClubName, club.Banner)
            {
                Hours = new HoursOut(club.EarliestAlarm, club.LatestHome),
                Introduction = club.Introduction,
                VisitorsMayRead = club.VisitorsMayRead,
            }, now);
        }
        catch (Exception fault) when (fault is System.Data.Common.DbException or InvalidOperationException or TimeoutException or ArgumentException)
        {
            // Whether the database is there is said by /health and by the page itself.
            return kept.Masthead;
        }

        return kept.Masthead;
    }

    private sealed record Kept(Masthead Masthead, Instant ReadAt);
}
