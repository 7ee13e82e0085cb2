namespace MonitorSim.Traces;

/// <summary>A stream that may keep its reader waiting without end, as a pipe does: the wait ends when reading is cancelled.</summary>
/// <remarks>A read that is under way cannot be called off; what it brings after that is lost.</remarks>
internal sealed class InterruptibleStream(Stream inner, CancellationToken cancel) : ReadingStream
{
    private byte[] _block = [];

    public override int Read(Span<byte> buffer)
    {
        if (_block.Length < buffer.Length) _block = new byte[buffer.Length];
        var read = inner.ReadAsync(_block, 0, buffer.Length, CancellationToken.None).WaitAsync(cancel).GetAwaiter().GetResult();
        _block.AsSpan(0, read).CopyTo(buffer);
        return read;
    }
}
