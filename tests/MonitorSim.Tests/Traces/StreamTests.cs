using System.Security.Cryptography;
using System.Text;
using FsCheck.Xunit;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Traces;

public class StreamTests
{
    private static readonly string Sample = Make(3000);

    private static string Make(int rows)
    {
        var random = new Random(11);
        var text = new StringBuilder("# log\nt;v;w;\"x;y\"\n");
        for (var k = 0; k < rows; k++)
            text.Append(k).Append(";\"").Append(random.Next(1000)).Append("\";").Append(k % 7 == 0 ? "an" : "aus").Append(';').Append(random.Next()).Append("\r\n");
        return text.ToString();
    }

    [Property(MaxTest = 30)]
    public void How_the_bytes_arrive_changes_nothing(int seed)
    {
        var bytes = Encoding.UTF8.GetBytes(Sample);
        var whole = Reading.Of(bytes);
        var pieces = TraceReader.Read(new Pieces(bytes, new Random(seed)), "run.csv");
        Assert.Equal(whole.Times.ToArray(), pieces.Times.ToArray());
        Assert.Equal(whole.Sha256, pieces.Sha256);
        Assert.Equal(whole.Numbers("v"), pieces.Numbers("v"));
        Assert.Equal(whole.Numbers("x;y"), pieces.Numbers("x;y"));
        Assert.Equal(whole.Words("w"), pieces.Words("w"));
    }

    /// <summary>With a token to cancel by, a pipe is read on another thread: the same bytes.</summary>
    [Property(MaxTest = 10)]
    public void Reading_that_could_be_cancelled_reads_the_same(int seed)
    {
        using var cancel = new CancellationTokenSource();
        var bytes = Encoding.UTF8.GetBytes(Sample);
        Assert.Equal(Reading.Of(bytes).Sha256, TraceReader.Read(new Pieces(bytes, new Random(seed)), "run.csv", cancel: cancel.Token).Sha256);
    }

    /// <summary>A pipe from which nothing comes keeps nobody waiting who wants to stop.</summary>
    [Fact]
    public void A_wait_ends_when_it_is_cancelled()
    {
        using var pipe = new System.IO.Pipes.AnonymousPipeServerStream(System.IO.Pipes.PipeDirection.Out);
        using var end = new System.IO.Pipes.AnonymousPipeClientStream(System.IO.Pipes.PipeDirection.In, pipe.ClientSafePipeHandle);
        pipe.Write(Encoding.UTF8.GetBytes(Sample[..1000]));
        using var cancel = new CancellationTokenSource(TimeSpan.FromMilliseconds(100));
        Assert.ThrowsAny<OperationCanceledException>(() => TraceReader.Read(end, "run.csv", cancel: cancel.Token));
    }

    [Theory]
    [InlineData("utf-16")]
    [InlineData("utf-16be")]
    public void Wide_characters_in_pieces_too(string encoding)
    {
        var bytes = Encoding.GetEncoding(encoding).GetBytes(Sample);
        var pieces = TraceReader.Read(new Pieces(bytes, new Random(3)), "run.csv");
        Assert.Equal(Reading.Of(Sample).Numbers("x;y"), pieces.Numbers("x;y"));
        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(bytes)), pieces.Sha256);
    }

    [Fact]
    public void The_hash_is_that_of_the_files_bytes()
    {
        byte[] bytes = [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(Sample)];
        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(bytes)), Reading.Of(bytes).Sha256);
    }

    [Fact]
    public void Files_longer_and_shorter_than_their_beginning_promises()
    {
        // The first rows are short, then long; then the other way round.
        foreach (var longFirst in new[] { false, true })
        {
            var text = new StringBuilder("t,v,w\n");
            for (var k = 0; k < 120_000; k++)
                text.Append(k).Append(',').Append(k < 60_000 == longFirst ? "1.00000000000000" : "1").Append(k < 60_000 == longFirst ? ",long long long\n" : ",s\n");
            var path = Path.GetTempFileName();
            try
            {
                File.WriteAllText(path, text.ToString());
                var trace = TraceReader.Read(path);
                Assert.Equal(120_000, trace.Count);
                Assert.Equal(119_999_000_000_000, trace.Times[^1]);
                Assert.Equal(longFirst ? "s" : "long long long", trace.Words("w")[^1]);
                Assert.All(trace.Numbers("v"), v => Assert.Equal(1, v));
            }
            finally
            {
                File.Delete(path);
            }
        }
    }

    [Fact]
    public void Reading_can_be_stopped()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => TraceReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(Sample)), "run.csv", cancel: stop.Token));
    }

    [Fact]
    public void Progress_ends_with_all_bytes()
    {
        var seen = new List<long>();
        TraceReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(Sample)), "run.csv", progress: new Immediate(seen));
        Assert.Equal(Encoding.UTF8.GetByteCount(Sample), seen[^1]);
    }

    private sealed class Immediate(List<long> seen) : IProgress<long>
    {
        public void Report(long value) => seen.Add(value);
    }

    /// <summary>A stream that gives 1 to 100 bytes at a time.</summary>
    private sealed class Pieces(byte[] bytes, Random random) : MemoryStream(bytes)
    {
        public override bool CanSeek => false;
        public override int Read(Span<byte> buffer) => base.Read(buffer[..Math.Min(buffer.Length, random.Next(1, 101))]);
        public override int Read(byte[] buffer, int offset, int count) => base.Read(buffer, offset, Math.Min(count, random.Next(1, 101)));
    }
}
