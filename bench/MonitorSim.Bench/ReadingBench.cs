using System.Globalization;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using CsvHelper;
using DuckDB.NET.Data;
using MonitorSim.Traces;

namespace MonitorSim.Bench;

/// <summary>Reading a recording of 1,000,000 rows by 7 columns of six decimals, from a file in the page cache.</summary>
[SimpleJob(RunStrategy.Monitoring, warmupCount: 2, iterationCount: 9), MemoryDiagnoser]
public class ReadingBench
{
    private readonly string _path = Path.Combine(Path.GetTempPath(), "monitorsim-bench.csv");

    [GlobalSetup]
    public void SetUp() => Recordings.WriteCsv(_path, 1_000_000);

    [GlobalCleanup]
    public void CleanUp() => File.Delete(_path);

    [Benchmark(Baseline = true)]
    public int ReadTrace() => TraceReader.Read(_path).Count;

    /// <summary>Only the cells' places, no number read: what every reader pays.</summary>
    [Benchmark]
    public long SplitOnly()
    {
        using var file = File.OpenRead(_path);
        using var reader = CsvReader.Create(file, new() { BufferSize = 256 << 10 });
        long cells = 0;
        while (reader.Read()) cells += reader.FieldCount;
        return cells;
    }

    /// <summary>DuckDB on one thread, into a table in memory.</summary>
    [Benchmark]
    public long DuckDbOneThread()
    {
        using var connection = new DuckDBConnection("DataSource=:memory:");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = string.Create(CultureInfo.InvariantCulture, $"SET threads = 1; CREATE TABLE r AS SELECT * FROM read_csv('{_path}'); SELECT count(*) FROM r;");
        return Convert.ToInt64(command.ExecuteScalar(), CultureInfo.InvariantCulture);
    }
}
