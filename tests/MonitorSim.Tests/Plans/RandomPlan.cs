using Fractions;
using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Tests.Plans;

/// <summary>Draws sound plans that use every function and nearly every member. The same seed draws the same plan.</summary>
internal sealed class RandomPlan(int seed)
{
    private readonly Random _random = new(seed);

    public Plan Draw()
    {
        var axes = Enumerable.Range(0, 1 + _random.Next(3)).ToDictionary(i => i == 1 ? "x axis" : $"axis{i}", _ => Axis());
        var own = Chance();
        return new()
        {
            Title = Pick("", "Säge: \"set-up\" mode", "tab\there"),
            Cycle = own ? "4 ms" : null, Phase = own ? Pick("0 ms", "3999 us") : null,
            InputDelay = Maybe(Time), ReactionDelay = Maybe(Time), Gap = Maybe(() => (Quantity)"50,5 ms"),
            Missing = Pick(MissingPolicy.Reject, MissingPolicy.Hold, MissingPolicy.Trip),
            Trace = Pick(new TraceFormat(), new() { Rate = "1 kHz", Delimiter = "\t", Decimal = ",", SkipRows = 3 }, new() { Time = new() { Column = "t", Unit = "µs" }, UnitsRow = false, Encoding = "latin1" }),
            Signals = new Dictionary<string, SignalPlan>
            {
                ["gate"] = new() { Column = "DI 7", EqualTo = Pick(null, "2", "true", "Auto") },
                ["hold on"] = new() { Windows = [["-1 s", "4 s"], ["5 s", "5 s"]] },
            },
            Acknowledge = Maybe(() => new AcknowledgePlan { Signal = "gate", On = Pick(AcknowledgeEdge.Release, AcknowledgeEdge.Press) }),
            Groups = Chance() ? new Dictionary<string, IReadOnlyList<string>> { ["all of them"] = [.. axes.Keys] } : new Dictionary<string, IReadOnlyList<string>>(),
            Axes = axes,
            Expect = Chance() ? [] : [
                new() { Axis = "axis0", Monitor = "*", Trips = Chance(), Between = ["1 s", "2 s"] },
                new() { Axis = "axis0", Monitor = "STO", TripsWith = "gate", Within = "8 ms" },
                new() { Axis = "axis0", State = Pick(Enum.GetValues<AxisState>()), Before = "3 s" }],
        };
    }

    private AxisPlan Axis()
    {
        var rotary = Chance();
        string position = rotary ? "deg" : "mm", speed = rotary ? "rpm" : "m/min", acceleration = rotary ? "deg/s²" : "mm/s²";
        Quantity P(string number) => $"{number} {position}";
        Quantity V(string number) => $"{number} {speed}";
        Quantity A(string number) => $"{number} {acceleration}";
        var motor = !rotary && Chance();
        return new()
        {
            Motion = rotary ? AxisMotion.Rotary : AxisMotion.Linear,
            Modulo = rotary && Chance() ? "360 deg" : null, Feed = rotary ? null : "20 mm/rev", Gear = Maybe(() => (GearRatio)Pick("5:1", "2.5:1")),
            Standstill = Maybe(() => V("0.5")),
            Channels = new()
            {
                Position = new() { Column = "x", Unit = motor ? "rev" : position, Side = motor ? RecordedSide.Motor : RecordedSide.Load, Scale = Maybe(() => Pick(new Fraction(-82, 100), new Fraction(1, 4096))), Invert = Chance() },
                Velocity = new() { From = "position", Estimator = Estimator() },
                Acceleration = Chance() ? null : new() { Column = "a", Unit = acceleration, Offset = A("-1") },
                Torque = new() { Column = "q", Unit = "kN·m", Second = new() { Column = "q2", Tolerance = "0.5 N·m", Time = Maybe(Time), Scale = Maybe(() => new Fraction(1, 2)), Invert = Pick<bool?>(null, true, false), Reaction = Pick<Reaction?>(null, Reaction.None) } },
                Temperature = new() { Column = "T" },
            },
            Stops = new()
            {
                Sto = new() { Request = Maybe(() => (Condition)"gate"), Residual = "1 N·m", Grace = Maybe(Time) },
                Ss1 = Ramp(V, A), Ss2 = Ramp(V, A), Sos = new() { Window = P("0.2"), Speed = Maybe(() => V("1")) }, Sbc = Maybe(() => new SbcPlan { Apply = Maybe(Time), Window = Maybe(() => P("1")) }),
            },
            Plant = Maybe(() => new PlantPlan { Mass = rotary ? null : "180 kg", Inertia = rotary ? "0.4 kg·m²" : null, Limit = rotary ? "24 N·m" : "2.4 kN" }),
            Monitors =
            [
                Some(new Sls { Name = "set-up \"speed\"", Limit = V("33"), Approach = Maybe(() => new Approach { Deceleration = A("1"), Tolerance = V("1") }) }),
                Some(new Sls { Name = "levels", Signed = true, Levels = [new() { When = "gate and not \"hold on\"", Limit = V("-3") }, new() { When = "always", Limit = V("3") }] }),
                Some(new Ssr { Name = "ssr", Lower = V("1"), Upper = Maybe(() => V("2")) }),
                Some(new Sdi { Name = "sdi", Allow = Pick(Direction.Positive, Direction.Negative), Tolerance = P("1"), Reference = Pick(DirectionReference.Furthest, DirectionReference.Start) }),
                Some(new Sla { Name = "sla", Limit = A("1"), Deceleration = Maybe(() => A("2")) }),
                Some(new Sar { Name = "sar", Lower = A("-1"), Upper = A("1"), Signed = true }),
                Some(new Slt { Name = "slt", Limit = "1e3 Nm" }),
                Some(new Str { Name = "str", Lower = "-1 N·m" }),
                Some(new Slp { Name = "slp", Lower = P("-1"), Upper = P("1") }),
                Some(new Sli { Name = "sli", Increment = P("5"), MoveTime = "1 s", Window = P("1") }),
                Some(new Sos { Name = "sos", Window = P("1"), Speed = Maybe(() => V("1")) }),
                new Sca { Name = "cam", Request = "gate", Ranges = [[P("0"), P("10")], [P("20"), P("30")]], Hysteresis = Maybe(() => P("5")), OnDelay = Maybe(Time) },
                new Ssm { Name = "ssm", Upper = V("3"), OffDelay = Maybe(Time) },
                new Smt { Name = "smt", Limit = Pick("-40 °C", "350 K"), Hysteresis = "2 K", Reaction = Pick<Reaction?>(null, Reaction.Stop0) },
            ],
        };
    }

    private RampStopPlan Ramp(Func<string, Quantity> speed, Func<string, Quantity> acceleration) => _random.Next(3) switch
    {
        0 => new() { Variant = StopVariant.Time, Time = Time(), Request = Maybe(() => (Condition)"(gate or \"hold on\") and axis0.state != TorqueOff") },
        1 => new() { Variant = StopVariant.Ramp, Deceleration = acceleration("1.50"), Tolerance = speed("0"), Delay = Maybe(Time), Settle = Maybe(Time), TimeLimit = Maybe(Time) },
        _ => new() { Variant = StopVariant.Deceleration, Deceleration = acceleration("3"), Filter = Maybe(Time) },
    };

    private EstimatorPlan? Estimator() => Pick(
        null, new() { Samples = 3 }, new() { Name = EstimatorName.MovingAverage, Samples = 4 }, new() { Name = EstimatorName.SavitzkyGolay, Samples = 9, Degree = 2 },
        new() { Name = EstimatorName.LowPass, Time = "5 ms" }, new EstimatorPlan { Name = EstimatorName.AlphaBeta, Alpha = 0.5, Beta = 0.1 });

    private T Some<T>(T monitor) where T : MonitorPlan => monitor with
    {
        Request = Maybe(() => (Condition)Pick("gate", "not axis0.cam or never", "axis0.\"set-up \\\"speed\\\"\"")), Delay = Maybe(Time), Filter = Maybe(Time),
        Reaction = Pick<Reaction?>(null, Reaction.None, Reaction.Stop0, Reaction.Stop1, Reaction.Stop2),
    };

    private bool Chance() => _random.Next(2) == 0;

    private T Pick<T>(params T[] choices) => choices[_random.Next(choices.Length)];

    private T? Maybe<T>(Func<T> draw) where T : notnull => Chance() ? draw() : default;

    private Fraction? Maybe(Func<Fraction> draw) => Chance() ? draw() : null;

    private Quantity Time() => Pick("0 ms", "8 ms", "0,5 s", "12.50 ms", "1e-3 s", "100us");
}
