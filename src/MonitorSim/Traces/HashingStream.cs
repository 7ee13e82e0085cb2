using System.Security.Cryptography;

namespace MonitorSim.Traces;

/// <summary>Passes a recording's bytes on while it hashes them, counts them and looks at whether it should go on.</summary>
internal sealed class HashingStream(Stream inner, IProgress<long>? progress, CancellationToken cancel) : ReadingStream
{
    private const long ReportEvery = 4 << 20;
    private const int BlockSize = 1 << 20;
    private readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
    private long _reported;

    // Hashing takes about as long as reading the numbers: full blocks are hashed beside it, one at a time and in their order.
    private byte[] _filling = [];
    private byte[] _hashing = [];
    private int _filled;
    private Task _hashed = Task.CompletedTask;

    /// <summary>How many bytes have passed.</summary>
    public long Count { get; private set; }

    /// <summary>The hash of what has passed, lower-case hexadecimal.</summary>
    public string Sha256()
    {
        HandOver();
        _hashed.GetAwaiter().GetResult();
        return Convert.ToHexStringLower(_hash.GetCurrentHash());
    }

    public override int Read(Span<byte> buffer)
    {
        cancel.ThrowIfCancellationRequested();
        var read = inner.Read(buffer);
        Keep(buffer[..read]);
        Count += read;
        if (progress is not null && (Count - _reported >= ReportEvery || read == 0))
        {
            progress.Report(Count);
            _reported = Count;
        }

        return read;
    }

    private void Keep(ReadOnlySpan<byte> bytes)
    {
        while (!bytes.IsEmpty)
        {
            if (_filling.Length == 0) _filling = new byte[BlockSize];
            var part = Math.Min(bytes.Length, BlockSize - _filled);
            bytes[..part].CopyTo(_filling.AsSpan(_filled));
            _filled += part;
            bytes = bytes[part..];
            if (_filled == BlockSize) HandOver();
        }
    }

    private void HandOver()
    {
        _hashed.GetAwaiter().GetResult();
        (_filling, _hashing) = (_hashing, _filling);
        var (block, length) = (_hashing, _filled);
        _filled = 0;
        _hashed = Task.Run(() => _hash.AppendData(block, 0, length), CancellationToken.None);
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            _hashed.GetAwaiter().GetResult();
            _hash.Dispose();
        }

        base.Dispose(disposing);
    }
}
