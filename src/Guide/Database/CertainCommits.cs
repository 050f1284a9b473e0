using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Foreshore.Guide.Database;

/// <summary>
/// Writes that happen once although they are retried. A connection that breaks during a commit leaves it open whether the commit landed;
/// repeating the work blindly would store it twice. So each transaction notes its number, and after such a break the server is asked what
/// became of it (PostgreSQL 18 manual, 9.27.9, pg_xact_status).
/// </summary>
internal static class CertainCommits
{
    private static readonly TimeSpan BetweenQuestions = TimeSpan.FromMilliseconds(50);
    private const int MostQuestions = 40;

    /// <summary>Runs the work in one transaction, retried as often as the context allows and committed once.</summary>
    /// <param name="db">Without a transaction so far.</param>
    /// <param name="work">May run several times: it begins by reading what it needs.</param>
    /// <param name="keeps">False for an answer after which nothing is kept.</param>
    /// <param name="cancel">Whoever asked has gone.</param>
    public static Task<T> OnceAsync<T>(GuideDb db, Func<Task<T>> work, Func<T, bool> keeps, CancellationToken cancel) =>
        db.Database.CreateExecutionStrategy().ExecuteAsync(
            new Attempt<T>(),
            async (_, attempt, stop) =>
            {
                attempt.Number = null;
                await using var transaction = await db.Database.BeginTransactionAsync(stop);
                attempt.Answer = await work();
                if (keeps(attempt.Answer))
                {
                    attempt.Number = await AskAsync(db, "SELECT pg_current_xact_id()::text", stop);
                    await transaction.CommitAsync(stop);
                }

                return attempt.Answer;
            },
            async (_, attempt, stop) => new ExecutionResult<T>(attempt.Number is { } number && await HasLandedAsync(db, number, stop), attempt.Answer!),
            cancel);

    private static async Task<bool> HasLandedAsync(GuideDb db, string number, CancellationToken cancel)
    {
        // The number is PostgreSQL's own answer, read as one before it becomes part of a question.
        var question = string.Create(CultureInfo.InvariantCulture, $"SELECT pg_xact_status('{ulong.Parse(number, CultureInfo.InvariantCulture)}'::xid8)");
        for (var asked = 0; asked < MostQuestions; asked++)
        {
            var status = await AskAsync(db, question, cancel);
            if (status != "in progress")
                return status == "committed";
            // The server has not noticed yet that the connection is gone.
            await Task.Delay(BetweenQuestions, cancel);
        }

        throw new TimeoutException("The database did not tell what became of a change.");
    }

    private static async Task<string?> AskAsync(GuideDb db, string question, CancellationToken cancel)
    {
        await db.Database.OpenConnectionAsync(cancel);
        try
        {
            await using var command = db.Database.GetDbConnection().CreateCommand();
            command.Transaction = db.Database.CurrentTransaction?.GetDbTransaction();
#pragma warning disable CA2100 // The two questions above alone.
            command.CommandText = question;
#pragma warning restore CA2100
            return await command.ExecuteScalarAsync(cancel) as string;
        }
        finally
        {
            await db.Database.CloseConnectionAsync();
        }
    }

    private sealed class Attempt<T>
    {
        /// <summary>Of the transaction that was about to be committed.</summary>
        public string? Number { get; set; }

        public T? Answer { get; set; }
    }
}
