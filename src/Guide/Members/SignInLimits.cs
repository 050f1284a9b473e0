using System.Buffers.Binary;
using System.Net;
using Foreshore.Guide.Hosting;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>One try: whose account (null: a passkey says so itself), from where, and on which device that has signed in to it before.</summary>
public sealed record SignInTry(string? Account, string Machine, string Network, Guid? Device = null)
{
    internal static SignInTry Of(IPAddress? address, string? account, Guid? device = null) => new(account, Client.Of(address), Client.NetworkOf(address), device);
}

/// <summary>How long to wait; and whether an account was tried too often, rather than a machine having asked for too much.</summary>
public sealed record SignInWait(Duration Time, bool IsOfAccount);

/// <summary>
/// Five wrong passwords for one account from one network in a quarter of an hour, twenty-five from anywhere in an hour, twenty tries from one
/// machine in a minute; then one waits. Whoever tries for somebody else's account locks out their own network, at most all devices the
/// account never was on: those it was on count for themselves, and a passkey is not held up by what others tried with a password. An address
/// nobody has counts like any other, so that waiting tells nothing.
/// </summary>
public sealed class SignInLimits(IDbContextFactory<GuideDb> database, IClock clock)
{
    public const int MostPerAccount = 5;
    public const int MostFromAnywhere = 25;
    public const int MostPerMachine = 20;
    public static readonly Duration AccountWindow = Duration.FromMinutes(15);
    public static readonly Duration AnywhereWindow = Duration.FromHours(1);
    public static readonly Duration MachineWindow = Duration.FromMinutes(1);

    /// <summary>Counts one try. Null: go on. Else how long to wait; such a try is not counted, so waiting comes to an end.</summary>
    public async Task<SignInWait?> CountAsync(SignInTry tried, CancellationToken cancel)
    {
        var limits = LimitsOn(tried);
        await using var db = await database.CreateDbContextAsync(cancel);
        return await db.OnceAsync(async () =>
        {
            db.ChangeTracker.Clear();
            var now = clock.GetCurrentInstant();
            await StandInLineAsync(db, limits, now, cancel);
            foreach (var limit in limits)
                if (await WaitAsync(db, limit, now, cancel) is { } wait)
                    return new SignInWait(wait, limit.IsOfAccount);

            db.AddRange(limits.Select(limit => new SignInFailure(limit.Subject, now)));
            await db.SaveChangesAsync(cancel);
            await db.Set<SignInFailure>().Where(f => f.At <= now - AnywhereWindow).ExecuteDeleteAsync(cancel);
            return null;
        }, _ => true, cancel);
    }

    /// <summary>The right password: what went wrong before, from there or on this device, no longer counts.</summary>
    public async Task ForgetAsync(SignInTry tried, CancellationToken cancel)
    {
        var subjects = LimitsOn(tried).Where(limit => limit.IsOfAccount && limit.Window == AccountWindow).Select(limit => limit.Subject).ToList();
        await using var db = await database.CreateDbContextAsync(cancel);
        await db.Set<SignInFailure>().Where(f => subjects.Contains(f.Subject)).ExecuteDeleteAsync(cancel);
    }

    private sealed record Limit(byte[] Subject, int Most, Duration Window, bool IsOfAccount);

    private static List<Limit> LimitsOn(SignInTry tried)
    {
        List<Limit> limits = [new(SignInFailure.HashOf($"machine {tried.Machine}"), MostPerMachine, MachineWindow, IsOfAccount: false)];
        if (tried is { Account: { } account, Device: { } device })
            limits.Add(new(SignInFailure.HashOf($"account {account} on {device}"), MostPerAccount, AccountWindow, IsOfAccount: true));
        else if (tried.Account is { } strange)
        {
            limits.Add(new(SignInFailure.HashOf($"account {strange} from {tried.Network}"), MostPerAccount, AccountWindow, IsOfAccount: true));
            limits.Add(new(SignInFailure.HashOf($"account {strange}"), MostFromAnywhere, AnywhereWindow, IsOfAccount: true));
        }

        return limits;
    }

    /// <summary>
    /// Tries that come at the same moment stand in line, or they would all find themselves the first. One that a clock which was ahead wrote
    /// down counts from now: a wait is never longer than its window, whatever the clock did.
    /// </summary>
    private static async Task StandInLineAsync(GuideDb db, IReadOnlyList<Limit> limits, Instant now, CancellationToken cancel)
    {
        foreach (var line in limits.Select(limit => BinaryPrimitives.ReadInt64BigEndian(limit.Subject)).Order())
            await db.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock({line})", cancel);
        var subjects = limits.Select(limit => limit.Subject).ToList();
        await db.Set<SignInFailure>().Where(f => subjects.Contains(f.Subject) && f.At > now).ExecuteUpdateAsync(set => set.SetProperty(f => f.At, now), cancel);
    }

    private static async Task<Duration?> WaitAsync(GuideDb db, Limit limit, Instant now, CancellationToken cancel)
    {
        var since = now - limit.Window;
        var tries = await db.Set<SignInFailure>().Where(f => f.Subject == limit.Subject && f.At > since).OrderByDescending(f => f.At).Take(limit.Most).Select(f => f.At).ToListAsync(cancel);
        return tries.Count < limit.Most ? null : tries[^1] + limit.Window - now;
    }
}
