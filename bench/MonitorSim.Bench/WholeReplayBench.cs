using System.Numerics.Tensors;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using MonitorSim.Plans;

namespace MonitorSim.Bench;

/// <summary>A whole replay with its evidence, three axes and sixteen monitors that never trip, beside scanning each column once for each monitor.</summary>
[SimpleJob(RunStrategy.Monitoring, warmupCount: 2, iterationCount: 7)]
public class WholeReplayBench
{
    private const string EachAxis = """
        { "name": "speed", "function": "SLS", "limit": "40 mm/s", "filter": "8 ms", "reaction": "stop 1" },
        { "name": "set-up", "function": "SLS", "limit": "35 mm/s", "delay": "200 ms", "reaction": "stop 0" },
        { "name": "range", "function": "SSR", "lower": "-50 mm/s", "upper": "50 mm/s", "signed": true, "reaction": "stop 1" },
        { "name": "window", "function": "SLP", "lower": "-1 m", "upper": "1 m", "reaction": "stop 0" },
        { "name": "force", "function": "SLT", "limit": "100 N", "filter": "20 ms", "reaction": "stop 0" }
        """;

    private readonly double[][] _columns = new double[9][];
    private Plan _plan = null!;
    private Trace _trace = null!;

    [Params(10_000, 100_000, 1_000_000, 10_000_000)]
    public int Samples { get; set; }

    [GlobalSetup]
    public void SetUp()
    {
        for (var k = 0; k < _columns.Length; k++) _columns[k] = Recordings.Speed(Samples, k);
        _trace = Recordings.Trace([.. _columns.Select((values, k) => ($"c{k}", values))]);
        var axes = Enumerable.Range(0, 3).Select(axis => $$"""
            "axis{{axis}}": { "motion": "linear", "stops": { "STO": {}, "SS1": { "variant": "t", "time": "1 s" } },
              "channels": { "position": { "column": "c{{3 * axis}}", "unit": "mm" }, "velocity": { "column": "c{{3 * axis + 1}}", "unit": "mm/s" }, "torque": { "column": "c{{3 * axis + 2}}", "unit": "N" } },
              "monitors": [ {{EachAxis}}{{(axis == 0 ? """, { "name": "other", "function": "SLS", "limit": "45 mm/s", "reaction": "stop 0" }""" : "")}} ] }
            """);
        _plan = PlanReader.Parse($$"""{ "plan": 1, "title": "bench", "axes": { {{string.Join(", ", axes)}} } }""");
    }

    [Benchmark(Baseline = true)]
    public double ScanEachColumnOncePerMonitor()
    {
        double largest = 0;
        for (var axis = 0; axis < 3; axis++)
            foreach (var column in axis == 0 ? [1, 1, 1, 0, 2, 1] : new[] { 1, 1, 1, 0, 2 }) largest = Math.Max(largest, TensorPrimitives.MaxMagnitude<double>(_columns[3 * axis + column]));
        return largest;
    }

    [Benchmark]
    public int ReplayAlone() => Replay.RunEngine(_plan, new(_plan, _trace), default).Done;

    [Benchmark]
    public int ReplayWithEvidence() => Replay.Run(_plan, _trace).Headroom.Count;
}
