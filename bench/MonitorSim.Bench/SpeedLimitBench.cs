using System.Numerics.Tensors;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;

namespace MonitorSim.Bench;

/// <summary>One SLS over 10,000,000 samples of a motor-like speed that never exceed it: its whole replay, and the smallest limit that does not trip; beside the largest magnitude of the same array.</summary>
[SimpleJob(RunStrategy.Monitoring, warmupCount: 2, iterationCount: 9)]
public class SpeedLimitBench
{
    private double[] _speed = [];
    private Questions _questions = null!;

    [GlobalSetup]
    public void SetUp() => _questions = new(_speed = Recordings.Speed(10_000_000), "33 mm/s");

    [Benchmark(Baseline = true)]
    public double MaxMagnitude() => TensorPrimitives.MaxMagnitude<double>(_speed);

    [Benchmark]
    public int QuietReplay() => _questions.Replayed();

    [Benchmark]
    public double WithoutFilter() => _questions.Critical(0);

    [Benchmark]
    public double At100Cycles() => _questions.Critical(99_000_000);

    [Benchmark]
    public int AllFilters() => _questions.Frontier();
}
