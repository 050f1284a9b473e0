using System.Collections.Concurrent;
using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Foreshore.Guide.Support;

/// <summary>Counts what a page asks of the database, so that a query per row fails a test.</summary>
public sealed class CommandCounter : DbCommandInterceptor
{
    private readonly ConcurrentQueue<string> commands = new();

    public IReadOnlyList<string> Commands => [.. commands];

    private long rows;

    /// <summary>Rows that were read of the answers.</summary>
    public long Rows => Interlocked.Read(ref rows);

    public void Reset()
    {
        commands.Clear();
        Interlocked.Exchange(ref rows, 0);
    }

    public override InterceptionResult DataReaderClosing(DbCommand command, DataReaderClosingEventData eventData, InterceptionResult result)
    {
        Interlocked.Add(ref rows, eventData.ReadCount);
        return base.DataReaderClosing(command, eventData, result);
    }

    public override ValueTask<InterceptionResult> DataReaderClosingAsync(DbCommand command, DataReaderClosingEventData eventData, InterceptionResult result)
    {
        Interlocked.Add(ref rows, eventData.ReadCount);
        return base.DataReaderClosingAsync(command, eventData, result);
    }

    public override DbDataReader ReaderExecuted(DbCommand command, CommandExecutedEventData eventData, DbDataReader result)
    {
        commands.Enqueue(command.CommandText);
        return base.ReaderExecuted(command, eventData, result);
    }

    public override ValueTask<DbDataReader> ReaderExecutedAsync(
        DbCommand command, CommandExecutedEventData eventData, DbDataReader result, CancellationToken cancellationToken = default)
    {
        commands.Enqueue(command.CommandText);
        return base.ReaderExecutedAsync(command, eventData, result, cancellationToken);
    }

    public override ValueTask<int> NonQueryExecutedAsync(
        DbCommand command, CommandExecutedEventData eventData, int result, CancellationToken cancellationToken = default)
    {
        commands.Enqueue(command.CommandText);
        return base.NonQueryExecutedAsync(command, eventData, result, cancellationToken);
    }

    public override ValueTask<object?> ScalarExecutedAsync(
        DbCommand command, CommandExecutedEventData eventData, object? result, CancellationToken cancellationToken = default)
    {
        commands.Enqueue(command.CommandText);
        return base.ScalarExecutedAsync(command, eventData, result, cancellationToken);
    }
}
