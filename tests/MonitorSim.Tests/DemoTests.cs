using System.Text;
using MonitorSim.Demo;
using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.Tests;

public sealed class DemoTests
{
    public static TheoryData<string> Cases => [.. Directory.GetDirectories(Path.Combine(AppContext.BaseDirectory, "traces")).Select(place => Path.GetFileName(place)!)];

    /// <summary>The demo's recordings are those that the generator writes, byte for byte.</summary>
    [Fact]
    public void RecordingsAreWhatTheGeneratorWrites()
    {
        var recordings = SlabSaw.Recordings().ToList();
        Assert.Equal(Cases.Count, recordings.Count);
        foreach (var (name, text) in recordings)
            Assert.Equal(text, File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "traces", name, "trace.csv"), Encoding.UTF8));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void EveryCaseComesOutAsItsPlanExpects(string name)
    {
        var place = Path.Combine(AppContext.BaseDirectory, "traces", name);
        var plan = PlanReader.Read(Path.Combine(place, "plan.json"));
        var result = Replay.Run(plan, PlannedTrace.Read(plan, Path.Combine(place, "trace.csv")));
        Assert.NotEmpty(result.Expect);
        Assert.All(result.Expect, line => Assert.True(line.Holds, line.Because));
    }
}
