using System.Collections.Concurrent;
using System.Text.Json;

namespace MonitorSim.Tests.Model;

/// <summary>Counts what the random plans reach, so that an empty property cannot pass.</summary>
internal sealed class ModelTally
{
    private static readonly string[] Functions = ["SLS", "SSR", "SDI", "SLA", "SAR", "SLT", "STR", "SLP", "SLI", "SOS", "SCA", "SSM", "SMT", "two channels"];
    private readonly ConcurrentDictionary<string, int> _counts = new();

    public int this[string what] => _counts.GetValueOrDefault(what);

    /// <summary>What has to be reached.</summary>
    public static IEnumerable<string> Required =>
    [
        .. Functions.Select(function => $"watched {function}"), .. Functions.Except(["SCA", "SSM"]).Select(function => $"tripped {function}"),
        .. Sides.Select(side => $"tripped {side}"), .. Enum.GetNames<ModelState>().Select(state => $"axis {state}"),
        "monitor Idle", "monitor Arming", "monitor Watching", "monitor Tripped",
        "output SCA on", "output SSM on", "output SMT on", "output SBC on", "reaction stop 0", "reaction stop 1", "reaction stop 2", "reaction none",
        "cause standstill", "cause time", "cause released", "cause request", "cause trip", "cause several",
        .. from stop in new[] { "SS1", "SS2" } from variant in new[] { "t", "r", "d" } select $"began {stop} {variant}",
        "began SOS", "began STO", "began SBC", "latch opened by release", "latch opened by press", "restart after acknowledgement",
        "plan cycle of its own", "plan phase", "plan inputDelay", "plan hold", "plan trip", "plan overlapping groups", "plan modulo", "plan signed", "plan levels",
        "plan approach", "plan second", "plan motor side", "plan derived", "plan reads a state", "plan reads an output or trip", "a cell lacks", "a gap",
    ];

    private static IEnumerable<string> Sides =>
    [
        "SLS upper", "SLS approach", "SSR upper", "SSR lower", "SAR upper", "SAR lower", "STR upper", "STR lower", "SLP upper", "SLP lower", "SLA upper", "SLA deceleration",
        "SLI increment", "SLI window", "SOS window", "SOS speed", "SS1 ramp", "SS1 deceleration", "SS1 timeLimit", "SS2 ramp", "SS2 deceleration", "SS2 timeLimit",
        "STO upper", "SBC window", "invalid input",
    ];

    public void Count(string what) => _counts.AddOrUpdate(what, 1, (_, count) => count + 1);

    /// <summary>Counts everything that a replay reached.</summary>
    public void Count(RandomPlan plan, ModelReplay replay)
    {
        Count("plans");
        Plan(plan, replay);
        foreach (var axis in replay.Axes)
        {
            Axis(axis);
            foreach (var chain in axis.Chains) Chain(chain);
        }

        foreach (var (state, count) in replay.MonitorStates) _counts.AddOrUpdate($"monitor {state}", count, (_, before) => before + count);
        if (replay.OpenedLatches > 0) Count(replay.IsPress ? "latch opened by press" : "latch opened by release");
    }

    /// <summary>All counts, one a line.</summary>
    public override string ToString() => string.Join('\n', _counts.OrderBy(pair => pair.Key, StringComparer.Ordinal).Select(pair => $"{pair.Value,8} {pair.Key}"));

    private void Chain(ModelChain chain)
    {
        var function = chain.Monitor.Function;
        if (chain.Watched > 0) Count($"watched {function}");
        if (chain.Trips.Any(trip => chain.Stretches.All(stretch => stretch.From != trip.Asked))) Count("restart after acknowledgement");
        foreach (var trip in chain.Trips)
        {
            Count($"tripped {function}");
            Count(trip.Side < 0 ? "tripped invalid input" : $"tripped {function} {chain.Monitor.Sides[trip.Side].Name}");
            if (trip.Compared?.Level > 0) Count("tripped at a further level");
            Count($"reaction {ModelFunctions.ReactionText(chain.Monitor.Reaction)}");
        }
    }

    private void Axis(ModelAxis axis)
    {
        Count("axis Running");
        foreach (var watch in axis.Watches)
            if (watch.Output?.Edges.Count > 0) Count($"output {watch.Chain.Monitor.Function} on");
        if (axis.Brake.Edges.Count > 0) Count("output SBC on");
        foreach (var (_, state, cause) in axis.Changes)
        {
            if (state != ModelState.Running) Count($"axis {state}");
            var source = cause[(cause.IndexOf('.', StringComparison.Ordinal) + 1)..];
            Count(cause is "standstill" or "time" or "released" ? $"cause {cause}" : Enum.TryParse<Stop>(source, out _) ? "cause request" : "cause trip");
            if (cause.Contains(", ", StringComparison.Ordinal)) Count("cause several");
            if (state is ModelState.StoppingToHold or ModelState.StoppingToOff) Count($"began {(Stop)state} {axis.Stops.VariantOf((Stop)state)}");
        }

        foreach (var name in new[] { "SOS", "STO", "SBC" })
            if (axis.StopChains.TryGetValue(name, out var chain) && chain.Stretches.Count > 0) Count($"began {name}");
    }

    private void Plan(RandomPlan plan, ModelReplay replay)
    {
        foreach (var (text, what) in new[]
        {
            ("\"cycle\"", "cycle of its own"), ("\"phase\"", "phase"), ("\"inputDelay\"", "inputDelay"), ("\"missing\": \"hold\"", "hold"), ("\"missing\": \"trip\"", "trip"),
            ("\"other\"", "overlapping groups"), ("\"modulo\"", "modulo"), ("\"signed\": true", "signed"), ("\"levels\"", "levels"), ("\"approach\"", "approach"),
            ("\"second\"", "second"), ("\"side\": \"motor\"", "motor side"), ("\"estimator\"", "derived"), (".state ", "reads a state"),
        })
        {
            if (plan.Json.Contains(text, StringComparison.Ordinal)) Count($"plan {what}");
        }

        if (replay.Axes.SelectMany(axis => axis.Watches).Any(watch => watch.Request.Replace(".state", "", StringComparison.Ordinal).Contains('.', StringComparison.Ordinal)))
            Count("plan reads an output or trip");
        if (replay.Axes.Any(axis => axis.Chains.Any(chain => Enumerable.Range(0, replay.Trace.Count).Any(chain.Monitor.Lacks)))) Count("a cell lacks");
        if (replay.Trace.HasMissing == "trip" && Enumerable.Range(0, replay.Trace.Count).Any(replay.Trace.IsAfterGap)) Count("a gap");
    }
}
