using System.CommandLine;
using System.Globalization;
using System.Text;
using MonitorSim.Plans;
using MonitorSim.Synthesis.Vectors;
using Spectre.Console;

namespace MonitorSim.Cli;

/// <summary><c>vectors PLAN -o FOLDER</c></summary>
internal static class VectorsCommand
{
    public static Command Create(Terminal terminal)
    {
        var (plan, quiet, noColor) = (Arguments.Plan(), Arguments.Quiet(), Arguments.NoColor());
        var folder = new Option<string>("-o", "--output") { Description = "Where the vectors go: a new or an empty folder.", HelpName = "FOLDER", Required = true };
        var force = new Option<bool>("--force") { Description = "Writes into a folder that holds something; files of the same names are replaced, others stay." };
        var command = new Command("vectors", "Boundary vectors of a plan: short recordings that meet every branch from both sides, with what must come of them. Example: monitorsim vectors saw.json -o vectors")
            { plan, folder, force, quiet, noColor };
        command.SetAction(parsed => CommandLine.Guard(terminal, () =>
        {
            var said = parsed.GetValue(quiet) ? terminal.Quiet() : terminal;
            var place = parsed.GetValue(folder)!;
            Refuse(place, parsed.GetValue(force));
            var read = Input.Plan(parsed.GetValue(plan)!, terminal.Cancel);
            var set = BoundaryVectors.Of(read, terminal.Cancel);
            Save(terminal, read, set, place);
            Tell(said, parsed.GetValue(noColor), set, place);
            foreach (var failed in set.Failed) terminal.Error.WriteLine($"{failed}; this is an error of the generator, the vector was not written");
            return set.Failed.Count == 0 ? CommandLine.Clean : CommandLine.Failed;
        }));
        return command;
    }

    private static void Refuse(string folder, bool force)
    {
        if (string.IsNullOrWhiteSpace(folder)) throw new InputException(new Problem("-o", "the path is empty", "name a folder"));
        if (File.Exists(folder)) throw new InputException(new Problem(folder, "this is a file", "name a folder"));
        if (!force && Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any())
            throw new InputException(new Problem(folder, "the folder is not empty", "name a new one, or add --force to write into it"));
    }

    private static void Save(Terminal terminal, Plan plan, VectorSet set, string folder)
    {
        foreach (var vector in set.Vectors)
        {
            Write(Path.Combine(vector.Name, "plan.json"), PlanWriter.Write(vector.Plan));
            Write(Path.Combine(vector.Name, "trace.csv"), vector.Csv);
        }

        terminal.Write(Path.Combine(folder, "manifest.json"), stream => VectorManifest.WriteJson(plan, set, stream));
        Write("manifest.md", VectorManifest.Markdown(plan, set));

        void Write(string name, string text) => terminal.Write(Path.Combine(folder, name), stream => stream.Write(Encoding.UTF8.GetBytes(text)));
    }

    private static void Tell(Terminal terminal, bool noColor, VectorSet set, string folder)
    {
        var console = Tables.Console(terminal, noColor);
        var table = Tables.Headed("axis", "monitor", "side", "branches", "met", "not met");
        var met = set.Vectors.SelectMany(vector => vector.Meets).Distinct().ToList();
        foreach (var group in met.Concat(set.Missed.Select(miss => miss.Branch)).GroupBy(branch => (branch.Axis, branch.Monitor, Side: Side(branch))))
        {
            var missed = set.Missed.Where(miss => group.Contains(miss.Branch)).Select(miss => $"{miss.Branch.Rule}, {miss.Branch.From}: {miss.Why}").ToList();
            table.AddRow(Tables.Cells(group.Key.Axis, group.Key.Monitor, group.Key.Side, Count(group.Count()), Count(group.Count() - missed.Count), string.Join("; ", missed)));
        }

        console.Write(table);
        foreach (var note in set.Notes) console.WriteLine(note);
        console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{set.Met} of {set.Total} branches are met by {set.Vectors.Count} vectors, in {Path.GetFullPath(folder)}"));
        console.WriteLine("Hold them against this plan with: monitorsim check FOLDER/plan.json FOLDER/trace.csv");
        console.WriteLine(Cautions.Text);
    }

    private static string Side(Branch branch) => branch.Level is { } level ? string.Create(CultureInfo.InvariantCulture, $"{branch.Side} level {level}") : branch.Side ?? "";

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);
}
