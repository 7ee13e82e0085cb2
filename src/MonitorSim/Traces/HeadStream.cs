namespace MonitorSim.Traces;

/// <summary>A stream whose beginning can be looked at before it is read: the head, then the rest.</summary>
internal sealed class HeadStream(Stream inner) : ReadingStream
{
    private byte[] _head = [];
    private int _position;

    /// <summary>What has been looked at and not yet read.</summary>
    public ReadOnlySpan<byte> Head => _head.AsSpan(_position);

    /// <summary>The same as memory.</summary>
    public ReadOnlyMemory<byte> HeadMemory => _head.AsMemory(_position);

    /// <summary>Whether the head is all there is.</summary>
    public bool HeadIsAll { get; private set; }

    /// <summary>The last byte that was read; 0 before the first.</summary>
    public byte Last { get; private set; }

    /// <summary>Looks at as many bytes, fewer where the stream ends before.</summary>
    public void Peek(int count)
    {
        var head = new byte[count];
        Head.CopyTo(head);
        var have = Head.Length;
        int read;
        while (have < count && (read = inner.Read(head.AsSpan(have))) > 0) have += read;
        HeadIsAll = have < count;
        _head = head[..have];
        _position = 0;
    }

    /// <summary>Passes over bytes of the head.</summary>
    public void Skip(int count) => _position += count;

    public override int Read(Span<byte> buffer)
    {
        int read;
        if (_position < _head.Length)
        {
            read = Math.Min(buffer.Length, _head.Length - _position);
            _head.AsSpan(_position, read).CopyTo(buffer);
            _position += read;
            if (_position == _head.Length) (_head, _position) = ([], 0);
        }
        else
        {
            read = inner.Read(buffer);
        }

        if (read > 0) Last = buffer[read - 1];
        return read;
    }
}
