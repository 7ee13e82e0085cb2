using System.Numerics.Tensors;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;

namespace MonitorSim.Bench;

/// <summary>The smallest limit that does not trip, over 10,000,000 samples of a motor-like speed.</summary>
[SimpleJob(RunStrategy.Monitoring, warmupCount: 2, iterationCount: 9)]
public class CriticalLimitBench
{
    private double[] _speed = [];
    private Questions _questions = null!;

    [GlobalSetup]
    public void SetUp() => _questions = new(_speed = Recordings.Speed(10_000_000), "33 mm/s");

    [Benchmark(Baseline = true)]
    public double MaxMagnitude() => TensorPrimitives.MaxMagnitude<double>(_speed);

    [Benchmark]
    public double WithoutFilter() => _questions.Critical(0);

    [Benchmark]
    public double At100Cycles() => _questions.Critical(99_000_000);

    [Benchmark]
    public int AllFilters() => _questions.Frontier();
}
