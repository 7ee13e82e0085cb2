using System.Text.Json;

namespace MonitorSim.Tests.Model;

/// <summary>One quantity of an axis in SI at the load: first and second recording, or derived; null where there is no value.</summary>
/// <param name="First">The first recording, or what is derived.</param>
/// <param name="Second">The second recording, or null.</param>
/// <param name="Lacks">Whether a value is missing at a sample that a recording should have brought, for the first and the second.</param>
internal sealed record ModelChannel(Fraction?[] First, Fraction?[]? Second, bool[] Lacks, bool[] SecondLacks, string Unit);

/// <summary>All quantities of an axis.</summary>
internal sealed class ModelChannels
{
    private static readonly string[] Order = ["position", "velocity", "acceleration", "torque", "temperature"];
    private readonly Dictionary<string, ModelChannel> _channels = [];
    private readonly JsonElement _axis;
    private readonly ModelTrace _trace;
    private readonly bool _isRotary;

    public ModelChannels(JsonElement axis, ModelTrace trace)
    {
        (_axis, _trace, _isRotary) = (axis, trace, axis.Text("motion") == "rotary");
        Modulo = axis.Quantity("modulo");
        var channels = axis.Field("channels")!.Value;
        foreach (var name in Order)
        {
            var plan = channels.Field(name);
            if (plan?.Text("column") is not null) _channels[name] = Recorded(name, plan.Value);
            else if (plan is not null || name is "velocity" or "acceleration") Derive(name, plan);
        }

        if (Modulo is { } modulo && _channels.TryGetValue("position", out var position)) Unwrapped = Unwrap(position.First, modulo);
        else if (_channels.TryGetValue("position", out position)) Unwrapped = position.First;
    }

    public Fraction? Modulo { get; }

    /// <summary>The position without jumps of a turn.</summary>
    public Fraction?[] Unwrapped { get; } = [];

    public ModelChannel this[string name] => _channels[name];

    public bool Has(string name) => _channels.ContainsKey(name);

    private string UnitOf(string name, JsonElement? plan) => name switch
    {
        "position" => _isRotary ? "rad" : "m",
        "velocity" => _isRotary ? "rad/s" : "m/s",
        "acceleration" => _isRotary ? "rad/s²" : "m/s²",
        "torque" => plan!.Value.Text("side") == "motor" ? _isRotary ? "N·m" : "N" : plan.Value.Text("unit") is "N" or "kN" ? "N" : "N·m",
        _ => "°C",
    };

    private ModelChannel Recorded(string name, JsonElement plan)
    {
        var first = Scaled(name, plan, plan);
        var second = plan.Field("second") is { } other ? Scaled(name, plan, other) : null;
        return new(first, second, [.. first.Select(x => x is null)], [.. (second ?? []).Select(x => x is null)], UnitOf(name, plan));
    }

    // raw·scale, turned, plus offset, in the unit; then from the motor to the load.
    private Fraction?[] Scaled(string name, JsonElement first, JsonElement plan)
    {
        JsonElement? Either(string field) => plan.Field(field) ?? first.Field(field);
        var scale = Either("scale") is { } s ? Fraction.Parse(s.GetRawText()) : 1;
        if (Either("invert")?.GetBoolean() == true) scale = -scale;
        var factor = scale * ModelUnits.Factor(Either("unit")!.Value.GetString()!);
        var offset = Either("offset") is { } o ? ModelUnits.Parse(o.GetString()!) : Fraction.Zero;
        if (Either("side")?.GetString() == "motor")
        {
            var ratio = ToLoad(name);
            (factor, offset) = (factor * ratio, offset * ratio);
        }

        return [.. _trace.Numbers(plan.Text("column")!).Select(raw => raw is { } x ? x * factor + offset : (Fraction?)null)];
    }

    private Fraction ToLoad(string name)
    {
        var ratio = (Fraction)1;
        if (_axis.Text("gear") is { } gear)
        {
            var parts = gear.Split(':');
            ratio = Fraction.Parse(parts[1]) / Fraction.Parse(parts[0]);
        }

        if (_axis.Quantity("feed") is { } feed) ratio *= feed;
        return name switch { "torque" => 1 / ratio, "temperature" => 1, _ => ratio };
    }

    private void Derive(string name, JsonElement? plan)
    {
        var source = plan?.Text("from") ?? (name == "velocity" ? "position" : "velocity");
        if (!_channels.TryGetValue(source, out var from)) return;
        var values = source == "position" && Modulo is { } modulo ? Unwrap(from.First, modulo) : from.First;
        var samples = plan?.Field("estimator")?.Field("samples")?.GetInt32() ?? 1;
        var first = new Fraction?[values.Length];
        var lacks = new bool[values.Length];
        var begin = Enumerable.Range(0, values.Length).Cast<int?>().FirstOrDefault(k => values[k!.Value] is not null || from.Lacks[k.Value]) ?? values.Length;
        for (var k = begin; k < values.Length; k++)
        {
            var back = Math.Max(begin, k - samples);
            if (values[k] is { } now && values[back] is { } then && back < k)
                first[k] = (now - then) * 1_000_000_000 / (_trace.Times[k] - _trace.Times[back]);
            else lacks[k] = k > begin || from.Lacks[k];
        }

        _channels[name] = new(first, null, lacks, [], UnitOf(name, plan));
    }

    // Each step is the shortest way round; half a turn counts as a step up.
    private static Fraction?[] Unwrap(Fraction?[] position, Fraction modulo)
    {
        var unwrapped = new Fraction?[position.Length];
        Fraction? last = null, sum = null;
        for (var k = 0; k < position.Length; k++)
        {
            if (position[k] is not { } now) continue;
            sum = last is { } before ? sum + ShortestWay(now - before, modulo) : now;
            (last, unwrapped[k]) = (now, sum);
        }

        return unwrapped;
    }

    /// <summary>The difference by the shortest way round, in (-modulo/2, modulo/2].</summary>
    public static Fraction ShortestWay(Fraction difference, Fraction modulo)
    {
        var turns = (difference / modulo + (Fraction)1 / 2).Floor();
        var rest = difference - modulo * new Fraction(turns, 1);
        return rest.CompareTo(-(modulo / 2)) == 0 ? modulo / 2 : rest;
    }
}
