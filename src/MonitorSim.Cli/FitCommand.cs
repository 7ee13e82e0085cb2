using System.CommandLine;
using System.Globalization;
using MonitorSim.Motion.Fit;
using MonitorSim.Quantities;
using MonitorSim.Traces;
using Spectre.Console;

namespace MonitorSim.Cli;

/// <summary><c>fit PLAN TRACE</c></summary>
internal static class FitCommand
{
    public static Command Create(Terminal terminal)
    {
        var (plan, trace, quiet, noColor) = (Arguments.Plan(), Arguments.Trace(), Arguments.Quiet(), Arguments.NoColor());
        var axis = new Option<string?>("--axis") { Description = "The axis, where the plan has several.", HelpName = "NAME" };
        var coastDown = new Option<bool>("--coast-down") { Description = "Fits a coast-down (speed only), even where the plan has a torque channel." };
        var from = Quantity("--from", "Where the stretch begins, such as \"1.2 s\"; else the whole recording, or the longest stretch without torque by the plan's stops.");
        var until = Quantity("--until", "Where the stretch ends.");
        var above = Quantity("--above", "Slower samples do not count: friction at standstill has no law.");
        var window = Quantity("--window", "How long the windows of a move are; else as the noise of the speed asks for.");
        var inertia = Quantity("--inertia", "The known mass or moment of inertia, load side: a coast-down alone tells ratios only.");
        var asymmetric = new Option<bool>("--asymmetric") { Description = "Lets friction differ by direction; the load is then inside it, and no plant is given." };
        var json = Arguments.File("--json", "Writes the result as JSON; - is standard output.");
        var command = new Command("fit", "Plant parameters from a move with torque or a coast-down, with their uncertainty. Example: monitorsim fit saw.json cut.csv --axis bridge")
            { plan, trace, axis, coastDown, from, until, above, window, inertia, asymmetric, json, quiet, noColor };
        command.SetAction(parsed => CommandLine.Guard(terminal, () =>
        {
            var read = Input.Plan(parsed.GetValue(plan)!, terminal.Cancel);
            var said = parsed.GetValue(quiet) || parsed.GetValue(json) == "-" ? terminal.Quiet() : terminal;
            FitOptions options = new()
            {
                Axis = parsed.GetValue(axis), From = Read(parsed, from), Until = Read(parsed, until), Above = Read(parsed, above), Window = Read(parsed, window), Inertia = Read(parsed, inertia),
                Asymmetric = parsed.GetValue(asymmetric),
            };
            var recording = PlannedTrace.Read(read, parsed.GetValue(trace)!, terminal.Cancel);
            var coasts = parsed.GetValue(coastDown) || (read.Axes.GetValueOrDefault(options.Axis ?? read.Axes.Keys.First()) is { } of && of.Channels.Torque is null);
            var result = coasts ? PlantFit.CoastDown(read, recording, options, terminal.Cancel) : PlantFit.Move(read, recording, options, terminal.Cancel);
            Write(said, parsed.GetValue(noColor), result);
            if (parsed.GetValue(json) is { } path) terminal.Write(path, stream => FitJson.Write(result, stream));
            return CommandLine.Clean;
        }));
        return command;
    }

    private static void Write(Terminal terminal, bool noColor, FitResult result)
    {
        var console = Tables.Console(terminal, noColor);
        var how = result.Method == FitMethod.Move
            ? string.Create(CultureInfo.InvariantCulture, $"move, {result.Equations} windows of {result.Window * 1e3:0.###} ms")
            : string.Create(CultureInfo.InvariantCulture, $"coast-down, {result.Samples} samples");
        console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{result.Trace}, {result.Axis}: {how}, {result.From:0.######} s to {result.Until:0.######} s"));
        var table = Tables.Headed("parameter", "value", "standard error", "95 % from", "95 % to");
        foreach (var parameter in result.Parameters)
        {
            var unit = Unit.Parse(parameter.Unit);
            table.AddRow(Tables.Cells(parameter.Name, parameter.Text, unit.Format(parameter.StandardError, 2), unit.Format(parameter.Lower, 4), unit.Format(parameter.Upper, 4)));
        }

        console.Write(table);
        var left = Unit.Parse(result.Residuals.Unit);
        console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"left over: rms {left.Format(result.Residuals.Rms, 3)} of {left.Format(result.Residuals.SignalRms, 3)}, at most {left.Format(result.Residuals.Max, 3)}; neighbours {result.Residuals.Neighbours:0.00}; condition number {result.Condition:0.#}"));
        foreach (var warning in result.Warnings) console.WriteLine($"warning: {warning}");
        if (FitJson.PlantText(result) is { } plant) terminal.Out.WriteLine(plant);
        console.WriteLine(Cautions.Text);
    }

    private static Option<string?> Quantity(string name, string description) => new(name) { Description = description, HelpName = "QUANTITY" };

    private static Quantity? Read(ParseResult parsed, Option<string?> option)
    {
        if (parsed.GetValue(option) is not { } text) return null;
        if (MonitorSim.Quantities.Quantity.TryParse(text, out var quantity, out var error)) return quantity;
        var split = error!.Split("; ", 2);
        throw new InputException(new Problem(option.Name, split[0], split.Length > 1 ? split[1] : ""));
    }
}
