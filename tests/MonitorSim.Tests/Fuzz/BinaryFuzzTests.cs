using MonitorSim.Traces;

namespace MonitorSim.Tests.Fuzz;

/// <summary>Damaged Parquet and HDF5 files: read, or an error that says what is wrong; no crash, no hang, no other exception.</summary>
public class BinaryFuzzTests
{
    private const int Injured = 400;

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
            var damaged = new Mutator(seed).Of(whole);
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
        }
    }
}
