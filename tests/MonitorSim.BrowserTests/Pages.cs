using MonitorSim.Plans;
using MonitorSim.Reports;
using MonitorSim.Traces;
using MonitorSim.Tuning;

namespace MonitorSim.BrowserTests;

/// <summary>Reports about the demo's recordings.</summary>
internal static class Pages
{
    public static ReplayedTrace Replayed(string name)
    {
        var folder = Path.Combine(AppContext.BaseDirectory, "traces", name);
        var plan = PlanReader.Read(Path.Combine(folder, "plan.json"));
        var trace = PlannedTrace.Read(plan, Path.Combine(folder, "trace.csv"));
        return new(trace, Replay.Run(plan, trace));
    }

    public static string ReplayOf(string name) => Of(Replayed(name));

    public static string Of(ReplayedTrace replayed) => HtmlReport.Text(new ReplayReport(replayed.Result.Plan, [replayed]));

    public static string TuningOf(string name)
    {
        var replayed = Replayed(name);
        var tuned = Rooms.Of(Tune.Run(replayed.Result.Plan, [replayed.Trace]), new Need(), new Hazard { Unit = "m/s", Stopping = new ConstantDeceleration(1.5), Overrun = 0.05 });
        return HtmlReport.Text(new TuneReport(tuned, replayed.Result.Plan));
    }
}
