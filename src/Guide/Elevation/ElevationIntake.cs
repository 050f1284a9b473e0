using Foreshore.Guide.Locations;
using Foreshore.Guide.Members;
using Foreshore.Guide.Shell;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;

namespace Foreshore.Guide.Elevation;

/// <summary>From a posted form to a stored file.</summary>
internal static class ElevationIntake
{
    // A large file unpacks to a hundred megabytes: one at a time.
    private static readonly SemaphoreSlim One = new(1);

    public static async Task<IReadOnlyList<FieldFault>> AddAsync(IDbContextFactory<GuideDb> database, HttpContext http, Instant now)
    {
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        if (form.Files.GetFile("file") is not { FileName.Length: > 0 } posted)
            return [new("file", "Choose a file first.")];

        await One.WaitAsync(http.RequestAborted);
        try
        {
            Require.That(posted.Length <= UploadedFile.MostBytes, "The file is larger than 64 MB. Cut it to the coast you need: a skyline looks 100 km far.");
            var bytes = new byte[posted.Length];
            await using (var stream = posted.OpenReadStream())
                await stream.ReadExactlyAsync(bytes, http.RequestAborted);
            var (name, grid) = UploadedFile.Read(posted.FileName, bytes);
            var file = new ElevationFile(name, grid, now);
            await using var db = await database.CreateDbContextAsync(http.RequestAborted);
            db.Add(new AuditEntry(Act.ElevationStored, now, http.SignedIn()?.MemberId, words: file.Name));
            await db.KeepAsync(file, http.RequestAborted);
            return [];
        }
        catch (NotAcceptedException refused)
        {
            return [new("file", refused.Message)];
        }
        catch (DbUpdateException twice) when (twice.InnerException is PostgresException { SqlState: PostgresErrorCodes.UniqueViolation })
        {
            return [new("file", "Somebody else stored a file of this name in the same moment. Look at the list below, and send yours again if it is to replace theirs.")];
        }
        finally
        {
            One.Release();
        }
    }

    /// <summary>Skylines made from it stay as they are.</summary>
    public static async Task DeleteAsync(IDbContextFactory<GuideDb> database, SignedIn admin, int id, Instant now, CancellationToken cancel)
    {
        await using var db = await database.CreateDbContextAsync(cancel);
        if (await db.ElevationFiles.Where(f => f.Id == id).Select(f => f.Name).SingleOrDefaultAsync(cancel) is not { } name)
            return;
        await db.Database.CreateExecutionStrategy().ExecuteAsync(async () =>
        {
            db.ChangeTracker.Clear();
            await using var one = await db.Database.BeginTransactionAsync(cancel);
            // A file weighs megabytes: it is deleted without being read.
            if (await db.ElevationFiles.Where(f => f.Id == id).ExecuteDeleteAsync(cancel) > 0)
                db.Add(new AuditEntry(Act.ElevationDeleted, now, admin.MemberId, words: name));
            await db.SaveChangesAsync(cancel);
            await one.CommitAsync(cancel);
        });
    }
}
