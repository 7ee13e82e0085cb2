namespace MonitorSim.Cli;

/// <summary>What a command writes to: it stops where the command is cancelled, and says what happened where writing fails.</summary>
/// <param name="inner">Where the bytes go; closed with this one.</param>
/// <param name="path">What messages call it.</param>
/// <param name="cancel">Stops the writing.</param>
internal sealed class OutputStream(Stream inner, string path, CancellationToken cancel) : Stream
{
    private long _position;

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        cancel.ThrowIfCancellationRequested();
        try
        {
            inner.Write(buffer);
        }
        catch (Exception e) when (Writing.IsFailure(e))
        {
            throw Writing.Failed(path, e);
        }

        _position += buffer.Length;
    }

    public override void Flush() => Writing.To(path, inner.Flush);

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));
    public override bool CanRead => false;
    public override bool CanSeek => false;
    public override bool CanWrite => true;
    public override long Length => _position;
    public override long Position { get => _position; set => throw new NotSupportedException(); }
    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();
    public override void SetLength(long value) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing) Writing.To(path, inner.Dispose);
        base.Dispose(disposing);
    }
}
