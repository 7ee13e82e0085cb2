using MonitorSim.Plans;
using MonitorSim.Reports;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Reports;

/// <summary>Replays of the demo's recordings.</summary>
internal static class Demo
{
    public static ReplayedTrace Replayed(string name)
    {
        var place = Path.Combine(AppContext.BaseDirectory, "traces", name);
        return Replayed(Path.Combine(place, "plan.json"), Path.Combine(place, "trace.csv"));
    }

    public static ReplayedTrace Replayed(string planFile, string traceFile)
    {
        var plan = PlanReader.Read(planFile);
        var trace = PlannedTrace.Read(plan, traceFile);
        return new(trace, Replay.Run(plan, trace));
    }

    public static string Page(ReplayedTrace replayed) => HtmlReport.Text(new ReplayReport(replayed.Result.Plan, [replayed]));
}
