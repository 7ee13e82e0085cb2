using System.CommandLine;
using System.Globalization;
using System.Text;
using MonitorSim.Plans;
using MonitorSim.Traces;
using Spectre.Console;

namespace MonitorSim.Cli;

/// <summary><c>describe TRACE</c></summary>
internal static class DescribeCommand
{
    public static Command Create(Terminal terminal)
    {
        var (trace, quiet, noColor) = (Arguments.Trace(), Arguments.Quiet(), Arguments.NoColor());
        var plan = Arguments.File("--plan", "Reads the recording as this plan says.");
        var write = Arguments.File("--write", "Starts a plan from the recording; - is standard output.");
        var command = new Command("describe", "What is in a recording: columns, units, rate, jitter, gaps, ranges. Example: monitorsim describe monday.csv --write saw.json")
            { trace, plan, write, quiet, noColor };
        command.SetAction(parsed => CommandLine.Guard(terminal, () =>
        {
            var dialect = parsed.GetValue(plan) is { } path ? PlannedTrace.DialectOf(Input.Plan(path, terminal.Cancel).Trace) : null;
            var survey = TraceSurvey.OfFile(parsed.GetValue(trace)!, dialect, cancel: terminal.Cancel);
            var said = parsed.GetValue(quiet) || parsed.GetValue(write) == "-" ? terminal.Quiet() : terminal;
            Show(said, parsed.GetValue(noColor), survey);
            if (parsed.GetValue(write) is { } file)
                terminal.Write(file, stream => stream.Write(Encoding.UTF8.GetBytes(PlanWriter.Write(PlanStart.Of(survey)))));
            return CommandLine.Clean;
        }));
        return command;
    }

    private static void Show(Terminal terminal, bool noColor, TraceSurvey survey)
    {
        var console = Tables.Console(terminal, noColor);
        console.WriteLine($"{survey.Trace.Name}: {survey.Trace.Count} samples over {Text(survey.Duration / 1e9)} s");
        if (survey.Sampling is { } sampling)
            console.WriteLine($"rate {Text(sampling.Rate)} Hz; steps {Text(sampling.Shortest / 1e6)} to {Text(sampling.Longest / 1e6)} ms, median {Text((double)sampling.Median / 1e6)} ms");
        console.WriteLine($"gaps longer than 5 median steps: {survey.Gaps.Count}");
        foreach (var gap in survey.Gaps.Take(10))
            console.WriteLine($"  {Text(gap.Duration / 1e6)} ms before sample {gap.Sample}, from {Text(gap.From / 1e9)} s to {Text(gap.Until / 1e9)} s");
        foreach (var note in survey.Found.Notes) console.WriteLine($"  {note}");
        var table = Tables.Headed("column", "kind", "unit", "smallest", "largest", "missing");
        foreach (var column in survey.Columns)
        {
            table.AddRow(Tables.Cells(column.Name, column.Kind == ColumnKind.Number ? "numbers" : "words",
                column.Unit is null ? "" : column.UnitIsGuess ? column.Unit + " (guess)" : column.Unit,
                column.Smallest is { } least ? Text(least) : string.Join(", ", column.Words.Take(4)), column.Largest is { } most ? Text(most) : "",
                column.Missing.ToString(CultureInfo.InvariantCulture)));
        }

        if (survey.Columns.Count == 0) console.WriteLine("no column beside the time can be read");
        else console.Write(table);
    }

    private static string Text(double value) => value.ToString("G6", CultureInfo.InvariantCulture);
}
