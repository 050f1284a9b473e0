using Microsoft.EntityFrameworkCore;

namespace Foreshore.Guide.Members;

/// <summary>
/// One act of a member after the other, so that fifty forms at once cannot pass a limit together. An advisory lock of the database
/// holds on every node and marks no row, so nothing that stays on the disk tells who acted when.
/// </summary>
public static class Turns
{
    /// <summary>In this process they wait here, not each on a connection of its own: one member's rush must not take the pool from everybody else.</summary>
    private static readonly SemaphoreSlim[] Doors = [.. Enumerable.Range(0, 64).Select(_ => new SemaphoreSlim(1))];

    /// <summary>Runs the act in a transaction while no other act of this member runs; commits where it says so. Tried again from the start when the connection is lost.</summary>
    public static async Task<T> InTurnAsync<T>(this IDbContextFactory<GuideDb> database, Guid member, Func<GuideDb, Task<(T Outcome, bool Commits)>> act, CancellationToken cancel)
    {
        var door = Doors[(uint)member.GetHashCode() % Doors.Length];
        await door.WaitAsync(cancel);
        try
        {
            await using var db = await database.CreateDbContextAsync(cancel);
            var (answer, _) = await db.OnceAsync(async () =>
            {
                db.ChangeTracker.Clear();
                await db.Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock(hashtextextended({member.ToString()}, 0))", cancel);
                return await act(db);
            }, turn => turn.Commits, cancel);
            return answer;
        }
        finally
        {
            door.Release();
        }
    }

    /// <summary>Another context on the same connection, inside the same transaction: for reading on a copy that is thrown away.</summary>
    public static async Task<GuideDb> BesideAsync(this IDbContextFactory<GuideDb> database, GuideDb db, CancellationToken cancel)
    {
        var beside = await database.CreateDbContextAsync(cancel);
        beside.Database.SetDbConnection(db.Database.GetDbConnection());
        return beside;
    }
}
