using System.Text.Json;

namespace MonitorSim.Tests.Model;

/// <summary>The rows of the page's table of functions: what each measures and needs.</summary>
internal sealed class ModelFunctions(string axis, ModelChannels channels)
{
    private static readonly string[] None = [];

    public ModelMonitor Read(JsonElement plan)
    {
        var function = plan.Text("function")!;
        var (sides, create, both, first) = Row(function, plan);
        var levels = plan.Field("levels")?.EnumerateArray().ToList();
        var texts = new[] { plan.Text("request") ?? "always" }.Concat(levels?.Select(level => level.Text("when")!) ?? []);
        var reaction = plan.Text("reaction") ?? (function == "SMT" ? "none" : "stop 1");
        return new(axis, plan.Text("name")!, function, ReactionOf(reaction), plan.Time("delay"), plan.Time("filter"), sides, create, Lacks(both, first))
        {
            Levels = levels?.Select(level => level.Quantity("limit")!.Value).ToList(),
            IsExact = !texts.Any(ModelExpression.ReadsState),
            NeverTrips = function is "SCA" or "SSM" || function == "SMT" && reaction == "none",
        };
    }

    public static Stop? ReactionOf(string text) => text switch { "stop 0" => Stop.STO, "stop 1" => Stop.SS1, "stop 2" => Stop.SS2, _ => null };

    public static string ReactionText(Stop? reaction) => reaction switch { Stop.STO => "stop 0", Stop.SS1 => "stop 1", Stop.SS2 => "stop 2", _ => "none" };

    /// <summary>The chain of two recordings of one quantity.</summary>
    public ModelMonitor? TwoChannels(string quantity, JsonElement plan)
    {
        if (plan.Field("second") is not { } second) return null;
        var channel = channels[quantity];
        var side = new ModelSide("upper", second.Quantity("tolerance")!.Value, channel.Unit);
        Fraction? Difference(int k)
        {
            if (channel.First[k] is not { } a || channel.Second![k] is not { } b) return null;
            return quantity == "position" && channels.Modulo is { } modulo ? ModelChannels.ShortestWay(a - b, modulo).Abs : (a - b).Abs;
        }

        return new(axis, quantity + " two channels", "two channels", ReactionOf(second.Text("reaction") ?? "stop 0"), 0, second.Time("time"), [side],
            () => new InstantMeasure([side], [Difference]), Lacks([quantity], None)) { IsExact = true };
    }

    /// <summary>Whether a value is missing: of both recordings of some quantities, of the first of others.</summary>
    public Func<int, bool> Lacks(IReadOnlyList<string> both, IReadOnlyList<string> first) => k =>
        both.Concat(first).Any(name => channels[name].Lacks[k]) || both.Any(name => channels[name].SecondLacks is { Length: > 0 } second && second[k]);

    /// <summary>The larger magnitude of both recordings.</summary>
    public Fraction? Larger(string quantity, int k) => Magnitude(quantity, k, Fraction.Max);

    /// <summary>The smaller magnitude of both recordings.</summary>
    public Fraction? Smaller(string quantity, int k) => Magnitude(quantity, k, Fraction.Min);

    private Fraction? Magnitude(string quantity, int k, Func<Fraction, Fraction, Fraction> choose)
    {
        var channel = channels[quantity];
        if (channel.Second is null) return channel.First[k]?.Abs;
        return channel.First[k] is { } a && channel.Second[k] is { } b ? choose(a.Abs, b.Abs) : null;
    }

    private (List<ModelSide> Sides, Func<ModelMeasure> Create, string[] Both, string[] First) Row(string function, JsonElement plan) => function switch
    {
        "SLS" => Levels(plan),
        "SSR" => Range("velocity", plan),
        "SAR" => Range("acceleration", plan),
        "STR" => Bounds("torque", plan, k => channels["torque"].First[k]),
        "SLP" => Position(plan),
        "SLA" => Acceleration(plan),
        "SLT" => Single("torque", plan),
        "SMT" => Instant([new("upper", plan.Quantity("limit")!.Value, "°C")], [k => channels["temperature"].First[k]], None, ["temperature"]),
        "SDI" => Direction(plan),
        "SLI" => Increment(plan),
        "SOS" => Hold(plan),
        "SCA" => ([], () => new InstantMeasure([], []), None, ["position"]),
        "SSM" => ([], () => new InstantMeasure([], []), plan.Flag("signed") ? None : ["velocity"], plan.Flag("signed") ? ["velocity"] : None),
        _ => throw new ArgumentException(function),
    };

    private static (List<ModelSide>, Func<ModelMeasure>, string[], string[]) Instant(List<ModelSide> sides, Func<int, Fraction?>[] values, string[] both, string[] first) =>
        (sides, () => new InstantMeasure(sides, values), both, first);

    private (List<ModelSide>, Func<ModelMeasure>, string[], string[]) Single(string quantity, JsonElement plan)
    {
        var isSigned = plan.Flag("signed");
        return Instant([new("upper", plan.Quantity("limit")!.Value, channels[quantity].Unit)], [isSigned ? k => channels[quantity].First[k] : k => Larger(quantity, k)],
            isSigned ? None : [quantity], isSigned ? [quantity] : None);
    }

    private (List<ModelSide>, Func<ModelMeasure>, string[], string[]) Range(string quantity, JsonElement plan)
    {
        if (plan.Flag("signed")) return Bounds(quantity, plan, k => channels[quantity].First[k]);
        var sides = BoundSides(quantity, plan);
        return Instant(sides, [.. sides.Select(side => side.IsMirrored ? (Func<int, Fraction?>)(k => -Smaller(quantity, k)) : k => Larger(quantity, k))], [quantity], None);
    }

    private (List<ModelSide>, Func<ModelMeasure>, string[], string[]) Bounds(string quantity, JsonElement plan, Func<int, Fraction?> value)
    {
        var sides = BoundSides(quantity, plan);
        return Instant(sides, [.. sides.Select(side => side.IsMirrored ? (Func<int, Fraction?>)(k => -value(k)) : value)], None, [quantity]);
    }

    private List<ModelSide> BoundSides(string quantity, JsonElement plan)
    {
        var sides = new List<ModelSide>();
        if (plan.Quantity("lower") is { } lower) sides.Add(new("lower", -lower, channels[quantity].Unit, IsMirrored: true));
        if (plan.Quantity("upper") is { } upper) sides.Add(new("upper", upper, channels[quantity].Unit));
        return sides;
    }

    // A window that wraps has its upper end one turn on; people read both ends as they wrote them.
    private (List<ModelSide>, Func<ModelMeasure>, string[], string[]) Position(JsonElement plan)
    {
        var position = channels["position"].First;
        if (channels.Modulo is not { } modulo) return Bounds("position", plan, k => position[k]);
        var (lower, upper) = (plan.Quantity("lower")!.Value, plan.Quantity("upper")!.Value);
        var turn = upper < lower ? modulo : Fraction.Zero;
        var middle = (lower + upper + turn) / 2;
        Fraction? Near(int k) => position[k] is { } p ? Nearest(p, middle, modulo) : null;
        return Instant(BoundSides("position", plan), [k => -Near(k), k => Near(k) - turn], None, ["position"]);
    }

    /// <summary>The representative of a position nearest to a middle; of two equally near ones the lower.</summary>
    public static Fraction Nearest(Fraction p, Fraction middle, Fraction modulo) =>
        p - modulo * new Fraction(((p - middle) / modulo + (Fraction)1 / 2).Floor(), 1);

    private (List<ModelSide>, Func<ModelMeasure>, string[], string[]) Acceleration(JsonElement plan)
    {
        if (plan.Quantity("deceleration") is not { } deceleration) return Single("acceleration", plan);
        var (a, v, unit, isSigned) = (channels["acceleration"], channels["velocity"].First, channels["acceleration"].Unit, plan.Flag("signed"));
        Fraction? Value(int k, bool isBraking) => a.First[k] is { } now && v[k] is { } speed && now.Sign * speed.Sign < 0 == isBraking
            ? isSigned ? now : Larger("acceleration", k) : null;
        return Instant([new("upper", plan.Quantity("limit")!.Value, unit), new("deceleration", deceleration, unit)], [k => Value(k, false), k => Value(k, true)],
            isSigned ? None : ["acceleration"], isSigned ? ["acceleration", "velocity"] : ["velocity"]);
    }

    private (List<ModelSide>, Func<ModelMeasure>, string[], string[]) Direction(JsonElement plan)
    {
        var side = new ModelSide("upper", plan.Quantity("tolerance")!.Value, channels["position"].Unit);
        return ([side], () => new DirectionMeasure(side, channels.Unwrapped, plan.Text("allow") == "positive", plan.Text("reference") == "start"), None, ["position"]);
    }

    private (List<ModelSide>, Func<ModelMeasure>, string[], string[]) Increment(JsonElement plan)
    {
        var sides = new List<ModelSide> { new("increment", plan.Quantity("increment")!.Value, channels["position"].Unit) };
        if (plan.Quantity("window") is { } window) sides.Add(new("window", window, channels["position"].Unit));
        long? moveTime = plan.Text("moveTime") is null ? null : plan.Time("moveTime");
        return (sides, () => new IncrementMeasure(sides, channels.Unwrapped, moveTime), None, ["position"]);
    }

    /// <summary>SOS, the monitor and the stop.</summary>
    public (List<ModelSide> Sides, Func<ModelMeasure> Create, string[] Both, string[] First) Hold(JsonElement plan)
    {
        var sides = new List<ModelSide> { new("window", plan.Quantity("window")!.Value, channels["position"].Unit) };
        if (plan.Quantity("speed") is { } speed) sides.Add(new("speed", speed, channels["velocity"].Unit));
        return (sides, () => new HoldMeasure(sides, channels.Unwrapped, k => Larger("velocity", k)), sides.Count > 1 ? ["velocity"] : None, ["position"]);
    }

    private (List<ModelSide>, Func<ModelMeasure>, string[], string[]) Levels(JsonElement plan)
    {
        var levels = plan.Field("levels")?.EnumerateArray().Select(level => level.Quantity("limit")!.Value).ToList();
        var limits = levels ?? [plan.Quantity("limit")!.Value];
        var (unit, isSigned) = (channels["velocity"].Unit, plan.Flag("signed"));
        (Fraction Deceleration, Fraction Tolerance)? approach = plan.Field("approach") is { } a ? (a.Quantity("deceleration")!.Value, a.Quantity("tolerance")!.Value) : null;
        var sides = new List<ModelSide> { new("upper", limits[0], unit) };
        if (approach is { } way) sides.Add(new("approach", way.Tolerance, unit));
        Func<int, Fraction?> speed = isSigned ? k => channels["velocity"].First[k] : k => Larger("velocity", k);
        return (sides, () => new LevelMeasure(limits, levels is not null, speed, approach), isSigned ? None : ["velocity"], isSigned ? ["velocity"] : None);
    }
}
