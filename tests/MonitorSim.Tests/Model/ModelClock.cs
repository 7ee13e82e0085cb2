using System.Text.Json;

namespace MonitorSim.Tests.Model;

/// <summary>The cycles: when each comes and the newest sample that it sees.</summary>
internal sealed class ModelClock
{
    public ModelClock(JsonElement plan, ModelTrace trace)
    {
        var delay = plan.Time("inputDelay");
        if (plan.Text("cycle") is null or "trace")
        {
            Times = [.. trace.Times.Select(time => time + delay)];
            Samples = [.. Enumerable.Range(0, trace.Count)];
            return;
        }

        for (var time = plan.Time("phase"); time - delay <= trace.Times[^1]; time += plan.Time("cycle"))
        {
            if (time - delay < 0) continue;
            Times.Add(time);
            Samples.Add(Array.FindLastIndex(trace.Times, t => t <= time - delay));
        }
    }

    /// <summary>Cycle times, ns.</summary>
    public List<long> Times { get; } = [];

    /// <summary>The sample that each cycle sees.</summary>
    public List<int> Samples { get; } = [];

    public int Count => Times.Count;
}
