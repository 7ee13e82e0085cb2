using System.Globalization;
using MonitorSim.Explain;
using MonitorSim.Motion;
using MonitorSim.Motion.Envelopes;
using MonitorSim.Motion.Faults;
using Spectre.Console;

namespace MonitorSim.Cli;

/// <summary>Stops and envelopes as tables and sentences for people, in the units that they wrote.</summary>
internal static class StopTables
{
    public static void Write(Terminal terminal, bool noColor, StopRequest request, IReadOnlyList<LimitStop> stops, IReadOnlyList<EnvelopeResult> envelopes)
    {
        var console = Tables.Console(terminal, noColor);
        console.WriteLine(request.Plan.Title.Length > 0 ? request.Plan.Title : "Stops");
        foreach (var envelope in envelopes) Envelope(console, request, envelope);
        if (envelopes.Count == 0) Stops(console, request, stops);
        console.WriteLine("Simulated from the plant in the plan; the figures of the real machine come from measurements on it. Steady states of the motor, a brake that closes at once after its time, no elasticity.");
        console.WriteLine(Cautions.Text);
    }

    /// <summary>What the worst point is, in words.</summary>
    public static string Heading(StopRequest request, string axis, WorstFigure worst)
    {
        var (units, point) = (new MotionUnits(request.Plan.Axes[axis]), worst.Point);
        return $"{request.What} at {Say(point.At)}, from {units.Velocity(point.Velocity)}";
    }

    /// <summary>What a stop is, in words.</summary>
    public static string Heading(LimitStop stop) => $"{UserUnits.Reaction(stop.Reaction)} from {stop.Speed} ({stop.From})";

    private static string Say(decimal seconds) => seconds.ToString("0.#########", CultureInfo.InvariantCulture) + " s";

    private static void Stops(IAnsiConsole console, StopRequest request, IReadOnlyList<LimitStop> stops)
    {
        console.WriteLine(request.Faults.Count == 0 ? "Stops demanded at each speed:" : $"{request.What} at each speed, found by the limit:");
        if (stops.Count == 0)
        {
            console.WriteLine("No speed limit of these axes demands a stop: give a speed, such as --speed \"500 mm/s\".");
            return;
        }

        var table = Tables.Headed("axis", "from", "speed", "stop", "stands after", "distance", "peak speed", "energy", "fall", "drop after torque off", "torque off", "brake closed");
        foreach (var stop in stops)
        {
            var (units, result) = (new MotionUnits(request.Plan.Axes[stop.Axis]), stop.Result);
            table.AddRow(Tables.Cells(stop.Axis, stop.From, stop.Speed.ToString(), UserUnits.Reaction(stop.Reaction), result.Time is null ? "never" : MotionUnits.Time(result.Time),
                result.Time is null ? "no end" : units.Distance(result.Distance), units.Velocity(result.PeakSpeed), MotionUnits.Energy(result.Energy), units.Distance(result.Fall), units.Distance(result.Drop), MotionUnits.Time(result.OffAt), MotionUnits.Time(result.BrakedAt)));
        }

        console.Write(table);
        foreach (var stop in stops.Where(stop => stop.Result.Time is null))
            console.WriteLine($"{stop.Axis}: {Heading(stop)} does not come to rest within {MotionUnits.Time(request.Horizon)}.");
    }

    private static void Envelope(IAnsiConsole console, StopRequest request, EnvelopeResult envelope)
    {
        var (plan, units) = (request.Plan, new MotionUnits(request.Plan.Axes[envelope.Axis]));
        console.WriteLine($"{envelope.Axis} — {envelope.Trace}: {request.What} at each of {envelope.Points.Count} moments");
        if (envelope.Worst.Count > 0)
        {
            Sentence(console, request, units, envelope.Worst[0].Point);
            var table = Tables.Headed("figure", "worst", "at", "speed there", "found by", "found after", "drive acts after", "stands after");
            foreach (var worst in envelope.Worst)
            {
                var point = worst.Point;
                var name = worst.Limit is { } limit ? $"past {limit.Monitor}{(limit.Side == "upper" ? "" : ", " + limit.Side)}" : worst.Figure == "drop" ? "drop after torque off" : worst.Figure;
                table.AddRow(Tables.Cells(name, Figure(plan, units, envelope.Axis, worst), Say(point.At), units.Velocity(point.Velocity), point.Monitor ?? "–", MotionUnits.Time(point.DetectedAt), MotionUnits.Time(point.ActedAt), MotionUnits.Time(point.Time)));
            }

            console.Write(table);
        }

        if (envelope.Harmless > 0)
            console.WriteLine($"At {Share(envelope.Harmless, envelope)} no limit finds the fault, but the axis comes to rest by itself.");
        if (envelope.Undetected > 0)
            console.WriteLine($"NOT FOUND: at {Share(envelope.Undetected, envelope)} no limit finds the fault within {MotionUnits.Time(request.Horizon)}, the first at {Say(envelope.Points.First(point => !point.IsDetected && point.Time is null).At)}. Nothing above counts them.");
        if (envelope.NotStopped > 0)
            console.WriteLine($"NOT STOPPED: at {Share(envelope.NotStopped, envelope)} the fault is found, but the axis does not come to rest within {MotionUnits.Time(request.Horizon)}, the first at {Say(envelope.Points.First(point => point.IsDetected && point.Time is null).At)}. Nothing above counts them.");
    }

    private static string Share(int count, EnvelopeResult envelope) => string.Create(CultureInfo.InvariantCulture, $"{count} of {envelope.Points.Count} moments");

    private static void Sentence(IAnsiConsole console, StopRequest request, MotionUnits units, EnvelopePoint point)
    {
        var way = point.Direction switch { > 0 => " towards rising positions", < 0 => " towards falling positions", _ => "" };
        string?[] steps =
        [
            point.Monitor is null ? null : $"found by {point.Monitor} after {MotionUnits.Time(point.DetectedAt)}",
            point.ActedAt is null || point.ActedAt == point.OffAt ? null : $"drive acts after {MotionUnits.Time(point.ActedAt)}",
            point.OffAt is null ? null : $"torque off after {MotionUnits.Time(point.OffAt)}",
            point.BrakedAt is null ? null : $"brake closed after {MotionUnits.Time(point.BrakedAt)}",
        ];
        var course = string.Join(", ", steps.OfType<string>());
        var fall = point.Fall is not (> 0 and { } fallen) ? "" : $" It falls {units.Distance(fallen)}{(point.Drop is { } drop ? $", {units.Distance(drop)} of that after torque off" : "")}.";
        console.WriteLine($"Worst at {Say(point.At)}: {request.What}{way} from {units.Velocity(point.Velocity)}.{(course.Length > 0 ? $" {char.ToUpperInvariant(course[0])}{course[1..]}." : "")} "
            + $"It reaches {units.Velocity(point.PeakSpeed)} and {MotionUnits.Energy(point.Energy)}, and stands after {MotionUnits.Time(point.Time)}, {units.Distance(point.Distance)} away at most.{fall}");
    }

    private static string Figure(Plan plan, MotionUnits units, string axis, WorstFigure worst) => worst.Figure switch
    {
        "time" => MotionUnits.Time(worst.Value),
        "peak speed" => units.Velocity(worst.Value),
        "energy" => MotionUnits.Energy(worst.Value),
        "overrun" => worst.Value <= 0 ? "not passed" : new UserUnits(plan).Difference(axis, worst.Limit!.Value.Monitor, worst.Limit.Value.Side, null, worst.Value, worst.Unit),
        _ => units.Distance(worst.Value),
    };
}
