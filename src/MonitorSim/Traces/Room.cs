namespace MonitorSim.Traces;

/// <summary>How much room the columns need while nobody knows how many samples will come: estimated from the bytes a row where the
/// file's length is known, so that memory stays near what the columns need.</summary>
/// <param name="head">The first rows.</param>
/// <param name="length">The file's length in bytes; 0 where it is unknown.</param>
/// <param name="read">The bytes read so far.</param>
internal sealed class Room(ReadOnlySpan<byte> head, long length, Func<long> read)
{
    private readonly int _first = First(head, length);

    /// <summary>The room to take next, where so many samples have filled what there was.</summary>
    public int After(int samples)
    {
        if (samples == 0) return _first;
        var estimate = length > 0 ? samples * ((double)length / Math.Max(1, read())) * 1.01 : 0;
        return (int)Math.Min(Math.Max(estimate, length > 0 ? samples * 1.05 : samples * 1.5) + 256, Array.MaxLength);
    }

    /// <summary>Makes an array longer. What is new in it is left as it was found.</summary>
    public static void Grow<T>(ref T[] array, int capacity) where T : unmanaged
    {
        if (capacity == 0)
        {
            array = [];
            return;
        }

        var longer = GC.AllocateUninitializedArray<T>(capacity);
        array.AsSpan(0, Math.Min(array.Length, capacity)).CopyTo(longer);
        array = longer;
    }

    /// <summary>Gives room back where it is more than a tenth: pages never written to cost nothing.</summary>
    public static void Trim<T>(ref T[] array, int count) where T : unmanaged
    {
        if (array.Length - count > count / 10) Grow(ref array, count);
    }

    private static int First(ReadOnlySpan<byte> head, long length)
    {
        var lines = head.Count((byte)'\n');
        if (lines < 2 || length == 0) return 1024;
        var bytesALine = (double)(head.LastIndexOf((byte)'\n') + 1) / lines;
        return (int)Math.Min(length / bytesALine * 1.01 + 16, Array.MaxLength);
    }
}
