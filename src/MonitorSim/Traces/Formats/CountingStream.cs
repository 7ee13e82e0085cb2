namespace MonitorSim.Traces.Formats;

/// <summary>Passes a file's bytes on and counts them: a damaged file whose parts refer to each other in a circle is not read for ever, and whether values came
/// from this file can be told.</summary>
internal sealed class CountingStream(Stream inner) : Stream
{
    private readonly long _most = checked(256 * inner.Length + (64L << 20));

    /// <summary>How many bytes were read; those that were read again count again.</summary>
    public long Count { get; private set; }

    public override int Read(Span<byte> buffer)
    {
        var read = inner.Read(buffer);
        Count += read;
        if (Count > _most) throw new InvalidDataException("its parts refer to each other in a circle");
        return read;
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));
    public override bool CanRead => true;
    public override bool CanSeek => true;
    public override bool CanWrite => false;
    public override long Length => inner.Length;
    public override long Position { get => inner.Position; set => inner.Position = value; }
    public override void Flush() { }
    public override long Seek(long offset, SeekOrigin origin) => inner.Seek(offset, origin);
    public override void SetLength(long value) => throw new NotSupportedException();
    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
