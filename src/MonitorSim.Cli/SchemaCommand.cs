using System.CommandLine;
using MonitorSim.Plans;

namespace MonitorSim.Cli;

/// <summary><c>schema</c></summary>
internal static class SchemaCommand
{
    public static Command Create(Terminal terminal)
    {
        var command = new Command("schema", "Prints the JSON Schema of plans, for editors. Example: monitorsim schema > monitorsim-plan.schema.json");
        command.SetAction(_ =>
        {
            terminal.Out.WriteLine(PlanSchema.Json());
            return CommandLine.Clean;
        });
        return command;
    }
}
