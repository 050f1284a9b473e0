using Foreshore.Almanac.Light;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>
/// The one table of sun and moon that all places share: where they are doesn't depend on who asks, only the turn to a place's
/// own horizon does. It reaches from before the first of the current month (where season tables and rulers begin) to
/// 400 days on, and is made anew as the clock moves on. A second one reaches over the years that passages behind a subject may be
/// asked for; it is made when somebody first asks.
/// </summary>
public sealed class SharedSky(IClock clock)
{
    private static readonly Duration Back = Duration.FromDays(33);
    private static readonly Duration Ahead = Duration.FromDays(402);
    private static readonly Duration Kept = Duration.FromDays(1);

    /// <summary>The longest question reaches five years on from the last day of a year, and some days beyond.</summary>
    private const int YearsAhead = 7;

    private readonly Lock making = new();
    private volatile Made? made;
    private volatile SkyEphemeris? years;

    /// <summary>The table that holds for now; made on first use, then shared.</summary>
    public SkyEphemeris Current => For(clock.GetCurrentInstant());

    /// <summary>The same for a moment already read from the clock, so that one page computes with one now.</summary>
    public SkyEphemeris For(Instant now)
    {
        if (made is { } held && held.HoldsAt(now))
            return held.Sky;

        lock (making)
        {
            if (made is not { } other || !other.HoldsAt(now))
                made = other = Make(now);
            return other.Sky;
        }
    }

    /// <summary>A shared table that covers some dates and two days on each side, wherever on Earth; null where none of them does.</summary>
    public SkyEphemeris? Over(LocalDate from, LocalDate to, Instant now)
    {
        var (first, last) = (from.PlusDays(-4).AtMidnight().InUtc().ToInstant(), to.PlusDays(5).AtMidnight().InUtc().ToInstant());
        var near = For(now);
        if (Covers(near))
            return near;
        var (start, end) = (Instant.FromUtc(now.InUtc().Year - 1, 12, 1, 0, 0), Instant.FromUtc(now.InUtc().Year + YearsAhead, 1, 1, 0, 0));
        if (first < start || last > end)
            return null;
        lock (making)
            return years is { } held && Covers(held) ? held : years = SkyEphemeris.Covering(start, end);

        bool Covers(SkyEphemeris table) => table.From <= first && last <= table.To;
    }

    private static Made Make(Instant now)
    {
        var midnight = now.InUtc().Date.AtMidnight().InUtc().ToInstant();
        return new Made(SkyEphemeris.Covering(midnight - Back, midnight + Kept + Ahead), midnight);
    }

    private sealed record Made(SkyEphemeris Sky, Instant Midnight)
    {
        public bool HoldsAt(Instant now) => Midnight <= now && now < Midnight + Kept;
    }
}
