using System.CommandLine;
using MonitorSim.Plots;
using MonitorSim.Reports;
using MonitorSim.Tuning;

namespace MonitorSim.Cli;

/// <summary><c>tune PLAN TRACE…</c> and <c>tune --join PART…</c></summary>
internal static class TuneCommand
{
    public static Command Create(Terminal terminal)
    {
        var (quiet, noColor) = (Arguments.Quiet(), Arguments.NoColor());
        var plan = new Argument<string?>("PLAN") { Description = "The plan, a JSON file; - is standard input.", Arity = ArgumentArity.ZeroOrOne };
        var traces = new Argument<string[]>("TRACE") { Description = "The recordings, CSV, Parquet or HDF5, each a run; - is standard input.", Arity = ArgumentArity.ZeroOrMore };
        var join = new Option<string[]>("--join")
        {
            Description = "Joins parts that were written with --json, in any order and grouping: the same as one run over all recordings.",
            HelpName = "PART",
            Arity = ArgumentArity.OneOrMore,
            AllowMultipleArgumentsPerToken = true,
        };
        var json = Arguments.File("--json", "Writes the result as JSON; - is standard output.");
        var csv = Arguments.Folder("--csv", "Writes limits and frontiers as CSV files.");
        var parquet = Arguments.Parquet();
        var plot = Arguments.Folder("--plot", "Draws each limit's frontier with the present limit, what each run needs and the room, PNG and SVG; the runs' own frontiers too, unless parts are joined.");
        var report = Arguments.Report();
        var coverage = new Option<double?>("--coverage") { Description = "The share of future runs that bounds are for; 0.95 without it.", HelpName = "SHARE" };
        var confidence = new Option<double?>("--confidence") { Description = "How sure bounds are; 0.95 without it.", HelpName = "SHARE" };
        var phases = new Option<bool>("--phases") { Description = "Studies all phases of the plan's cycle, not one lucky phase: the earliest and the latest trip, and a phase without." };
        var hazards = new HazardOptions();
        var command = new Command("tune", "What limit, filter and delay the recordings need, and how sure that is for the next run. "
            + "Example: monitorsim tune saw.json run*.csv --json tuned.json. In parts: monitorsim tune --join monday.json tuesday.json")
            { plan, traces, join, json, csv, parquet, plot, report, phases, coverage, confidence, quiet, noColor };
        foreach (var option in hazards.All) command.Add(option);
        command.Validators.Add(parsed =>
        {
            var (parts, files) = (parsed.GetValue(join) ?? [], parsed.GetValue(traces) ?? []);
            if (parts.Length > 0 && parsed.GetValue(plan) is not null) parsed.AddError("--join takes parts only: recordings and plan were read when the parts were made.");
            if (parts.Length == 0 && files.Length == 0) parsed.AddError("Give a plan and at least one recording, or --join and the parts to join.");
            foreach (var share in new[] { coverage, confidence })
                if (parsed.GetValue(share) is <= 0 or >= 1) parsed.AddError($"{share.Name} is a share between 0 and 1, such as 0.95.");
        });
        command.SetAction(parsed => CommandLine.Guard(terminal, () =>
        {
            var said = parsed.GetValue(quiet) || parsed.GetValue(json) == "-" || parsed.GetValue(report) == "-" ? terminal.Quiet() : terminal;
            var read = parsed.GetValue(plan) is { } file ? Input.Plan(file, terminal.Cancel) : null;
            var (need, asked) = (hazards.Need(parsed), hazards.Hazards(parsed, read));
            var tuned = parsed.GetValue(join) is { Length: > 0 } parts
                ? new(Tune.Join([.. parts.Select(TuneReader.Read)], parts), [])
                : Files(terminal, read!, parsed.GetValue(traces)!, parsed.GetValue(quiet), parsed.GetValue(phases), parsed.GetValue(plot) is not null);
            foreach (var problem in tuned.Problems) terminal.Error.WriteLine(problem);
            if (tuned.Result is not { } found) return CommandLine.Failed;
            var result = found.WithBounds(parsed.GetValue(coverage) ?? 0.95, parsed.GetValue(confidence) ?? 0.95);
            HazardOptions.RequireConcern(asked, result);
            result = Rooms.OfEach(result, need, asked);
            TuneTables.Write(said, parsed.GetValue(noColor), result, hazards.IsGiven(parsed));
            if (parsed.GetValue(json) is { } path) terminal.Write(path, stream => TuneJson.Write(result, stream));
            if (parsed.GetValue(csv) is { } folder) SheetCsv.Write(terminal, folder, TuneSheets.Of(result));
            ParquetFolder.Write(parsed.GetValue(parquet), TuneSheets.Of(result), terminal.Cancel);
            if (parsed.GetValue(plot) is { } pictures)
                foreach (var picture in terminal.Pictures(pictures, into => TunePlot.Save(result, into, terminal.Cancel))) said.Out.WriteLine(picture);
            if (parsed.GetValue(report) is { } page) terminal.Write(page, stream => HtmlReport.Write(new TuneReport(result, read), stream));
            return tuned.Problems.Count == 0 ? CommandLine.Clean : CommandLine.Failed;
        }));
        return command;
    }

    private static TunedFiles Files(Terminal terminal, Plan plan, string[] traces, bool quiet, bool phases, bool frontiers) =>
        ProgressBar.Over(terminal, "tuning", traces.Length, quiet, progress => TuneFiles.Run(plan, traces, progress, phases: phases, frontiers: frontiers, cancel: terminal.Cancel));
}
