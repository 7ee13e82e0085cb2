using System.CommandLine;
using MonitorSim.Motion;
using MonitorSim.Motion.Envelopes;
using MonitorSim.Motion.Faults;
using MonitorSim.Plans;
using MonitorSim.Plots;
using MonitorSim.Quantities;
using MonitorSim.Traces;

namespace MonitorSim.Cli;

/// <summary><c>stop PLAN [TRACE]</c></summary>
internal static class StopCommand
{
    public static Command Create(Terminal terminal)
    {
        var (plan, quiet, noColor) = (Arguments.Plan(), Arguments.Quiet(), Arguments.NoColor());
        var trace = new Argument<string?>("TRACE") { Description = "A recording, CSV, Parquet or HDF5: a fault at every sample of it; - is standard input.", Arity = ArgumentArity.ZeroOrOne };
        var fault = new Option<string[]>("--fault") { Description = $"What goes wrong: {string.Join(", ", MachineFaults.Words)}; several may be given. With a recording the default is runaway.", HelpName = "FAULT", AllowMultipleArgumentsPerToken = true };
        var direction = new Option<string?>("--direction") { Description = "Which way a runaway goes: positive or negative; default: both, and the worse counts.", HelpName = "DIRECTION" };
        var demand = new Option<string?>("--demand") { Description = "With a recording: a stop demanded at every moment, as by an emergency stop: stop0, stop1 or stop2. Without --fault nothing else goes wrong.", HelpName = "STOP" };
        var axis = new Option<string?>("--axis") { Description = "One axis only; default: all that have a plant.", HelpName = "AXIS" };
        var speed = new Option<string?>("--speed") { Description = "Stops from this speed by every stop of the axis, instead of from its limits, such as \"500 mm/s\".", HelpName = "SPEED" };
        var horizon = new Option<string?>("--horizon") { Description = "How long each motion is followed; default 10 s with a recording, else 600 s.", HelpName = "TIME" };
        var json = Arguments.File("--json", "Writes the result as JSON; - is standard output.");
        var csv = Arguments.Folder("--csv", "Writes stops and envelopes as CSV files.");
        var parquet = Arguments.Parquet();
        var plot = Arguments.Folder("--plot", "Draws the worst stop over time and the envelope over the recording, PNG and SVG.");
        var command = new Command("stop", "How long and how far an axis goes on: stops from its limits, or with a recording a fault at every moment of it, and the worst. "
            + "How far does the lift drop if its drive runs away at the worst moment? monitorsim stop lift.json monday.csv --fault runaway. "
            + "And if its brake stays open? … --fault runaway openBrake. Stops from the limits: monitorsim stop lift.json")
            { plan, trace, fault, demand, direction, axis, speed, horizon, json, csv, parquet, plot, quiet, noColor };
        command.SetAction(parsed => CommandLine.Guard(terminal, () =>
        {
            var said = parsed.GetValue(quiet) || parsed.GetValue(json) == "-" ? terminal.Quiet() : terminal;
            var read = Input.Plan(parsed.GetValue(plan)!, terminal.Cancel);
            var recording = parsed.GetValue(trace) is { } file ? PlannedTrace.Read(read, file, terminal.Cancel) : null;
            var request = StopRequest.Of(read, recording, parsed.GetValue(fault) ?? [], parsed.GetValue(demand), parsed.GetValue(direction), parsed.GetValue(axis), parsed.GetValue(speed), parsed.GetValue(horizon));
            var (stops, envelopes) = (new List<LimitStop>(), new List<EnvelopeResult>());
            foreach (var name in request.Axes)
            {
                if (recording is null) stops.AddRange(request.Stops(name));
                else envelopes.Add(ProgressBar.Over(terminal, name, 100, parsed.GetValue(quiet), progress => request.Envelope(recording, name, progress, terminal.Cancel)));
            }

            StopTables.Write(said, parsed.GetValue(noColor), request, stops, envelopes);
            if (parsed.GetValue(json) is { } path) terminal.Write(path, stream => StopJson.Write(read, request.Words, stops, envelopes, stream));
            if (parsed.GetValue(csv) is { } folder) SheetCsv.Write(terminal, folder, StopSheets.Of(stops, envelopes));
            ParquetFolder.Write(parsed.GetValue(parquet), StopSheets.Of(stops, envelopes), terminal.Cancel);
            if (parsed.GetValue(plot) is { } pictures)
                foreach (var picture in terminal.Pictures(pictures, into => request.Pictures(recording, stops, envelopes, into))) said.Out.WriteLine(picture);
            return CommandLine.Clean;
        }));
        return command;
    }
}
