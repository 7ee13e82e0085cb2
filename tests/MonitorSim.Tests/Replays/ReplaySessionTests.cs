using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Replays;
using MonitorSim.Signals;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Replays;

public sealed class ReplaySessionTests
{
    /// <summary>Every worked case, driven sample by sample, gives the bytes of the whole replay.</summary>
    [SkippableTheory]
    [InlineData("basic")]
    [InlineData("full")]
    public void SampleBySampleGivesTheSameBits(string suite)
    {
        var folder = Path.Combine(SharedFolder.Cases ?? "", suite);
        Skip.IfNot(Directory.Exists(folder), $"the worked cases are not here: {folder}");
        var compared = 0;
        foreach (var place in Directory.GetDirectories(folder).Where(place => File.Exists(Path.Combine(place, "expected.json"))))
        {
            var plan = PlanReader.Read(Path.Combine(place, "plan.json"));
            var trace = PlannedTrace.Read(plan, Path.Combine(place, "trace.csv"));
            if (plan.Missing == MissingPolicy.Trip && plan.Gap is null) continue;
            var session = new ReplaySession(plan);
            var tracks = plan.Signals.Where(signal => signal.Value.Column is not null)
                .ToDictionary(signal => signal.Key, signal => new SignalReader(signal.Value).Read(signal.Key, trace));
            for (var k = 0; k < trace.Count; k++)
            {
                session.Step(trace.Times[k], session.Columns.ToDictionary(column => column, column => ((NumberColumn)trace.Find(column)!).Values[k]),
                    tracks.ToDictionary(track => track.Key, track => track.Value.At(k)));
            }

            var whole = Replay.Run(plan, trace) with { TraceSha256 = null };
            Assert.Equal(ResultJson.Text(whole), ResultJson.Text(session.Finish(trace.Name)));
            compared++;
        }

        Assert.True(compared > 50, $"only {compared} cases were compared");
    }

    /// <summary>A monitor goes from idle over arming and watching to tripped, and an acknowledgement restarts it.</summary>
    [Fact]
    public void TheStatesOfAMonitorCanBeFollowed()
    {
        var session = new ReplaySession(PlanReader.Parse("""
            { "plan": 1, "signals": { "gate": { "column": "gate" }, "reset": { "column": "reset" } }, "acknowledge": { "signal": "reset" },
              "axes": { "bridge": { "motion": "linear", "channels": { "velocity": { "column": "v", "unit": "mm/s" } }, "stops": { "STO": {} },
                "monitors": [ { "name": "speed", "function": "SLS", "request": "gate", "delay": "2 ms", "limit": "33 mm/s", "reaction": "stop 0" } ] } } }
            """));
        var states = new List<(MonitorState, AxisState)>();
        foreach (var (k, gate, speed, reset) in new[] { (0, false, 50, false), (1, true, 50, false), (2, true, 33, false), (3, true, 33, false), (4, true, 34, true), (5, true, 0, false), (6, false, 0, false) })
        {
            session.Step(k * 1_000_000L, new Dictionary<string, double> { ["v"] = speed }, new Dictionary<string, bool> { ["gate"] = gate, ["reset"] = reset });
            states.Add((session.StateOf("bridge", "speed"), session.StateOf("bridge")));
        }

        Assert.Equal([(MonitorState.Idle, AxisState.Running), (MonitorState.Arming, AxisState.Running), (MonitorState.Arming, AxisState.Running),
            (MonitorState.Watching, AxisState.Running), (MonitorState.Tripped, AxisState.TorqueOff), (MonitorState.Arming, AxisState.Running), (MonitorState.Idle, AxisState.Running)], states);
    }
}
