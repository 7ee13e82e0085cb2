using System.Text;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Traces;

public class TraceWriterTests
{
    private static string Text(Trace trace, Dialect? dialect = null)
    {
        using var stream = new MemoryStream();
        TraceWriter.Write(trace, stream, dialect);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static Trace Read(string text, Dialect? dialect = null) => TraceReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)), "x", dialect);

    private static Trace Small() => new("small", [0, 1_000_000, 2_500_001],
    [
        new NumberColumn("pos, enc", "mm", [0.1, double.NaN, -1e-7]),
        new NumberColumn("n", null, [3, 1e22, 5e-324]),
        new WordColumn("mode \"A\"", [0, 1, -1], ["auto", "by;hand"]),
    ]);

    [Fact]
    public void It_writes_the_shortest_digits_and_leaves_missing_cells_empty() =>
        Assert.Equal("time,\"pos, enc\",n,\"mode \"\"A\"\"\"\ns,mm,,\n0,0.1,3,auto\n0.001,,10000000000000000000000,by;hand\n0.002500001,-0.0000001,5E-324,\n", Text(Small()));

    [Fact]
    public void It_writes_in_the_dialect_that_a_plan_reads() =>
        Assert.Equal("# small\nt;pos, enc;n;\"mode \"\"A\"\"\"\n0;0,1;3;auto\n1;;10000000000000000000000;\"by;hand\"\n2,500001;-0,0000001;5E-324;\n",
            Text(Small(), new() { Decimal = ',', TimeColumn = "t", TimeUnit = "ms", UnitsRow = false, SkipRows = 1 }));

    [Fact]
    public void Without_a_time_column_the_rate_tells_the_time() =>
        Assert.Equal("a,b\nm,\n1,2\n", Text(new("x", [0], [new NumberColumn("a", "m", [1]), new NumberColumn("b", null, [2])]), new() { Rate = 1000 }));

    [Fact]
    public void What_is_written_is_read_back()
    {
        foreach (var dialect in new Dialect[] { new(), new() { Delimiter = '\t' }, new() { Decimal = ',', TimeUnit = "ms" }, new() { TimeUnit = "ns", TimeColumn = "clock" } })
        {
            var trace = Small();
            var back = Read(Text(trace, dialect), dialect);
            Assert.Equal(trace.Times.ToArray(), back.Times.ToArray());
            Assert.Equal(trace.Columns.Select(column => (column.Name, column.Unit)), back.Columns.Select(column => (column.Name, column.Unit)));
            for (var i = 0; i < 2; i++) Assert.Equal(((NumberColumn)trace.Columns[i]).Values.ToArray(), ((NumberColumn)back.Columns[i]).Values.ToArray());
            Assert.Equal("auto", ((WordColumn)back.Columns[2]).Words[((WordColumn)back.Columns[2]).Codes[0]]);
        }
    }

    [Fact]
    public void Digits_beyond_a_double_are_kept()
    {
        const string Written = "time,a\n0,0.1234567890123456789\n1,2\n";
        Assert.Equal(Written, Text(Read(Written)));
    }

    [Fact]
    public void Another_culture_changes_nothing() => InCulture.Each(() => Assert.StartsWith("time,\"pos, enc\"", Text(Small()), StringComparison.Ordinal));

    [Theory]
    [InlineData("utf-16", null, null, "small: recordings are not written as 'utf-16'; write utf-8")]
    [InlineData(null, "ISO 8601", null, "small: recordings are not written with times in 'ISO 8601'; write s, ms, µs or ns")]
    [InlineData(null, null, '.', "small: '.' would be delimiter and decimal mark; write two different characters")]
    public void What_cannot_be_written_is_refused(string? encoding, string? unit, char? delimiter, string message) =>
        Assert.Equal(message, Assert.Throws<InputException>(() => Text(Small(), new() { Encoding = encoding, TimeUnit = unit, Delimiter = delimiter })).Message);

    /// <summary>A spreadsheet that opens the file runs nothing: what it would take for a formula is not written.</summary>
    [Theory]
    [InlineData("=1+1")]
    [InlineData("+cmd")]
    [InlineData("-speed")]
    [InlineData("@sum(a)")]
    [InlineData("\t=1")]
    [InlineData("\r-x")]
    [InlineData(" =x")]
    public void What_a_spreadsheet_would_run_is_refused(string text)
    {
        string Refused(string name, string? unit, string word) =>
            Assert.Throws<InputException>(() => Text(new("x", [0], [new WordColumn(name, [0], [word]), new NumberColumn("n", unit, [1])]))).Message;
        var said = PrintableText.Of(text);
        const string Why = "begins as a formula does, and a spreadsheet that opens the recording would run it; let it begin with a letter";
        Assert.Equal($"x: the column '{said}' {Why}", Refused(text, null, "on"));
        Assert.Equal($"x: the unit '{said}' {Why}", Refused("a", text, "on"));
        Assert.Equal($"x(column 'a'): the word '{said}' {Why}", Refused("a", null, text));
        Assert.Contains($"the column '{said}'", Assert.Throws<InputException>(() => Text(Small(), new() { TimeColumn = text })).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("-5")]
    [InlineData("+1.5e3")]
    [InlineData("-")]
    [InlineData("a=b")]
    [InlineData("x-y")]
    public void What_none_would_run_is_written_and_read_back(string word)
    {
        var back = Read(Text(new("x", [0], [new WordColumn("mode", [0], [word])])), new() { TimeColumn = "time" });
        Assert.Equal("mode", back.Columns[0].Name);
    }

    /// <summary>The recording's name in a skipped line is one cell.</summary>
    [Fact]
    public void A_name_in_a_comment_is_one_cell() =>
        Assert.StartsWith("\"# a,=1+1\"\ntime,v\n", Text(new("a,=1+1", [0], [new NumberColumn("v", null, [1])]), new() { SkipRows = 1 }), StringComparison.Ordinal);
}
