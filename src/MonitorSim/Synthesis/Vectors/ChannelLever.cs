using Fractions;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>A channel against a limit: x, -x, |x| or -|x|.</summary>
/// <param name="bench">The plan.</param>
/// <param name="axis">The axis.</param>
/// <param name="side">The limit side.</param>
/// <param name="kind">The channel.</param>
/// <param name="limit">The limit as written, SI.</param>
/// <param name="upper">Whether larger values exceed it.</param>
/// <param name="magnitude">Whether magnitudes are compared.</param>
/// <param name="negative">Of magnitudes: whether the channel itself is negative.</param>
internal class ChannelLever(Bench bench, string axis, string side, Kind kind, Fraction limit, bool upper, bool magnitude, bool negative = false) : Lever
{
    private readonly AxisDrive _drive = bench.Drive(axis);

    protected Bench Bench => bench;
    protected bool IsNegative => negative;

    public Kind Kind => kind;

    /// <summary>The limit as written, SI.</summary>
    public Fraction Limit => limit;

    /// <summary>Whether larger values exceed it.</summary>
    public bool IsUpperLimit => upper;

    public bool IsMagnitude => magnitude;

    /// <summary>A value well within the limit; null: one that no limit of the axis forbids.</summary>
    public Fraction? Within { get; init; }

    public override Kind? Moves => _drive.Root(kind);

    // A negative value of a magnitude mirrors everything.
    private Fraction Signed { get; } = negative ? -limit : limit;
    private bool IsUpper { get; } = upper != negative;

    public override string Side => side;

    public override string Axis => axis;

    public override int Order => _drive.Order(kind);

    public override int Memory => _drive.Memory(kind);

    public override string? Unreachable => !magnitude || limit != Fraction.Zero ? null
        : !upper ? "no magnitude is below a lower limit of 0"
        : !_drive.IsExact(kind) ? "nothing but exactly 0 is allowed, and what smooths it leaves rounding" : null;

    public override void Rest(Script script) => script.Want(axis, kind, new(RestValue));

    public override void Allow(Script script) => script.Want(axis, kind, Target.At(Signed, IsUpper));

    public override void Exceed(Script script) => script.Want(axis, kind, Target.Past(Signed, IsUpper));

    /// <summary>Whether a value exceeds the limit.</summary>
    public bool IsPast(Fraction value) => magnitude ? upper ? value.Abs() > limit : value.Abs() < limit : upper ? value > limit : value < limit;

    public override bool IsPast(Script script, int cycle, int reference) =>
        (magnitude && upper ? script.Axis(axis).Magnitude(kind, cycle) : script.Axis(axis).Value(kind, cycle)) is { } value && IsPast(value);

    private Fraction RestValue
    {
        get
        {
            if (Within is { } within) return within;
            var rest = bench.RestOf(axis)[kind];
            if (negative) rest = -rest;
            if (!IsPast(rest)) return rest;
            return magnitude && upper ? Fraction.Zero : IsUpper ? RestValues.Within(null, Signed) : RestValues.Within(Signed, null);
        }
    }
}
