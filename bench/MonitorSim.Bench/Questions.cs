using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Replays;
using MonitorSim.Tuning;

namespace MonitorSim.Bench;

/// <summary>One SLS on one recorded speed, ready to be asked.</summary>
internal sealed class Questions
{
    private readonly Engine _engine;
    private readonly MonitorRun _run;

    public Questions(double[] speed, string limit)
    {
        Trace = Recordings.Trace(("v", speed));
        Plan = new Plan
        {
            Axes = new Dictionary<string, AxisPlan>
            {
                ["bridge"] = new()
                {
                    Channels = new() { Velocity = new() { Column = "v", Unit = "mm/s" } },
                    Stops = new() { Sto = new() },
                    Monitors = [new Sls { Name = "speed", Limit = limit, Reaction = Reaction.Stop0 }],
                },
            },
        };
        _engine = Replay.RunEngine(Plan, new Inputs(Plan, Trace), default);
        _run = _engine.Runs.First(run => run.Name == "speed");
    }

    public Plan Plan { get; }

    public Trace Trace { get; }

    /// <summary>The replay alone, without its evidence.</summary>
    public int Replayed() => Replay.RunEngine(Plan, new Inputs(Plan, Trace), default).Done;

    /// <summary>The critical limit at one filter, ns.</summary>
    public double Critical(long filter) => new SideSweep(_run, 0, _engine.Clock).Critical(0, filter, _engine.Done).Value!.Value.Value;

    /// <summary>The critical limits at all filters.</summary>
    public int Frontier() => new SideSweep(_run, 0, _engine.Clock).Frontier(0, _engine.Done).Count;
}
