namespace MonitorSim.Plans;

/// <summary>The bytes of a plan or a scenario, from a file or a stream that may be no such thing and may have no end.</summary>
internal static class JsonBytes
{
    /// <summary>More than any plan that people or programs have reason to write.</summary>
    public const int Most = 16 << 20;

    /// <summary>Reads a stream to its end.</summary>
    /// <param name="stream">The bytes.</param>
    /// <param name="name">What messages call it.</param>
    /// <param name="noun">What it is, such as <c>plan</c>.</param>
    /// <exception cref="InputException">It is too large.</exception>
    public static byte[] Read(Stream stream, string name, string noun)
    {
        using var bytes = new MemoryStream();
        var block = new byte[1 << 16];
        for (int read; (read = stream.Read(block)) > 0;)
        {
            bytes.Write(block, 0, read);
            if (bytes.Length > Most) throw new InputException(new Problem(name, $"it is larger than {Most >> 20} MB", $"name a {noun}, not a recording"));
        }

        return bytes.ToArray();
    }
}
