using System.Security.Cryptography;

namespace Foreshore.Guide.Running;

/// <summary>
/// Exactly so many bytes of a file that others write to meanwhile: what it grows by is left out, what it is cut by is filled up with
/// zeros. Either is put right by the server's log. Sums up what went through.
/// </summary>
internal sealed class MeasuredStream(Stream inner, long length) : Stream
{
    private readonly IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
    private long at;

    public override bool CanRead => true;

    /// <summary>So that its length is asked for.</summary>
    public override bool CanSeek => true;

    public override bool CanWrite => false;

    public override long Length => length;

    public override long Position { get => at; set => throw new NotSupportedException(); }

    public BackupSum Sum() => at == length
        ? new(length, Convert.ToHexStringLower(hash.GetCurrentHash()))
        : throw new InvalidOperationException("It was not read to its end.");

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> buffer)
    {
        var part = buffer[..(int)Math.Min(buffer.Length, length - at)];
        return part.Length == 0 ? 0 : Take(part, inner.Read(part));
    }

    public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
    {
        var part = buffer[..(int)Math.Min(buffer.Length, length - at)];
        if (part.Length == 0)
            return 0;
        var read = await inner.ReadAsync(part, cancellationToken);
        return Take(part.Span, read);
    }

    public override Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) =>
        ReadAsync(buffer.AsMemory(offset, count), cancellationToken).AsTask();

    public override void Flush() { }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            hash.Dispose();
            inner.Dispose();
        }

        base.Dispose(disposing);
    }

    private int Take(Span<byte> part, int read)
    {
        if (read == 0)
        {
            part.Clear();
            read = part.Length;
        }

        hash.AppendData(part[..read]);
        at += read;
        return read;
    }
}
