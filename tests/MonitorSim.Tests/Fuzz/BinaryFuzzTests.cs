using MonitorSim.Traces;

namespace MonitorSim.Tests.Fuzz;

/// <summary>Damaged Parquet and HDF5 files: read, or an error that says what is wrong; no crash, no hang, no other exception, no memory out of all measure.</summary>
public class BinaryFuzzTests
{
    private const int Injured = 400;

    // What reads HDF5 sets aside as much as a damaged length says, at most 2 GB, and gives it back untouched at the file's end.
    private static long MostBytes(string name) => name.EndsWith(".parquet", StringComparison.Ordinal) ? 400L << 20 : 3L << 30;

    [Theory]
    [InlineData("duckdb.parquet")]
    [InlineData("duckdb-moments.parquet")]
    [InlineData("h5py.h5")]
    [InlineData("h5py-chunked.h5")]
    [InlineData("h5py-unreadable.h5")]
    [InlineData("matlab73.mat")]
    public void Damaged_files(string name)
    {
        var whole = File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "TestData", "recordings", name));
        for (var seed = 0; seed < Injured; seed++)
        {
            var damaged = seed % 2 == 0 ? new Mutator(seed).Of(whole) : Lies(new Random(seed), whole);
            var before = GC.GetAllocatedBytesForCurrentThread();
            var failure = Record.Exception(() =>
            {
                try
                {
                    _ = TraceReader.Read(new MemoryStream(damaged), name);
                }
                catch (InputException told)
                {
                    Assert.All(told.Problems, problem => Assert.False(string.IsNullOrWhiteSpace(problem.Place) || string.IsNullOrWhiteSpace(problem.What)));
                }
            });
            Assert.True(failure is null, $"seed {seed}: {failure}");
            Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < MostBytes(name), $"seed {seed}: it takes {(GC.GetAllocatedBytesForCurrentThread() - before) >> 20} MB");
        }
    }

    /// <summary>The file with some of its numbers, as it says how many and how large its parts are, grown out of all measure.</summary>
    private static byte[] Lies(Random dice, byte[] whole)
    {
        var bytes = whole.ToArray();
        for (var lies = 1 + dice.Next(3); lies > 0; lies--)
        {
            // The descriptions stand at one end or the other.
            var at = dice.Next(2) == 0 ? dice.Next(Math.Min(2_000, bytes.Length)) : bytes.Length - 1 - dice.Next(Math.Min(2_000, bytes.Length));
            for (var k = dice.Next(1, 8); k > 0 && at < bytes.Length; k--) bytes[at++] = dice.Next(3) == 0 ? (byte)0x7F : (byte)0xFF;
        }

        return bytes;
    }
}
