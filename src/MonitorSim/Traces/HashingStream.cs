using System.Security.Cryptography;

namespace MonitorSim.Traces;

/// <summary>Passes a recording's bytes on while it hashes them, counts them and looks at whether it should go on.</summary>
internal sealed class HashingStream(Stream inner, IProgress<long>? progress, CancellationToken cancel) : Stream
{
    private const long ReportEvery = 4 << 20;
    private readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
    private long _reported;

    /// <summary>How many bytes have passed.</summary>
    public long Count { get; private set; }

    /// <summary>The hash of what has passed, lower-case hexadecimal.</summary>
    public string Sha256() => Convert.ToHexStringLower(_hash.GetCurrentHash());

    public override int Read(Span<byte> buffer)
    {
        cancel.ThrowIfCancellationRequested();
        var read = inner.Read(buffer);
        _hash.AppendData(buffer[..read]);
        Count += read;
        if (progress is not null && (Count - _reported >= ReportEvery || read == 0))
        {
            progress.Report(Count);
            _reported = Count;
        }

        return read;
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));
    public override bool CanRead => true;
    public override bool CanSeek => false;
    public override bool CanWrite => false;
    public override long Length => throw new NotSupportedException();
    public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }
    public override void Flush() { }
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();
    public override void SetLength(long value) => throw new NotSupportedException();
    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing) _hash.Dispose();
        base.Dispose(disposing);
    }
}
