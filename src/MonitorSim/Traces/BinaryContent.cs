namespace MonitorSim.Traces;

/// <summary>Recognises files that are no text.</summary>
internal static class BinaryContent
{
    private const string Fix = "export it as CSV with one row a sample, as Parquet, or as HDF5 (MAT: save it as version 7.3)";

    /// <exception cref="InputException">The first bytes are those of a known binary format.</exception>
    public static void CheckSignature(ReadOnlySpan<byte> head, string place)
    {
        var kind = head switch
        {
            _ when head.StartsWith("MATLAB 5.0 MAT-file"u8) => "MAT of version 5",
            _ when head.StartsWith("MATLAB 7.3 MAT-file"u8) => "MAT 7.3, cut off",
            _ when head.StartsWith("PARE"u8) => "Parquet, encrypted",
            _ when head.StartsWith("PK\u0003\u0004"u8) => "ZIP or spreadsheet",
            _ when head.StartsWith((ReadOnlySpan<byte>)[0x1F, 0x8B]) => "gzip",
            _ when head.StartsWith("MDF     "u8) => "MDF",
            _ => null,
        };
        if (kind is not null) throw new InputException(new Problem(place, $"this is a binary file ({kind})", Fix));
    }

    /// <exception cref="InputException">The text holds what text does not hold, or nothing.</exception>
    public static void Check(ReadOnlySpan<byte> text, string place)
    {
        if (text.Trim(" \t\r\n"u8).IsEmpty) throw new InputException(new Problem(place, "the file is empty", "a recording has a header and at least one sample"));
        var odd = 0;
        foreach (var c in text)
        {
            if (c is < 32 and not ((byte)'\t' or (byte)'\r' or (byte)'\n' or 12)) odd++;
        }

        if (text.Contains((byte)0) || odd > text.Length / 50)
            throw new InputException(new Problem(place, "this is a binary file: it holds bytes that no text has", Fix));
    }
}
