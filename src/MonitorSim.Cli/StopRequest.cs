using MonitorSim.Explain;
using MonitorSim.Motion;
using MonitorSim.Motion.Envelopes;
using MonitorSim.Motion.Faults;
using MonitorSim.Plans;
using MonitorSim.Plots;
using MonitorSim.Quantities;

namespace MonitorSim.Cli;

/// <summary>What <c>stop</c> is asked.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="Axes">The axes concerned.</param>
/// <param name="Faults">What goes wrong.</param>
/// <param name="Demand">A stop demanded at every moment of a recording.</param>
/// <param name="Speed">A speed instead of the plan's limits, or null.</param>
/// <param name="Horizon">How long each motion is followed, s.</param>
internal sealed record StopRequest(Plan Plan, IReadOnlyList<string> Axes, IReadOnlyList<MachineFault> Faults, Reaction Demand, Quantity? Speed, double Horizon)
{
    public IReadOnlyList<string> Words => [.. Faults.Select(fault => fault.Fault)];

    /// <summary>What happens, in words.</summary>
    public string What => string.Join(" and ", Demand == Reaction.None ? Words : [UserUnits.Reaction(Demand), .. Words]);

    /// <exception cref="InputException">An axis, fault, direction, speed or time that is none, or an axis without a plant.</exception>
    public static StopRequest Of(Plan plan, Trace? trace, string[] faults, string? demand, string? direction, string? axis, string? speed, string? horizon)
    {
        var demanded = demand switch
        {
            null => Reaction.None,
            "stop0" or "stop 0" => Reaction.Stop0,
            "stop1" or "stop 1" => Reaction.Stop1,
            "stop2" or "stop 2" => Reaction.Stop2,
            _ => throw Wrong("--demand", $"'{demand}' is no stop", "would do: stop0, stop1, stop2"),
        };
        if (demand is not null && trace is null) throw Wrong("--demand", "without a recording each limit demands its own stop", "give a recording, or --speed");
        IReadOnlyList<string> words = faults.Length == 0 && demand is null && trace is not null ? ["runaway"] : [.. faults.Distinct()];
        var way = direction switch
        {
            null or "both" => RunawayDirection.WithMotion,
            "positive" => RunawayDirection.Positive,
            "negative" => RunawayDirection.Negative,
            _ => throw Wrong("--direction", $"'{direction}' is no direction", "would do: positive, negative, both"),
        };
        if (speed is not null && trace is not null) throw Wrong("--speed", "with a recording the faults begin at its own speeds", "leave --speed or the recording out");
        return new(plan, AxesOf(plan, axis), [.. words.Select(MachineFaults.Named).Select(fault => fault is RunawayFault runaway ? runaway with { Direction = way } : fault)], demanded,
            speed is null ? null : Read("--speed", speed), horizon is null ? trace is null ? Stop.Horizon : 10 : Seconds(horizon));
    }

    public IReadOnlyList<LimitStop> Stops(string axis)
    {
        if (Speed is null) return LimitStops.OfLimits(Plan, axis, Faults, Horizon);
        var allowed = Plan.Axes[axis].Motion == AxisMotion.Rotary ? "rad/s" : "m/s";
        if (Speed.Unit.Dimension != Unit.Parse(allowed).Dimension) throw Wrong("--speed", $"'{Speed}' is no speed of axis '{axis}'", $"give one in {(allowed == "m/s" ? "mm/s, m/s or m/min" : "rpm, deg/s or rad/s")}");
        return LimitStops.OfSpeed(Plan, axis, Speed, Faults, Horizon);
    }

    public EnvelopeResult Envelope(Trace trace, string axis, IProgress<int>? progress, CancellationToken cancel) =>
        Motion.Envelopes.Envelope.Of(Question(trace, axis), progress, cancel);

    private EnvelopeQuestion Question(Trace trace, string axis) => new() { Plan = Plan, Trace = trace, Axis = axis, Faults = Faults, Demand = Demand, Horizon = Horizon };

    /// <summary>Draws what was found; returns the paths.</summary>
    public IEnumerable<string> Pictures(Trace? trace, IReadOnlyList<LimitStop> stops, IReadOnlyList<EnvelopeResult> envelopes, string folder)
    {
        foreach (var axis in Axes)
        {
            if (envelopes.FirstOrDefault(envelope => envelope.Axis == axis) is { } envelope)
            {
                foreach (var file in EnvelopePlot.Save(Plan, trace!, envelope, folder)) yield return file;
                if (envelope.Worst.FirstOrDefault() is not { } worst) continue;
                var motion = Motion.Envelopes.Envelope.Motion(Question(trace!, axis), worst.Point);
                foreach (var file in StopPlot.Save(Plan, axis, motion, StopTables.Heading(this, axis, worst), folder)) yield return file;
            }
            else if (stops.Where(stop => stop.Axis == axis).MaxBy(stop => (stop.Result.Time is null, stop.Result.Distance)) is { } furthest)
            {
                foreach (var file in StopPlot.Save(Plan, axis, furthest.Result, StopTables.Heading(furthest), folder)) yield return file;
            }
        }
    }

    private static IReadOnlyList<string> AxesOf(Plan plan, string? axis)
    {
        if (axis is not null && !plan.Axes.ContainsKey(axis)) throw Wrong("--axis", $"there is no axis '{axis}'", $"would do: {string.Join(", ", plan.Axes.Keys)}");
        var chosen = plan.Axes.Where(pair => axis is null || pair.Key == axis).ToList();
        var moving = chosen.Where(pair => pair.Value.Plant is not null).Select(pair => pair.Key).ToList();
        return moving.Count > 0 ? moving
            : throw Wrong($"axes.{chosen[0].Key}.plant", "no axis says what moves", "describe it, such as \"plant\": { \"mass\": \"180 kg\", \"coulomb\": \"90 N\", \"limit\": \"2.4 kN\" }; fit finds it from a recording");
    }

    private static double Seconds(string text)
    {
        var time = Read("--horizon", text);
        if (time.Unit.Dimension != Dimension.Second || time.Si <= 0) throw Wrong("--horizon", $"'{text}' is no time above 0", "give one in s or ms");
        return time.Si;
    }

    private static Quantity Read(string option, string text) => Quantity.TryParse(text, out var quantity, out var error) ? quantity! : throw Wrong(option, error!, "");

    private static InputException Wrong(string place, string what, string fix) => new(new Problem(place, what, fix));
}
