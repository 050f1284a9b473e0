using System.Buffers.Binary;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Foreshore.Guide.Members;

/// <summary>
/// Five wrong passwords for one account in a quarter of an hour, twenty tries from one machine in a minute; then one waits. It counts an
/// address nobody has like any other, so that waiting tells nothing. A passkey is not held up by what others tried with a password.
/// </summary>
public sealed class SignInLimits(IDbContextFactory<GuideDb> database, IClock clock)
{
    public const int MostPerAccount = 5;
    public const int MostPerMachine = 20;
    public static readonly Duration AccountWindow = Duration.FromMinutes(15);
    public static readonly Duration MachineWindow = Duration.FromMinutes(1);

    /// <summary>Counts one try. Null: go on. Else how long to wait; such a try is not counted, so waiting comes to an end.</summary>
    public async Task<Duration?> CountAsync(string? account, string? machine, CancellationToken cancel)
    {
        var now = clock.GetCurrentInstant();
        await using var db = await database.CreateDbContextAsync(cancel);
        return await db.Database.CreateExecutionStrategy().ExecuteAsync(async () =>
        {
            db.ChangeTracker.Clear();
            await using var one = await db.Database.BeginTransactionAsync(cancel);
            var wait = await WaitAsync(db, SignInFailure.MachineHash(machine), MostPerMachine, MachineWindow, now, cancel)
                ?? (account is null ? null : await WaitAsync(db, SignInFailure.AccountHash(account), MostPerAccount, AccountWindow, now, cancel));
            if (wait is null)
            {
                db.Add(SignInFailure.OfMachine(machine, now));
                if (account is not null)
                    db.Add(SignInFailure.OfAccount(account, now));
                await db.SaveChangesAsync(cancel);
                await db.Set<SignInFailure>().Where(f => f.At <= now - AccountWindow).ExecuteDeleteAsync(cancel);
            }

            await one.CommitAsync(cancel);
            return wait;
        });
    }

    /// <summary>The right password: what went before no longer counts.</summary>
    public async Task ForgetAsync(string account, CancellationToken cancel)
    {
        var subject = SignInFailure.AccountHash(account);
        await using var db = await database.CreateDbContextAsync(cancel);
        await db.Set<SignInFailure>().Where(f => f.Subject == subject).ExecuteDeleteAsync(cancel);
    }

    private static async Task<Duration?> WaitAsync(GuideDb db, byte[] subject, int most, Duration window, Instant now, CancellationToken cancel)
    {
        // Tries that come at the same moment stand in line, or they would all find themselves the first.
        var line = BinaryPrimitives.ReadInt64BigEndian(subject);
        await db.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock({line})", cancel);
        var since = now - window;
        var tries = await db.Set<SignInFailure>().Where(f => f.Subject == subject && f.At > since).OrderByDescending(f => f.At).Take(most).Select(f => f.At).ToListAsync(cancel);
        return tries.Count < most ? null : tries[^1] + window - now;
    }
}
