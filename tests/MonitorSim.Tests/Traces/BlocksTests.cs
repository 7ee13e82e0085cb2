using System.Text;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Traces;

/// <summary>Recordings whose samples fill their last block just short of, exactly or just over its end come out whole.</summary>
public class BlocksTests
{
    public static TheoryData<int> Counts => [1, Blocks<long>.Size - 1, Blocks<long>.Size, Blocks<long>.Size + 1, 3 * Blocks<long>.Size];

    [Theory]
    [MemberData(nameof(Counts))]
    public void Every_sample_stays_at_its_place(int count)
    {
        var text = new StringBuilder("t [ms],v,word\n");
        for (var k = 0; k < count; k++) text.Append(k).Append(',').Append(k % 7 == 3 ? "" : $"{k}.5").Append(',').Append(k % 1000 < 500 ? "on" : "off").Append('\n');
        var trace = TraceReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(text.ToString())), "blocks.csv");
        var (v, word) = ((NumberColumn)trace.Find("v")!, (WordColumn)trace.Find("word")!);
        Assert.Equal(count, trace.Count);
        for (var k = 0; k < count; k++)
        {
            var expected = (k * 1_000_000L, k % 7 == 3 ? double.NaN : k + 0.5, k % 1000 < 500 ? "on" : "off");
            Assert.Equal(expected, (trace.Times[k], v.Values[k], word.Words[word.Codes[k]]));
        }
    }
}
