using System.CommandLine;
using MonitorSim.Plans;

namespace MonitorSim.Cli;

/// <summary><c>schema</c></summary>
internal static class SchemaCommand
{
    public static Command Create(Terminal terminal)
    {
        var (which, quiet, noColor) = (new Argument<string>("WHICH") { Description = "Which schema: plan.", DefaultValueFactory = _ => "plan" }, Arguments.Quiet(), Arguments.NoColor());
        which.AcceptOnlyFromAmong("plan");
        var command = new Command("schema", "Prints the JSON Schema of plans, for editors. Example: monitorsim schema > monitorsim-plan.schema.json") { which, quiet, noColor };
        // The schema is for programs: --quiet is accepted as everywhere and leaves it.
        command.SetAction(_ =>
        {
            terminal.Out.WriteLine(PlanSchema.Json());
            return CommandLine.Clean;
        });
        return command;
    }
}
