using System.Text.Json.Nodes;

namespace MonitorSim.Tests.Model;

/// <summary>The model's answer in the form of the result's JSON.</summary>
internal sealed class ModelResult(ModelReplay replay)
{
    private readonly ModelClock _clock = replay.Clock;

    public JsonObject Write()
    {
        var chains = replay.Axes.SelectMany(axis => axis.Chains).ToList();
        var trips = chains.SelectMany(chain => chain.Trips.Select(trip => Trip(chain, trip))).ToArray();
        var trace = new JsonObject { ["samples"] = replay.Trace.Count, ["duration"] = Seconds(replay.Trace.Times[^1]) };
        return new()
        {
            ["trace"] = trace,
            ["verdict"] = trips.Length > 0 ? "tripped" : "clean",
            ["trips"] = new JsonArray(trips),
            ["excursions"] = new JsonArray([.. chains.SelectMany(chain => chain.Runs).Select(Excursion)]),
            ["outputs"] = new JsonArray([.. replay.Axes.SelectMany(Outputs)]),
            ["states"] = new JsonArray([.. replay.Axes.Select(States)]),
            ["headroom"] = new JsonArray([.. chains.SelectMany(Headrooms)]),
            ["coverage"] = new JsonArray([.. chains.Select(Coverage)]),
        };
    }

    private static JsonNode Seconds(long time) => JsonValue.Create(time / 1_000_000_000m);

    private JsonNode At(int cycle) => Seconds(_clock.Times[cycle]);

    private static JsonNode? Shown(ModelSide side, Fraction? value) => value is { } x ? JsonValue.Create((side.IsMirrored ? -x : x).ToDouble()) : null;

    private JsonNode Trip(ModelChain chain, ModelTrip trip)
    {
        var monitor = trip.Monitor;
        var side = trip.Side < 0 ? null : monitor.Sides[trip.Side];
        var node = new JsonObject
        {
            ["axis"] = monitor.Axis, ["monitor"] = monitor.Name, ["function"] = monitor.Function, ["side"] = side?.Name ?? "invalid input",
            ["level"] = trip.Compared?.Level, ["sample"] = _clock.Samples[trip.Cycle], ["time"] = At(trip.Cycle),
            ["value"] = side is null ? null : Shown(side, trip.Compared!.Value.X), ["limit"] = side is null ? null : Shown(side, trip.Compared!.Value.Limit),
            ["unit"] = side?.Unit, ["peak"] = side is null ? null : Shown(side, trip.Peak),
            ["requestedAt"] = At(trip.Asked), ["watchingAt"] = trip.Watching is { } w ? At(w) : null, ["exceededAt"] = At(trip.Exceeded),
            ["reaction"] = ModelFunctions.ReactionText(monitor.Reaction),
        };
        var avoided = new JsonObject { ["limit"] = null, ["filterAbove"] = null, ["delayAbove"] = null, ["exact"] = monitor.IsExact };
        if (side is not null)
        {
            var stretch = chain.Stretches.Last(s => s.From <= trip.Asked);
            var (limit, filter, delay) = new ModelHindsight(monitor, _clock).AvoidedBy(trip, stretch);
            (avoided["limit"], avoided["filterAbove"], avoided["delayAbove"]) = (Shown(side, limit), Seconds(filter), delay is { } d ? Seconds(d) : null);
        }

        node["avoidedBy"] = avoided;
        return node;
    }

    private JsonNode Excursion(ModelRun run) => new JsonObject
    {
        ["axis"] = run.Monitor.Axis, ["monitor"] = run.Monitor.Name, ["side"] = run.Monitor.Sides[run.Side].Name, ["from"] = At(run.From), ["until"] = At(run.Until),
        ["duration"] = Seconds(_clock.Times[run.Until] - _clock.Times[run.From]), ["peak"] = Shown(run.Monitor.Sides[run.Side], run.Peak), ["peakAt"] = At(run.PeakAt),
        ["trips"] = run.Trips,
    };

    private static IEnumerable<JsonNode> Outputs(ModelAxis axis)
    {
        var outputs = axis.Watches.Where(watch => watch.Output is not null).Select(watch => (watch.Chain.Monitor.Name, watch.Output!));
        if (axis.Stops.BrakeApply is not null) outputs = outputs.Append(("SBC", axis.Brake));
        return outputs.Select(output => new JsonObject
        {
            ["axis"] = axis.Name, ["monitor"] = output.Name,
            ["edges"] = new JsonArray([.. output.Item2.Edges.Select(edge => new JsonObject { ["time"] = Seconds(edge.Time), ["on"] = edge.IsOn })]),
        });
    }

    // Of states passed within one cycle only the last; a state that is left and taken again in one cycle has not changed.
    private static JsonNode States(ModelAxis axis)
    {
        var changes = new JsonArray();
        var last = ModelState.Running;
        foreach (var cycle in axis.Changes.GroupBy(change => change.Time))
        {
            var (time, state, cause) = cycle.Last();
            if (state != last) changes.Add(new JsonObject { ["time"] = Seconds(time), ["state"] = state.ToString(), ["cause"] = cause });
            last = state;
        }

        return new JsonObject { ["axis"] = axis.Name, ["changes"] = changes };
    }

    private IEnumerable<JsonNode> Headrooms(ModelChain chain)
    {
        var monitor = chain.Monitor;
        var hindsight = new ModelHindsight(monitor, _clock);
        var compared = chain.Stretches.Select(stretch => hindsight.Replay(stretch, stretch.From, monitor.Delay)).ToList();
        for (var i = 0; i < monitor.Sides.Count; i++)
        {
            var side = monitor.Sides[i];
            var levels = side.Name == "upper" && monitor.Levels is { } limits ? limits.Select((limit, level) => (limit, (int?)level)) : [(side.Limit, null)];
            foreach (var (limit, level) in levels)
            {
                var critical = ModelHindsight.Critical(monitor, _clock, compared, chain.Stretches.Select(stretch => stretch.From), i, level);
                var room = critical is { } c ? limit - c.Limit : (Fraction?)null;
                yield return new JsonObject
                {
                    ["axis"] = monitor.Axis, ["monitor"] = monitor.Name, ["side"] = side.Name, ["level"] = level, ["critical"] = Shown(side, critical?.Limit),
                    ["limit"] = Shown(side, limit), ["headroom"] = room?.ToDouble(), ["percent"] = limit.Sign == 0 ? null : (room / limit.Abs * 100)?.ToDouble(),
                    ["time"] = critical is { } at ? At(at.At) : null, ["unit"] = side.Unit,
                };
            }
        }
    }

    private static JsonNode Coverage(ModelChain chain) => new JsonObject
    {
        ["axis"] = chain.Monitor.Axis, ["monitor"] = chain.Monitor.Name, ["requests"] = chain.Stretches.Count, ["watched"] = Seconds(chain.Watched), ["trips"] = chain.Trips.Count,
    };
}
