using Foreshore.Guide.Hosting;
using Foreshore.Guide.Tides;
using Microsoft.EntityFrameworkCore;

namespace Foreshore.Guide.Database;

/// <summary>Brings the tables, and the catalogue of tide stations, to what this code expects; forward only.</summary>
public static class Schema
{
    public static async Task MigrateAsync(string ownerConnection, string appRole, CancellationToken stop = default)
    {
        await using var db = GuideConnection.Open(ownerConnection);
        await RefuseNewerAsync(db, stop);
        await db.Database.MigrateAsync(stop);
        await DatabaseRoles.GrantAsync(ownerConnection, appRole, stop);
        await CatalogueLoad.RunAsync(ownerConnection, stop);
    }

    /// <summary>What <c>serve</c> asks of a server of one's own, where it has no right to change tables.</summary>
    public static async Task RefuseUnlessCurrentAsync(string connectionString, CancellationToken stop = default)
    {
        await using var db = GuideConnection.Open(connectionString);
        await RefuseNewerAsync(db, stop);
        if ((await db.Database.GetPendingMigrationsAsync(stop)).Any())
        {
            throw new OperatorException(
                "The database is older than this version of Foreshore.",
                "Make a backup, then run \"foreshore migrate\" with the owner's connection in ConnectionStrings:GuideOwner.");
        }
    }

    /// <summary>The changes this version knows.</summary>
    internal static IReadOnlyList<string> Known()
    {
        using var db = GuideConnection.Open("Host=/nowhere;Database=foreshore");
        return [.. db.Database.GetMigrations()];
    }

    /// <summary>The changes a database has gone through.</summary>
    internal static async Task<IReadOnlyList<string>> ChangesAsync(GuideDb db, CancellationToken stop) => [.. await db.Database.GetAppliedMigrationsAsync(stop)];

    private static async Task RefuseNewerAsync(GuideDb db, CancellationToken stop)
    {
        var unknown = (await db.Database.GetAppliedMigrationsAsync(stop)).Except(db.Database.GetMigrations()).ToList();
        if (unknown.Count > 0)
        {
            throw new OperatorException(
                $"The database was last used by a newer version of Foreshore (it holds the change {unknown[^1]}).",
                "Start that version or a later one; going back means restoring the backup made before the update.");
        }
    }
}
