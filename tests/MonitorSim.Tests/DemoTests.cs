using System.Text;
using MonitorSim.Demo;
using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.Tests;

/// <summary>The slab saw of <c>traces/</c>: every case is what its generator writes, comes out as its plan expects, and tells its lesson.</summary>
public sealed class DemoTests
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "traces");

    public static TheoryData<string> Cases => [.. DemoCases.All.Select(demo => demo.Name)];

    [Fact]
    public void EveryFolderHasItsCaseAndEveryCaseItsFolder() =>
        Assert.Equal(Directory.GetDirectories(Folder).Select(Path.GetFileName).Order(StringComparer.Ordinal), DemoCases.All.Select(demo => demo.Name));

    [Fact]
    public void TheListIsComplete() =>
        Assert.Equal(typeof(DemoCases).Assembly.GetTypes().Count(type => type.IsClass && type.IsAssignableTo(typeof(IDemoCase))), DemoCases.All.DistinctBy(demo => demo.GetType()).Count());

    /// <summary>The recordings are those that the generator writes, byte for byte.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void RecordingsAreWhatTheGeneratorWrites(string name) => InCulture.Each(() =>
    {
        using var written = new MemoryStream();
        TraceWriter.Write(DemoCases.All.Single(demo => demo.Name == name).Record().ToTrace(name), written);
        Assert.Equal(Encoding.UTF8.GetString(written.ToArray()), File.ReadAllText(Path.Combine(Folder, name, "trace.csv"), Encoding.UTF8));
    });

    [Theory]
    [MemberData(nameof(Cases))]
    public void EveryCaseComesOutAsItsPlanExpects(string name)
    {
        var result = Result(name);
        Assert.NotEmpty(result.Expect);
        Assert.All(result.Expect, line => Assert.True(line.Holds, line.Because));
    }

    /// <summary>Every function has a case in which it has something to say: a trip, or an output that changes.</summary>
    [Fact]
    public void EveryFunctionHasACase()
    {
        var results = DemoCases.All.Select(demo => Result(demo.Name)).ToList();
        var told = results.SelectMany(result => result.Trips.Select(trip => trip.Function).Concat(Switching(result))).ToHashSet(StringComparer.Ordinal);
        string[] wanted = [.. MonitorTypes.Functions, "STO", "SS1", "SOS", "SBC", "two channels"];
        Assert.Empty(wanted.Except(told));

        // SS2 does not trip in the demo: it stops well, and what follows goes wrong.
        var reached = results.SelectMany(result => result.States).SelectMany(axis => axis.Changes).Select(change => change.State).ToHashSet();
        Assert.Superset(Enum.GetValues<AxisState>().ToHashSet(), reached);
        Assert.Equal(Enum.GetValues<StopVariant>(), DemoCases.All.SelectMany(demo => Plan(demo.Name).Axes.Values)
            .SelectMany(axis => new[] { axis.Stops.Ss1, axis.Stops.Ss2 }).OfType<RampStopPlan>().Where(stop => stop.Request is not null).Select(stop => stop.Variant).Distinct().Order());
    }

    private static IEnumerable<string> Switching(ReplayResult result) =>
        from output in result.Outputs
        where output.Edges.Count > 1
        from monitor in result.Plan.Axes[output.Axis].Monitors
        where monitor.Name == output.Monitor
        select monitor.Function;

    private static Plan Plan(string name) => PlanReader.Read(Path.Combine(Folder, name, "plan.json"));

    private static ReplayResult Result(string name) => Replay.Run(Plan(name), PlannedTrace.Read(Plan(name), Path.Combine(Folder, name, "trace.csv")));
}
