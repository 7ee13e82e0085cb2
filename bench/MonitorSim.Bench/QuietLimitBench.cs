using System.Numerics.Tensors;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;

namespace MonitorSim.Bench;

/// <summary>An SLS over 10,000,000 samples that never exceed its limit, beside the largest magnitude of the same array.</summary>
[SimpleJob(RunStrategy.Monitoring, warmupCount: 2, iterationCount: 9)]
public class QuietLimitBench
{
    private double[] _speed = [];
    private Questions _questions = null!;

    [GlobalSetup]
    public void SetUp() => _questions = new(_speed = Recordings.Speed(10_000_000), "33 mm/s");

    [Benchmark(Baseline = true)]
    public double MaxMagnitude() => TensorPrimitives.MaxMagnitude<double>(_speed);

    /// <summary>The whole replay: inputs, cycles, the monitor, the reactor.</summary>
    [Benchmark]
    public int Replayed() => _questions.Replayed();
}
