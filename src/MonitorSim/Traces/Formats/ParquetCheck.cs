using System.Buffers.Binary;
using Parquet.Meta;

namespace MonitorSim.Traces.Formats;

/// <summary>Checks that a Parquet file's descriptions of itself are whole, before anything follows them.</summary>
internal static class ParquetCheck
{
    private const int LongestPageHeader = 1 << 16;

    // Room is made for as much as a page says that it unpacks to. What packs best makes 128 kB of the same byte into four.
    private const long SmallPage = 1 << 20;
    private const long MostTimesSmaller = 1 << 16;

    /// <exception cref="InvalidDataException">The file has no footer, or a damaged one.</exception>
    public static void Footer(Stream stream)
    {
        if (stream.Length < 12) throw new InvalidDataException("it is too short");
        var end = Read(stream, stream.Length - 8, 8);
        if (!end.AsSpan(4).SequenceEqual("PAR1"u8)) throw new InvalidDataException("its end is missing");
        var length = BinaryPrimitives.ReadUInt32LittleEndian(end);
        if (length > stream.Length - 12) throw new InvalidDataException("its footer is longer than the file");
        var footer = new CompactThrift(Read(stream, stream.Length - 8 - length, (int)length));
        footer.Structure();
        if (footer.Position != length) throw new InvalidDataException("its footer is damaged");
        stream.Position = 0;
    }

    /// <exception cref="InvalidDataException">A page of the column is damaged, or stands outside the file.</exception>
    public static void Pages(Stream stream, ColumnMetaData column)
    {
        var at = Math.Min(column.DataPageOffset, column.DictionaryPageOffset is > 0 and var dictionary ? dictionary : long.MaxValue);
        var end = at + column.TotalCompressedSize;
        if (at < 4 || column.TotalCompressedSize < 0 || end > stream.Length - 8) throw new InvalidDataException("its values stand outside the file");
        while (at < end)
        {
            var page = new CompactThrift(Read(stream, at, (int)Math.Min(LongestPageHeader, end - at)));
            var members = page.Structure();
            var size = members.GetValueOrDefault(3, -1);
            at += page.Position;
            if (size < 0 || size > end - at || members.GetValueOrDefault(2, -1) is var unpacked && (unpacked < 0 || unpacked > SmallPage + (MostTimesSmaller * size))) throw new InvalidDataException("a page of its values is damaged");
            at += size;
        }
    }

    private static byte[] Read(Stream stream, long at, int count)
    {
        var bytes = new byte[count];
        stream.Position = at;
        stream.ReadExactly(bytes);
        return bytes;
    }
}
