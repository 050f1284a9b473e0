using Foreshore.Almanac.Light;
using NodaTime;

namespace Foreshore.Guide.Compositions;

/// <summary>
/// The one table of sun and moon that all places share: where they are doesn't depend on who asks, only the turn to a place's
/// own horizon does. It reaches from before the first of the current month (where season tables and rulers begin) to
/// 400 days on, and is made anew as the clock moves on.
/// </summary>
public sealed class SharedSky(IClock clock)
{
    private static readonly Duration Back = Duration.FromDays(33);
    private static readonly Duration Ahead = Duration.FromDays(402);
    private static readonly Duration Kept = Duration.FromDays(1);

    private readonly Lock making = new();
    private volatile Made? made;

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
