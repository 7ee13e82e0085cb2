using System.CommandLine;
using MonitorSim.Explain;
using MonitorSim.Plans;
using MonitorSim.Plots;
using MonitorSim.Replays;
using MonitorSim.Traces;
using Spectre.Console;

namespace MonitorSim.Cli;

/// <summary><c>demo [FOLDER]</c>: the slab saw.</summary>
internal static class DemoCommand
{
    public static Command Create(Terminal terminal)
    {
        var folder = new Argument<string>("FOLDER") { Description = "Where results and pictures go.", DefaultValueFactory = _ => "monitorsim-demo" };
        var (quiet, noColor) = (Arguments.Quiet(), Arguments.NoColor());
        var command = new Command("demo", "The whole tour on the recordings of a slab saw that come along. Example: monitorsim demo tour") { folder, quiet, noColor };
        command.SetAction(parsed => CommandLine.Guard(terminal, () =>
        {
            var said = parsed.GetValue(quiet) ? terminal.Quiet() : terminal;
            Play(said, parsed.GetValue(noColor), parsed.GetValue(folder)!);
            return CommandLine.Clean;
        }));
        return command;
    }

    private static void Play(Terminal terminal, bool noColor, string folder)
    {
        var source = Path.Combine(AppContext.BaseDirectory, "traces");
        var table = Tables.Headed("case", "axis", "monitor", "verdict", "when", "seen", "limit");
        var pictures = new List<string>();
        foreach (var place in Directory.GetDirectories(source).Order(StringComparer.Ordinal))
        {
            var name = Path.GetFileName(place);
            var plan = PlanReader.Read(Path.Combine(place, "plan.json"));
            var trace = PlannedTrace.Read(plan, Path.Combine(place, "trace.csv"), terminal.Cancel);
            var result = Replay.Run(plan, trace, terminal.Cancel);
            terminal.Write(Path.Combine(folder, name, "result.json"), stream => ResultJson.Write(result, stream));
            terminal.Write(Path.Combine(folder, name, "story.txt"), stream => stream.Write(System.Text.Encoding.UTF8.GetBytes(string.Join('\n', Explanation.Lines(result)) + "\n")));
            pictures.AddRange(terminal.Pictures(Path.Combine(folder, name), into => ReplayPlot.Save(result, trace, into, terminal.Cancel)));
            var units = new UserUnits(plan);
            if (!result.IsTripped) table.AddRow(Tables.Cells(name, "", "", "clean", "", "", ""));
            foreach (var trip in result.Trips)
            {
                table.AddRow(Tables.Cells(name, trip.Axis, trip.Monitor, "tripped", Tables.Time(trip.Time),
                    units.Text(trip.Axis, trip.Monitor, trip.Side, trip.Value, trip.Unit), units.Text(trip.Axis, trip.Monitor, trip.Side, trip.Limit, trip.Unit)));
            }
        }

        var console = Tables.Console(terminal, noColor);
        console.Write(table);
        console.WriteLine($"Pictures, stories and results are in {Path.GetFullPath(folder)}:");
        foreach (var picture in pictures) console.WriteLine($"  {Path.GetRelativePath(folder, picture)}");
        console.WriteLine(Cautions.Text);
    }
}
