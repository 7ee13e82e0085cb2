using System.Text.Json;

namespace MonitorSim.Tests.Model;

/// <summary>The stops in rising severity; each asks for the state of the same rank.</summary>
internal enum Stop { SOS = 1, SS2, SS1, STO }

/// <summary>The states of an axis in rising severity.</summary>
internal enum ModelState { Running, Holding, StoppingToHold, StoppingToOff, TorqueOff }

/// <summary>SS1 and SS2 by ramp: the speed above the ramp that began at the first cycle.</summary>
internal sealed class RampMeasure(IReadOnlyList<ModelSide> sides, Func<int, Fraction?> speed, Fraction standstill, Fraction deceleration, long delay) : ModelMeasure
{
    private bool _hasBegun;
    private Fraction? _speedThen;

    public override Compared?[] Step(ModelMoment now)
    {
        var v = speed(now.Sample);
        if (!_hasBegun) (_hasBegun, _speedThen) = (true, v);
        var compared = new Compared?[sides.Count];
        var age = now.Time - now.AskedAt;
        if (v is { } x && _speedThen is { } v0 && x > standstill)
            compared[0] = new(x - (v0 - deceleration * Math.Max(0, age - delay) / 1_000_000_000), sides[0].Limit, null);
        if (sides.Count > 1) compared[1] = new((Fraction)age / 1_000_000_000, sides[1].Limit, null);
        return compared;
    }
}

/// <summary>SS1 and SS2 by deceleration: the acceleration along the motion; more than minus the demanded one exceeds.</summary>
internal sealed class DecelerationMeasure(IReadOnlyList<ModelSide> sides, Func<int, Fraction?> speed, Fraction?[] velocity, Fraction?[] acceleration, Fraction standstill)
    : ModelMeasure
{
    public override Compared?[] Step(ModelMoment now)
    {
        var compared = new Compared?[sides.Count];
        if (now.IsWatching && speed(now.Sample) is { } x && x > standstill && velocity[now.Sample] is { } v && acceleration[now.Sample] is { } a)
            compared[0] = new(a * v.Sign, sides[0].Limit, null);
        if (sides.Count > 1) compared[1] = new((Fraction)(now.Time - now.AskedAt) / 1_000_000_000, sides[1].Limit, null);
        return compared;
    }
}

/// <summary>How an axis stops: its parameters, and the monitors that the stops are.</summary>
internal sealed class ModelStops
{
    private static readonly Stop[] Named = [Stop.SS1, Stop.SS2];
    private readonly JsonElement _axis;
    private readonly ModelChannels _channels;
    private readonly ModelFunctions _functions;
    private readonly JsonElement _stops;

    public ModelStops(string axis, JsonElement plan, ModelChannels channels, ModelFunctions functions)
    {
        (_axis, _channels, _functions, _stops) = (plan, channels, functions, plan.Field("stops")!.Value);
        Standstill = plan.Quantity("standstill") ?? Fraction.Zero;
        foreach (var stop in Enum.GetValues<Stop>())
            if (_stops.Field(stop.ToString())?.Text("request") is { } request) Requests[stop] = request;
        foreach (var stop in Named)
            if (_stops.Field(stop.ToString()) is { } ramp && ramp.Text("variant") != "t") Monitors[stop.ToString()] = Stopping(axis, stop.ToString(), ramp);
        if (_stops.Field("SOS") is { } hold)
        {
            var (sides, create, both, first) = functions.Hold(hold);
            Monitors["SOS"] = Monitor(axis, "SOS", Stop.STO, 0, 0, sides, create, both, first);
        }

        if (_stops.Field("STO") is { } off && off.Quantity("residual") is { } residual)
        {
            var sides = new List<ModelSide> { new("upper", residual, channels["torque"].Unit) };
            Monitors["STO"] = Monitor(axis, "STO", null, off.Time("grace"), 0, sides, () => new InstantMeasure(sides, [k => functions.Larger("torque", k)]), ["torque"], []);
        }

        if (_stops.Field("SBC") is not { } brake) return;
        BrakeApply = brake.Time("apply");
        if (brake.Quantity("window") is not { } window) return;
        var side = new List<ModelSide> { new("window", window, channels["position"].Unit) };
        Monitors["SBC"] = Monitor(axis, "SBC", null, BrakeApply.Value, 0, side, () => new HoldMeasure(side, channels.Unwrapped, _ => null), [], ["position"]);
    }

    public Fraction Standstill { get; }

    /// <summary>The requests of the axis's own stops.</summary>
    public Dictionary<Stop, string> Requests { get; } = [];

    /// <summary>The stops that compare something.</summary>
    public Dictionary<string, ModelMonitor> Monitors { get; } = [];

    /// <summary>The brake's time; null where there is none.</summary>
    public long? BrakeApply { get; }

    public string VariantOf(Stop stop) => Of(stop).Text("variant")!;

    /// <summary>The time of variant t; null for the others.</summary>
    public long? TimeOf(Stop stop) => VariantOf(stop) == "t" ? Of(stop).Time("time") : null;

    public long SettleOf(Stop stop) => Of(stop).Time("settle");

    /// <summary>Whether the speed is standstill at a sample.</summary>
    public bool IsStandstill(int sample) => _functions.Larger("velocity", sample) is { } v && v <= Standstill;

    private JsonElement Of(Stop stop) => _stops.Field(stop.ToString())!.Value;

    private ModelMonitor Stopping(string axis, string name, JsonElement plan)
    {
        var isRamp = plan.Text("variant") == "r";
        var deceleration = plan.Quantity("deceleration")!.Value;
        var sides = new List<ModelSide>
        {
            isRamp ? new("ramp", plan.Quantity("tolerance") ?? Fraction.Zero, _channels["velocity"].Unit) : new("deceleration", -deceleration, _channels["acceleration"].Unit, IsMirrored: true),
        };
        if (plan.Text("timeLimit") is not null) sides.Add(new("timeLimit", (Fraction)plan.Time("timeLimit") / 1_000_000_000, "s"));
        var delay = plan.Time("delay");
        if (isRamp)
            return Monitor(axis, name, Stop.STO, 0, 0, sides, () => new RampMeasure(sides, k => _functions.Larger("velocity", k), Standstill, deceleration, delay), ["velocity"], []);
        return Monitor(axis, name, Stop.STO, delay, plan.Time("filter"), sides, () => new DecelerationMeasure(sides, k => _functions.Larger("velocity", k),
            _channels["velocity"].First, _channels["acceleration"].First, Standstill), ["velocity"], ["acceleration"]);
    }

    private ModelMonitor Monitor(string axis, string name, Stop? reaction, long delay, long filter, List<ModelSide> sides, Func<ModelMeasure> create, string[] both, string[] first) =>
        new(axis, name, name, reaction, delay, filter, sides, create, _functions.Lacks(both, first)) { IsStop = true };
}
