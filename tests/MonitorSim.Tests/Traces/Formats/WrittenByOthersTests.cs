using MonitorSim.Traces;

namespace MonitorSim.Tests.Traces.Formats;

/// <summary>Files that other libraries wrote from one CSV file read as that file does, to the bit.</summary>
public class WrittenByOthersTests
{
    [Theory]
    [InlineData("duckdb.parquet", "time", "speed", "position [mm]", "count", "gate", "mode")]
    [InlineData("h5py.h5", "time", "speed", "position [mm]", "count", "gate", "mode")]
    [InlineData("h5py-chunked.h5", "time", "speed", "position [mm]", "count", "gate", "mode")]
    [InlineData("matlab73.mat", "time", "speed", "position [mm]", "count", "gate")]
    public void The_same_numbers_are_the_same_trace(string file, params string[] columns)
    {
        List<ColumnRequest> wanted = [.. columns.Skip(1).Select(name => new ColumnRequest(name, name is "gate" or "mode" ? ColumnKind.Word : ColumnKind.Number))];

        var (text, read) = (TraceReader.Read(Recording("recording.csv"), null, wanted), TraceReader.Read(Recording(file), null, wanted));

        Assert.Equal(text.Times, read.Times);
        foreach (var column in columns.Skip(1)) SameColumn(text.Find(column)!, read.Find(column)!);
        Assert.Equal(Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(Recording(file)))), read.Sha256);
        Assert.Equal(file, read.Name);
    }

    [Fact]
    public void A_stream_that_cannot_seek_reads_the_same()
    {
        using var file = File.OpenRead(Recording("duckdb.parquet"));
        var read = TraceReader.Read(new BufferedPipe(file), "pipe");

        Assert.Equal(TraceReader.Read(Recording("duckdb.parquet")).Sha256, read.Sha256);
        Assert.Equal(24, read.Count);
    }

    [Fact]
    public void Units_come_from_the_name_or_from_an_attribute()
    {
        var trace = TraceReader.Read(Recording("h5py.h5"));

        Assert.Equal(("mm/s", "mm"), (trace.Find("speed")!.Unit, trace.Find("position [mm]")!.Unit));
    }

    [Fact]
    public void Date_times_are_times_and_32_bits_mean_their_shortest_decimal()
    {
        var trace = TraceReader.Read(Recording("duckdb-moments.parquet"), null, null, out var found);
        var text = TraceReader.Read(Recording("recording.csv"));

        Assert.Equal(("moment", "ISO 8601"), (found.Dialect.TimeColumn, found.Dialect.TimeUnit));
        Assert.Equal(text.Times, trace.Times);
        Assert.Equal([10.3, 10.5, 10.7, 10.9], trace.Numbers("position").Take(4));
        Assert.Contains("'list' is left out: it holds lists or records, not one value a row", found.Notes);
        Assert.Contains("'bytes' is left out: it is of a type that is neither number, text, date-time nor boolean: BYTE_ARRAY", found.Notes);
        Assert.Contains("'clock' is left out: it is of a type that is neither number, text, date-time nor boolean: INT64 TIME_MICROS", found.Notes);
    }

    [Theory]
    [InlineData("h5py.h5", "matrix", "it has 2 dimensions (24 x 3)")]
    [InlineData("h5py.h5", "rate", "it holds one value only")]
    [InlineData("h5py-unreadable.h5", "big-endian", "it cannot be read: its numbers have the high byte first")]
    [InlineData("h5py-unreadable.h5", "lzf", "it cannot be read: its numbers have the high byte first, a filter is not one of HDF5's own")]
    [InlineData("h5py-unreadable.h5", "elsewhere", "it ")]
    [InlineData("h5py-unreadable.h5", "linked", "it ")]
    [InlineData("h5py-unreadable.h5", "records", "it is of a type that is neither number, text nor boolean: Compound, 12 bytes")]
    [InlineData("h5py-unreadable.h5", "virtual", "it is virtual: its values are in other files")]
    [InlineData("matlab73.mat", "title", "it is a text of characters")]
    [InlineData("duckdb-moments.parquet", "list", "it holds lists or records, not one value a row")]
    public void What_cannot_be_a_column_says_so_where_a_plan_asks_for_it(string file, string column, string why)
    {
        var time = file.StartsWith("duckdb", StringComparison.Ordinal) ? "moment" : "time";
        var problem = Assert.Single(Assert.Throws<InputException>(() => TraceReader.Read(Recording(file), new() { TimeColumn = time }, [Reading.Number(column)])).Problems);

        Assert.EndsWith($"{file}(column '{column}')", problem.Place, StringComparison.Ordinal);
        Assert.StartsWith(why, problem.What, StringComparison.Ordinal);
        Assert.Equal("write it as one number, text or boolean a sample", problem.Fix);
    }

    internal static string Recording(string file) => Path.Combine(AppContext.BaseDirectory, "TestData", "recordings", file);

    internal static void SameColumn(Column one, Column other)
    {
        Assert.Equal(one.Name, other.Name);
        if (one is WordColumn words)
        {
            string?[] Said(Column column) => [.. Enumerable.Range(0, column.Count).Select(k => column.IsMissing(k) ? null : ((WordColumn)column).Words[((WordColumn)column).Codes[k]].ToLowerInvariant())];

            // A boolean of another format says true where that one says TRUE or 1: to a plan all the same.
            Assert.Equal(Said(words), Said(other).Select(word => word switch { "1" => "true", "0" => "false", _ => word }));
            return;
        }

        var (numbers, read) = (Assert.IsType<NumberColumn>(one), Assert.IsType<NumberColumn>(other));
        for (var k = 0; k < numbers.Count; k++)
        {
            Assert.Equal(numbers.IsMissing(k), read.IsMissing(k));
            if (numbers.IsMissing(k)) continue;
            Assert.Equal(BitConverter.DoubleToInt64Bits(numbers.Values[k]), BitConverter.DoubleToInt64Bits(read.Values[k]));
            Assert.Equal(numbers.Exact(k), read.Exact(k));
        }
    }

    private sealed class BufferedPipe(Stream inner) : Stream
    {
        public override bool CanRead => true;
        public override bool CanSeek => false;
        public override bool CanWrite => false;
        public override long Length => throw new NotSupportedException();
        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }
        public override int Read(byte[] buffer, int offset, int count) => inner.Read(buffer, offset, Math.Min(count, 100));
        public override void Flush() { }
        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();
        public override void SetLength(long value) => throw new NotSupportedException();
        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
