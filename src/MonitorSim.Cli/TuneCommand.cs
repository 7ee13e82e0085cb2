using System.CommandLine;
using System.Globalization;
using MonitorSim.Explain;
using MonitorSim.Plans;
using MonitorSim.Traces;
using MonitorSim.Tuning;
using Spectre.Console;

namespace MonitorSim.Cli;

/// <summary><c>tune PLAN TRACE…</c></summary>
internal static class TuneCommand
{
    public static Command Create(Terminal terminal, CancellationToken cancel)
    {
        var (plan, traces, quiet, noColor) = (Arguments.Plan(), Arguments.Traces(), Arguments.Quiet(), Arguments.NoColor());
        var json = Arguments.File("--json", "Writes the result as JSON; - is standard output.");
        var command = new Command("tune", "What limit, filter and delay the recordings need, and how sure that is. Example: monitorsim tune saw.json run*.csv --json tuned.json")
            { plan, traces, json, quiet, noColor };
        command.SetAction(parsed => CommandLine.Guard(terminal, () =>
        {
            var read = Input.Plan(parsed.GetValue(plan)!);
            var said = parsed.GetValue(quiet) || parsed.GetValue(json) == "-" ? terminal.Quiet() : terminal;
            var result = Tune.Run(read, [.. parsed.GetValue(traces)!.Select(file => PlannedTrace.Read(read, file))], cancel);
            Write(said, parsed.GetValue(noColor), read, result);
            if (parsed.GetValue(json) is { } path) terminal.Write(path, stream => TuneJson.Write(result, stream));
            return CommandLine.Clean;
        }));
        return command;
    }

    private static void Write(Terminal terminal, bool noColor, Plan plan, TuneResult result)
    {
        var units = new UserUnits(plan);
        var console = Tables.Console(terminal, noColor);
        var table = Tables.Headed("axis", "monitor", "side", "limit", "needed", "filter", "filter above", "delay above", "runs", "normal 95/95", "largest of runs 95/95");
        foreach (var limit in result.Monitors)
        {
            string Text(double? value) => units.Text(limit.Axis, limit.Monitor, limit.Side, value, limit.Unit);
            var runs = limit.Runs.Count(run => run.Critical is not null);
            table.AddRow(Tables.Cells(limit.Axis, limit.Level is { } level ? $"{limit.Monitor} (level {level})" : limit.Monitor, limit.Side, Text(limit.Limit), units.Enough(limit.Axis, limit.Monitor, limit.Side, limit.Level, limit.Critical, limit.Unit, limit.IsLower),
                Tables.Time(limit.Filter), Tables.Time(limit.FilterAbove), Tables.Time(limit.DelayAbove), runs.ToString(CultureInfo.InvariantCulture), Text(limit.Bounds.Normal),
                limit.Bounds.DistributionFree is null ? $"needs {limit.Bounds.RunsNeeded} runs" : Text(limit.Bounds.DistributionFree)));
        }

        console.Write(table);
        console.WriteLine("Bounds hold for independent runs of the same programme; pieces of one recording are not independent runs.");
        console.WriteLine(Cautions.Short);
    }
}
