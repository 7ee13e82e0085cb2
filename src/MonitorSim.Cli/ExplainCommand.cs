using System.CommandLine;
using MonitorSim.Explain;
using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.Cli;

/// <summary><c>explain PLAN TRACE</c></summary>
internal static class ExplainCommand
{
    public static Command Create(Terminal terminal, CancellationToken cancel)
    {
        var (plan, trace, noColor) = (Arguments.Plan(), Arguments.Trace(), Arguments.NoColor());
        var command = new Command("explain", "Says in sentences why each trip happened and what would have avoided it. Example: monitorsim explain saw.json monday.csv")
            { plan, trace, noColor };
        command.SetAction(parsed => CommandLine.Guard(terminal, () =>
        {
            var read = PlanReader.Read(parsed.GetValue(plan)!);
            var result = Replay.Run(read, PlannedTrace.Read(read, parsed.GetValue(trace)!), cancel);
            foreach (var line in Explanation.Lines(result)) terminal.Out.WriteLine(line);
            return result.IsTripped ? CommandLine.Tripped : CommandLine.Clean;
        }));
        return command;
    }
}
