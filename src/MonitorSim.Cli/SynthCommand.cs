using System.CommandLine;
using System.Globalization;
using MonitorSim.Plans;
using MonitorSim.Synthesis;
using MonitorSim.Traces;

namespace MonitorSim.Cli;

/// <summary><c>synth SCENARIO -o TRACE</c></summary>
internal static class SynthCommand
{
    public static Command Create(Terminal terminal)
    {
        var scenario = new Argument<string>("SCENARIO") { Description = "The scenario, a JSON file; - is standard input." };
        var output = new Option<string>("--output", "-o") { Description = "Where the recording goes, CSV; - is standard output.", HelpName = "TRACE", Required = true };
        var seed = new Option<int?>("--seed") { Description = "Which noise and jitter, instead of the scenario's seed; 0 or more.", HelpName = "NUMBER" };
        var (quiet, noColor) = (Arguments.Quiet(), Arguments.NoColor());
        var command = new Command("synth", "A synthetic recording from a scenario of moves, noise, faults and signals; the same bytes everywhere. Example: monitorsim synth gate.json -o gate.csv --seed 7")
            { scenario, output, seed, quiet, noColor };
        command.SetAction(parsed => CommandLine.Guard(terminal, () =>
        {
            var (file, target) = (parsed.GetValue(scenario)!, parsed.GetValue(output)!);
            var said = parsed.GetValue(quiet) || target == "-" ? terminal.Quiet() : terminal;
            var read = Input.Scenario(file, terminal.Cancel);
            if (parsed.GetValue(seed) is { } chosen) read = read with { Seed = chosen };
            var trace = read.ToTrace(file == "-" ? "standard input" : Path.GetFileName(file), terminal.Cancel);
            terminal.Write(target, stream => TraceWriter.Write(trace, stream, PlannedTrace.DialectOf(read.Trace)), endsItsLines: true);
            said.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{target}: {trace.Count} samples, {trace.Times[^1] / 1e9} s, seed {read.Seed}; columns: {string.Join(", ", trace.Columns.Select(Head))}"));
            return CommandLine.Clean;
        }));
        return command;
    }

    private static string Head(Column column) => column.Unit is null ? column.Name : $"{column.Name} [{column.Unit}]";
}
