namespace MonitorSim.Traces.Formats;

/// <summary>Tells by a recording's first bytes, never by its name, whether it is stored as columns.</summary>
internal static class BinaryFormat
{
    private static ReadOnlySpan<byte> Hdf5 => [0x89, (byte)'H', (byte)'D', (byte)'F', 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>What opens such a file; null where it is none.</summary>
    /// <param name="head">The first bytes.</param>
    public static Func<Stream, BinaryTable>? Of(ReadOnlySpan<byte> head)
    {
        if (head.StartsWith("PAR1"u8)) return stream => new ParquetTable(stream);
        return HasHdf5(head) ? stream => new Hdf5Table(stream) : null;
    }

    // The signature stands at the beginning or behind a block of another's, of 512 bytes or any power of two above; MAT 7.3 has its text header there.
    private static bool HasHdf5(ReadOnlySpan<byte> head)
    {
        for (var at = 0; at + Hdf5.Length <= head.Length; at = at == 0 ? 512 : at * 2)
        {
            if (head[at..].StartsWith(Hdf5)) return true;
        }

        return false;
    }
}
