using MonitorSim.Plans;
using MonitorSim.Replays;
using MonitorSim.Traces;
using MonitorSim.Tuning;

namespace MonitorSim.Tests.Tuning;

/// <summary>What tuning asks of a long recording must not grow with it: a day at 1 kHz is 86,400,000 cycles.</summary>
public sealed class TuneMemoryTests
{
    private const int Samples = 400_000;

    [Theory]
    [InlineData(""" "function": "SLS", "limit": "125 mm/s", "filter": "3 ms" """)]
    [InlineData(""" "function": "SSR", "lower": "-125 mm/s", "upper": "125 mm/s", "signed": true, "filter": "3 ms" """)]
    public void NothingIsKeptForEachCycle(string function)
    {
        var plan = PlanReader.Parse($$"""
            { "plan": 1, "title": "long", "axes": { "x": { "motion": "linear", "stops": { "STO": {} }, "channels": { "velocity": { "column": "v", "unit": "mm/s" } },
              "monitors": [ { "name": "m", {{function}}, "reaction": "none" } ] } } }
            """);
        var noise = new Random(7);
        long[] times = [.. Enumerable.Range(0, Samples).Select(k => k * 1_000_000L)];
        double[] speeds = [.. times.Select(time => Math.Round(125.6 * Math.Cos(2 * Math.PI * time / 2e10) + noise.NextDouble() - 0.5, 6))];
        var engine = Replay.RunEngine(plan, new Inputs(plan, new Trace("long", times, [new NumberColumn("v", null, speeds)])), default);
        var run = engine.Runs.Single(run => !run.IsStop);
        var sweep = new SideSweep(run, 0, engine.Clock);
        var delay = new LongestDelay(run, 0, engine.Clock);

        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.NotNull(delay.In(0, engine.Done, out _));
        Assert.NotNull(sweep.Critical(0, run.Filter, engine.Done).Value);
        Assert.NotEmpty(sweep.Frontier(0, engine.Done));
        Assert.NotNull(sweep.LongestRun(engine.Done));
        // Steps of the frontier come and go, ever more rarely; a time and a measure kept for each cycle would take more.
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 1, 16 * Samples);
    }
}
