using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using MonitorSim.Plans;

namespace MonitorSim.Bench;

/// <summary>What each further monitor costs: quiet ones on one axis of 1,000,000 samples.</summary>
[SimpleJob(RunStrategy.Monitoring, warmupCount: 2, iterationCount: 7)]
public class MonitorsBench
{
    private const int Samples = 1_000_000;
    private Plan _plan = null!;
    private Trace _trace = null!;

    [Params(1, 4, 16, 64)]
    public int Monitors { get; set; }

    [GlobalSetup]
    public void SetUp()
    {
        _trace = Recordings.Trace(("v", Recordings.Speed(Samples)));
        var monitors = Enumerable.Range(0, Monitors).Select(k => $$"""{ "name": "m{{k}}", "function": "SLS", "limit": "{{35 + k}} mm/s", "filter": "{{k % 8}} ms", "reaction": "stop 0" }""");
        _plan = PlanReader.Parse($$"""
            { "plan": 1, "title": "bench", "axes": { "axis": { "motion": "linear", "stops": { "STO": {} }, "channels": { "velocity": { "column": "v", "unit": "mm/s" } },
              "monitors": [ {{string.Join(", ", monitors)}} ] } } }
            """);
    }

    [Benchmark]
    public int ReplayAlone() => Replay.RunEngine(_plan, new(_plan, _trace), default).Done;

    [Benchmark]
    public int ReplayWithEvidence() => Replay.Run(_plan, _trace).Headroom.Count;
}
