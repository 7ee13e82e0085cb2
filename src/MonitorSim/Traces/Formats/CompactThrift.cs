namespace MonitorSim.Traces.Formats;

/// <summary>Walks over a structure in the compact protocol that Parquet's footers and page headers are written in, and believes nothing: what reads them
/// proper goes on for ever behind the end of a damaged one.</summary>
internal ref struct CompactThrift(ReadOnlySpan<byte> bytes)
{
    private const int Deepest = 32;
    private readonly ReadOnlySpan<byte> _bytes = bytes;

    /// <summary>How many bytes were walked over.</summary>
    public int Position { get; private set; }

    /// <summary>Walks over one structure.</summary>
    /// <returns>The whole numbers that are its own members, by their identifier.</returns>
    /// <exception cref="InvalidDataException">It is none, or goes on behind the end.</exception>
    public Dictionary<int, long> Structure() => Structure(0);

    private Dictionary<int, long> Structure(int depth)
    {
        if (depth > Deepest) throw new InvalidDataException("its description is nested too deeply");
        var members = new Dictionary<int, long>();
        var id = 0;
        while (true)
        {
            var head = Byte();
            if (head == 0) return members;
            id = head >> 4 == 0 ? (int)ZigZag() : id + (head >> 4);
            var kind = head & 15;
            if (kind is 4 or 5 or 6) members[id] = ZigZag();
            else if (kind > 2) Skip(kind, depth);
        }
    }

    private void Skip(int kind, int depth)
    {
        switch (kind)
        {
            case 1 or 2 or 3: Position++; break;
            case 4 or 5 or 6: ZigZag(); break;
            case 7: Position += 8; break;
            case 8:
                var length = Count();
                Position += length;
                break;
            case 9 or 10:
                var head = Byte();
                var count = head >> 4 == 15 ? Count() : head >> 4;
                for (var i = 0; i < count; i++) Skip(head & 15, depth + 1);
                break;
            case 11:
                var pairs = Count();
                var kinds = pairs == 0 ? 0 : Byte();
                for (var i = 0; i < pairs; i++)
                {
                    Skip(kinds >> 4, depth + 1);
                    Skip(kinds & 15, depth + 1);
                }

                break;
            case 12: Structure(depth + 1); break;
            default: throw Damaged();
        }

        if (Position > _bytes.Length) throw Damaged();
    }

    // Nothing that is counted is shorter than a byte.
    private int Count()
    {
        var count = Number();
        return count <= (ulong)(_bytes.Length - Position) ? (int)count : throw Damaged();
    }

    private long ZigZag()
    {
        var number = Number();
        return (long)(number >> 1) ^ -(long)(number & 1);
    }

    private ulong Number()
    {
        var number = 0UL;
        for (var shift = 0; shift < 64; shift += 7)
        {
            var next = Byte();
            number |= (ulong)(next & 127) << shift;
            if (next < 128) return number;
        }

        throw Damaged();
    }

    private byte Byte() => Position < _bytes.Length ? _bytes[Position++] : throw Damaged();

    private static InvalidDataException Damaged() => new("its description is damaged");
}
