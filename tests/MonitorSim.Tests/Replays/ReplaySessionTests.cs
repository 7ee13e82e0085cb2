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
}
