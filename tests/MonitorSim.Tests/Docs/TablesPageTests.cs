using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using MonitorSim.Cli;
using MonitorSim.Motion.Envelopes;
using MonitorSim.Plans;
using MonitorSim.Traces;
using MonitorSim.Tuning;

namespace MonitorSim.Tests.Docs;

/// <summary>The page of the tables names each table's columns and their types as they are written.</summary>
public partial class TablesPageTests
{
    [Fact]
    public void Every_table_stands_there_with_its_columns()
    {
        var said = Section().Split(File.ReadAllText(Page())).Skip(1).Chunk(2)
            .Select(part => $"{part[0]}: {string.Join(", ", Row().Matches(part[1]).Select(row => $"{row.Groups[1].Value} {row.Groups[2].Value}").Skip(1))}");

        Assert.Equal(Written().Select(sheet => $"{sheet.Name}: {string.Join(", ", sheet.Columns.Select(column => $"{column.Name} {Word(column.Type)}"))}"), said);
    }

    private static IEnumerable<Sheet> Written()
    {
        var folder = Path.Combine(AppContext.BaseDirectory, "traces", "bridge-simulated");
        var plan = PlanReader.Read(Path.Combine(folder, "plan.json"));
        var trace = PlannedTrace.Read(plan, Path.Combine(folder, "trace.csv"));
        var phases = new RunPhases("trace.csv", new("bridge", "set-up speed", 0, 0, 0, 0, 0));
        return [.. ResultSheets.Of(Replay.Run(plan, trace)), .. TuneSheets.Of(Tune.Run(plan, [trace]) with { Phases = [phases] }), .. StopSheets.Of([], []), .. StopSheets.Of([], new EnvelopeResult[1])];
    }

    private static string Word(CellType type) => type switch
    {
        CellType.Text => "text",
        CellType.Count => "whole",
        CellType.Number => "number",
        CellType.Seconds => "seconds",
        _ => "yes or no",
    };

    private static string Page([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "../../../docs/formats/tables.md"));

    [GeneratedRegex("^### (.*)$", RegexOptions.Multiline)]
    private static partial Regex Section();

    [GeneratedRegex(@"^\| ([^|]+) \| ([^|]+) \|", RegexOptions.Multiline)]
    private static partial Regex Row();
}
