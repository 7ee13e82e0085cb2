using System.CommandLine;
using MonitorSim.Explain;
using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.Cli;

/// <summary><c>explain PLAN TRACE</c></summary>
internal static class ExplainCommand
{
    public static Command Create(Terminal terminal)
    {
        var (plan, trace, quiet, noColor) = (Arguments.Plan(), Arguments.Trace(), Arguments.Quiet(), Arguments.NoColor());
        var faults = FaultOption.Create();
        var command = new Command("explain", "Says in sentences why each trip happened and what would have avoided it. Example: monitorsim explain saw.json monday.csv")
            { plan, trace, faults, quiet, noColor };
        command.SetAction(parsed => CommandLine.Guard(terminal, () =>
        {
            var read = Input.Plan(parsed.GetValue(plan)!, terminal.Cancel);
            var result = Replay.Run(read, PlannedTrace.Read(read, parsed.GetValue(trace)!, terminal.Cancel), FaultOption.Read(parsed.GetValue(faults)), terminal.Cancel);
            var said = parsed.GetValue(quiet) ? terminal.Quiet() : terminal;
            foreach (var line in Explanation.Lines(result)) said.Out.WriteLine(PrintableText.Of(line));
            return result.IsTripped ? CommandLine.Tripped : CommandLine.Clean;
        }));
        return command;
    }
}
