using Fractions;
using MonitorSim.Channels;
using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>The levers of every function, one a side (and a level), each for positive or for negative values.</summary>
internal sealed class Levers(Bench bench, string axis)
{
    private readonly AxisPlan _axis = bench.Plan.Axes[axis];

    /// <summary>The levers of a monitor; none for what never trips.</summary>
    /// <param name="monitor">The monitor.</param>
    /// <param name="negative">Whether magnitudes are met by negative values.</param>
    public IEnumerable<Lever> Of(MonitorPlan monitor, bool negative) => monitor switch
    {
        Sls { Levels: { } levels } sls => levels.Select((level, k) => new SlsLever(bench, axis, level.Limit.Exact, sls.Signed, negative && !sls.Signed, sls.Approach) { Level = k }),
        Sls sls => [new SlsLever(bench, axis, sls.Limit!.Exact, sls.Signed, negative && !sls.Signed, sls.Approach)],
        Ssr ssr => Range(Kind.Velocity, ssr.Lower, ssr.Upper, ssr.Signed, negative),
        Sar sar => Range(Kind.Acceleration, sar.Lower, sar.Upper, sar.Signed, negative),
        Str str => Range(Kind.Torque, str.Lower, str.Upper, true, negative),
        Slt slt => Range(Kind.Torque, null, slt.Limit, slt.Signed, negative),
        Sla { Deceleration: { } deceleration } sla =>
        [
            new SlaLever(bench, axis, "upper", sla.Limit.Exact, !sla.Signed, slowing: false, negative && !sla.Signed),
            new SlaLever(bench, axis, "deceleration", deceleration.Exact, !sla.Signed, slowing: true, negative && !sla.Signed),
        ],
        Sla sla => Range(Kind.Acceleration, null, sla.Limit, sla.Signed, negative),
        Slp slp => Positions(slp),
        Sdi sdi => [new TravelLever(bench, axis, "upper", sdi.Tolerance.Exact, sdi.Allow == Direction.Positive)],
        Sli sli => Increments(sli, negative),
        Sos sos => Standing(sos.Window.Exact, sos.Speed?.Exact, negative, bench.Clock.Cycles(sos.Filter)),
        Smt smt => [new ChannelLever(bench, axis, "upper", Kind.Temperature, smt.Limit.Exact, upper: true, magnitude: false)],
        _ => [],
    };

    /// <summary>Whether a function's sides can be met by negative values as well.</summary>
    public static bool HasMirror(MonitorPlan monitor) => monitor is Sls { Signed: false } or Ssr { Signed: false } or Sar { Signed: false } or Slt { Signed: false }
        or Sla { Signed: false } or Sli or Sos;

    /// <summary>Standstill against a window and a speed: SOS as a monitor and as a stop.</summary>
    public IEnumerable<Lever> Standing(Fraction window, Fraction? speed, bool negative, int filter)
    {
        yield return new StandingLever(bench, axis, window, speed, negative);
        if (speed is { } limit) yield return new StandingSpeedLever(bench, axis, window, limit, negative, filter);
    }

    private IEnumerable<Lever> Range(Kind kind, Quantity? lower, Quantity? upper, bool signed, bool negative)
    {
        var within = Within(kind, lower, upper, signed);
        if (negative && !signed) within = -within;
        if (upper is not null) yield return new ChannelLever(bench, axis, "upper", kind, upper.Exact, upper: true, !signed, negative && !signed) { Within = within };
        if (lower is not null) yield return new ChannelLever(bench, axis, "lower", kind, lower.Exact, upper: false, !signed, negative && !signed) { Within = within };
    }

    /// <summary>The middle of a range that the axis's other limits keep it out of; null: it rests where they want it.</summary>
    private Fraction? Within(Kind kind, Quantity? lower, Quantity? upper, bool signed)
    {
        if (lower is null || upper is null) return null;
        var rest = signed ? bench.RestOf(axis)[kind] : bench.RestOf(axis)[kind].Abs();
        return rest < lower.Exact || rest > upper.Exact ? (lower.Exact + upper.Exact) / 2 : null;
    }

    private IEnumerable<Lever> Positions(Slp slp)
    {
        if (_axis.Modulo is not { } modulo) return Range(Kind.Position, slp.Lower, slp.Upper, signed: true, negative: false);

        // A window that wraps goes on past the turn, and so does the position that is written.
        var window = new ModuloWindow(slp.Lower!.Exact, slp.Upper!.Exact, Constant.Of(modulo));
        var middle = (window.Lower.Exact + window.Upper.Exact) / 2;
        return
        [
            new ChannelLever(bench, axis, "upper", Kind.Position, window.Upper.Exact, upper: true, magnitude: false) { Within = middle },
            new ChannelLever(bench, axis, "lower", Kind.Position, window.Lower.Exact, upper: false, magnitude: false) { Within = middle },
        ];
    }

    private IEnumerable<Lever> Increments(Sli sli, bool negative)
    {
        int? cycles = sli.MoveTime is { } time ? bench.Clock.Cycles(time) : null;
        yield return new SliLever(bench, axis, "increment", sli.Increment.Exact, cycles, negative);
        if (sli.Window is { } window && cycles is not null) yield return new SliLever(bench, axis, "window", window.Exact, cycles, negative);
    }
}
