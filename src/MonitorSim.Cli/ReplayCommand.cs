using System.CommandLine;
using MonitorSim.Plans;
using MonitorSim.Plots;
using MonitorSim.Replays;
using MonitorSim.Reports;
using MonitorSim.Traces;

namespace MonitorSim.Cli;

/// <summary><c>replay PLAN TRACE…</c></summary>
internal static class ReplayCommand
{
    public static Command Create(Terminal terminal)
    {
        var (plan, traces, quiet, noColor) = (Arguments.Plan(), Arguments.Traces(), Arguments.Quiet(), Arguments.NoColor());
        var json = Arguments.File("--json", "Writes the result as JSON; - is standard output.");
        var csv = Arguments.Folder("--csv", "Writes verdict, trips, excursions, headroom, coverage, states and simulated motion as CSV files.");
        var parquet = Arguments.Parquet();
        var plot = Arguments.Folder("--plot", "Draws a picture an axis, PNG and SVG.");
        var report = Arguments.Report();
        var faults = FaultOption.Create();
        var command = new Command("replay", "Replays recordings: verdict, evidence and headroom. Example: monitorsim replay saw.json monday.csv --json result.json")
            { plan, traces, faults, json, csv, parquet, plot, report, quiet, noColor };
        command.SetAction(parsed => CommandLine.Guard(terminal, () =>
        {
            var files = parsed.GetValue(traces)!;
            var said = parsed.GetValue(quiet) || parsed.GetValue(json) == "-" || parsed.GetValue(report) == "-" ? terminal.Quiet() : terminal;
            var read = Input.Plan(parsed.GetValue(plan)!, terminal.Cancel);
            var injected = FaultOption.Read(parsed.GetValue(faults));
            using var tables = parsed.GetValue(parquet) is { } into ? new ParquetFolder(into, terminal.Cancel) : null;
            var (tripped, places) = (false, new Several(files));
            var told = new List<ReplayedTrace>();
            for (var index = 0; index < files.Length; index++)
            {
                var trace = PlannedTrace.Read(read, files[index], terminal.Cancel);
                var result = Replay.Run(read, trace, injected, terminal.Cancel);
                tripped |= result.IsTripped;
                Tables.Write(said, parsed.GetValue(noColor), result);
                if (parsed.GetValue(report) is not null) told.Add(new(trace, result, injected));
                if (parsed.GetValue(json) is { } path) terminal.Write(places.File(path, index), stream => ResultJson.Write(result, stream));
                if (parsed.GetValue(csv) is { } folder) SheetCsv.Write(terminal, places.Folder(folder, index), ResultSheets.Of(result));
                tables?.Add(ResultSheets.Of(result, files[index]));
                if (parsed.GetValue(plot) is { } pictures)
                    foreach (var picture in terminal.Pictures(places.Folder(pictures, index), into => ReplayPlot.Save(result, trace, into, terminal.Cancel))) said.Out.WriteLine(picture);
            }

            tables?.Complete();
            if (parsed.GetValue(report) is { } page) terminal.Write(page, stream => HtmlReport.Write(new ReplayReport(read, told), stream));
            return tripped ? CommandLine.Tripped : CommandLine.Clean;
        }));
        return command;
    }
}
