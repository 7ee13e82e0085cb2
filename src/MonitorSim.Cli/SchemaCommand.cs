using System.CommandLine;
using MonitorSim.Plans;
using MonitorSim.Replays;
using MonitorSim.Synthesis;

namespace MonitorSim.Cli;

/// <summary><c>schema</c></summary>
internal static class SchemaCommand
{
    public static Command Create(Terminal terminal)
    {
        var (which, quiet, noColor) = (new Argument<string>("WHICH") { Description = "Which schema: plan (default), scenario or result.", DefaultValueFactory = _ => "plan" }, Arguments.Quiet(), Arguments.NoColor());
        which.AcceptOnlyFromAmong("plan", "scenario", "result");
        var command = new Command("schema", "Prints the JSON Schema of plans, scenarios or results, for editors and other tools. Example: monitorsim schema > monitorsim-plan.schema.json")
            { which, quiet, noColor };
        // The schema is for programs: --quiet is accepted as everywhere and leaves it.
        command.SetAction(parsed =>
        {
            terminal.Out.WriteLine(parsed.GetValue(which) switch
            {
                "scenario" => ScenarioSchema.Json(),
                "result" => ResultSchema.Json(),
                _ => PlanSchema.Json(),
            });
            return CommandLine.Clean;
        });
        return command;
    }
}
