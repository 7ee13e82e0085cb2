using System.Diagnostics;
using System.Text;
using MonitorSim.Plans;
using MonitorSim.Synthesis;
using MonitorSim.Tests.Traces.Formats;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Fuzz;

/// <summary>What is larger than anything that people have reason to write is refused with a word, soon and in little memory.</summary>
public class LimitTests
{
    [Fact]
    public void Columns_of_text()
    {
        var heads = string.Join(',', Enumerable.Range(0, 10_001).Select(k => k == 0 ? "time" : $"c{k}"));
        Assert.Equal("x: there are 10001 columns; a recording has at most 10000; give each sample a row and each quantity a column, or cut the file into parts",
            Refused(heads + "\n" + string.Join(',', Enumerable.Repeat("0", 10_001)) + "\n"));
        Assert.Equal(9_999, TraceReader.Read(Bytes(heads[..heads.LastIndexOf(',')] + "\n" + string.Join(',', Enumerable.Repeat("0", 10_000)) + "\n"), "x").Columns.Count);
    }

    [Fact]
    public void Columns_of_parquet() => Assert.Contains("there are 10001 columns; a recording has at most 10000",
        Assert.Throws<InputException>(() => TraceReader.Read(new MemoryStream(BinaryFile.Parquet(10, [.. Enumerable.Range(0, 10_001).Select(k => (k == 0 ? "time" : $"c{k}", (Array)new double[] { 0 }))])), "x")).Message, StringComparison.Ordinal);

    [Fact]
    public void A_header_longer_than_what_is_looked_at() => Assert.Equal("x: the first 256 kB hold no whole sample; shorten the lines above the samples, or cut the columns into several files",
        Refused("time," + string.Join(',', Enumerable.Range(0, 5_000).Select(k => new string('c', 90) + k)) + "\n0" + string.Concat(Enumerable.Repeat(",0", 5_000)) + "\n"));

    [Theory]
    [InlineData("time,v\n0,1\n1,{0}\n", '7', "is not a number")]
    [InlineData("time,v\n0,1\n1,1e{0}\n", '9', "is not a number")]
    [InlineData("time,v\n0,1\n{0},1\n", '1', "time")]
    public void A_number_without_end(string text, char digit, string says) => Assert.Contains(says,
        Assert.Throws<InputException>(() => TraceReader.Read(Bytes(text.Replace("{0}", new string(digit, 100_000), StringComparison.Ordinal)), "x", null, [new("v", ColumnKind.Number)])).Message, StringComparison.Ordinal);

    /// <summary>A row of 17 MB is no row; a word of 1 MB is one.</summary>
    [Fact]
    public void A_line_without_end()
    {
        Assert.Contains("a row goes on for more than 16 MB", Refused("time,v\n0,1\n1," + new string('x', 17 << 20) + "\n"), StringComparison.Ordinal);
        Assert.Equal(1 << 20, ((WordColumn)TraceReader.Read(Bytes("time,v\n0,on\n1," + new string('x', 1 << 20) + "\n"), "x").Columns[0]).Words[1].Length);
    }

    [Fact]
    public void Plans_and_scenarios_without_end()
    {
        var file = Path.Combine(Directory.CreateTempSubdirectory("monitorsim").FullName, "huge.json");
        using (var stream = File.Create(file)) stream.SetLength(JsonBytes.Most + 1L);
        Assert.Equal($"{file}: it is larger than 16 MB; name a plan, not a recording", Assert.Throws<InputException>(() => PlanReader.Read(file)).Message);
        Assert.Equal($"{file}: it is larger than 16 MB; name a scenario, not a recording", Assert.Throws<InputException>(() => ScenarioReader.Read(file)).Message);
        Directory.Delete(Path.GetDirectoryName(file)!, recursive: true);
    }

    [Theory]
    [InlineData("{{0}}", "\"k{0}\": 1,", 20_000)]
    [InlineData("{\"plan\": 1, \"axes\": {{0}}}", "\"a{0}\": {},", 20_000)]
    [InlineData("{\"plan\": 1, \"expect\": [{0}]}", "{},", 20_000)]
    public void A_plan_of_many_members_is_read_soon(string plan, string member, int count)
    {
        var text = plan.Replace("{0}", string.Concat(Enumerable.Range(0, count).Select(k => member.Replace("{0}", k.ToString(System.Globalization.CultureInfo.InvariantCulture), StringComparison.Ordinal))), StringComparison.Ordinal);
        var watch = Stopwatch.StartNew();
        Assert.NotEmpty(Assert.Throws<InputException>(() => PlanReader.Parse(text)).Problems);
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(20), $"it took {watch.Elapsed}");
    }

    /// <summary>A file of some hundred bytes that says that it has a thousand million rows gets no room for them.</summary>
    [Fact]
    public void A_parquet_file_of_empty_promises()
    {
        var whole = BinaryFile.Parquet(100, ("time", new double[] { 0, 1, 2 }), ("v", new double[] { 1, 2, 3 }));
        var lies = 0;
        for (var at = 4; at < whole.Length - 8; at++)
        {
            // Three rows are 6 in the footer; five bytes of a large number in their place, and the footer's length follows.
            if (whole[at] != 6) continue;
            byte[] lie = [.. whole[..at], 0xFE, 0xFF, 0xFF, 0xFF, 0x0F, .. whole[(at + 1)..]];
            var footer = BitConverter.ToInt32(lie, lie.Length - 8) + 4;
            BitConverter.TryWriteBytes(lie.AsSpan(lie.Length - 8), footer);
            var before = GC.GetAllocatedBytesForCurrentThread();
            if (Record.Exception(() => TraceReader.Read(new MemoryStream(lie), "x")) is { } told) Assert.IsType<InputException>(told);
            Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 200L << 20);
            lies++;
        }

        Assert.True(lies > 3);
    }

    private static MemoryStream Bytes(string text) => new(Encoding.UTF8.GetBytes(text));

    private static string Refused(string text) => Assert.Throws<InputException>(() => TraceReader.Read(Bytes(text), "x")).Message;
}
