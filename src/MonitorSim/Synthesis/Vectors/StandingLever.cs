using Fractions;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>The window of SOS beside its limit of speed: the axis stands, as far as its speed tells. Where the speed follows from the position, it leaves the
/// window as slowly as that limit wants.</summary>
internal sealed class StandingLever : TravelLever
{
    private const int MostSteps = 2000;

    private readonly Bench _bench;
    private readonly Fraction? _speed;
    private readonly bool _isDerived;

    /// <param name="bench">The plan.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="window">How far it may move, SI.</param>
    /// <param name="speed">How fast SOS itself lets it move, SI; null: however fast.</param>
    /// <param name="negative">Whether it moves towards falling positions.</param>
    /// <param name="gently">Whether other monitors' limits of speed are kept as well, where that does not take too long.</param>
    public StandingLever(Bench bench, string axis, Fraction window, Fraction? speed, bool negative, bool gently = false) : base(bench, axis, "window", window, negative)
    {
        (_bench, _speed, _isDerived) = (bench, speed, bench.Plan.Axes[axis].Channels.Velocity?.Column is null);

        if (!_isDerived) return;

        // Estimators that smooth leave rounding, and may overshoot.
        var own = bench.Drive(axis).IsExact(Kind.Velocity) ? speed : speed / 2;
        var others = gently ? RestValues.SlowestLimit(bench.Plan.Axes[axis]) / 2 : null;
        var fastest = others is { } slow && (own is null || own > slow) && window <= MostSteps * Way(slow) ? slow : own;
        if (fastest is { } limit) Pace = Way(limit);

        Fraction Way(Fraction at) => at * bench.Clock.Period / 1_000_000_000;
    }

    public override string? Unreachable => base.Unreachable ?? (Pace is not { } pace || Window <= MostSteps * pace ? null
        : _speed is null ? null
        : pace == Fraction.Zero ? "no speed is allowed, and without one nothing leaves the window: that side trips first"
        : $"at the speed that is allowed it would take more than {MostSteps} cycles to leave the window");

    // One cycle of standing must be enough for the speed to be gone.
    public override string? HeardWhileArming => Pace is null || _speed is null || _bench.Drive(Axis).Memory(Kind.Velocity) <= 2 ? null
        : "the estimator still shows the speed of a move that ends with the last cycle of arming";

    public override int Memory => Pace is null ? 0 : _bench.Drive(Axis).Memory(Kind.Velocity);

    public override void Prepare(Script script, int cycles)
    {
        base.Prepare(script, cycles);
        if (_speed is not null && !_isDerived) script.Start(Axis, Kind.Velocity, Fraction.Zero);
    }

    /// <summary>Farther and farther away: where it stands at the first watching cycle, there it is measured from.</summary>
    public override void ExceedUnheard(Script script, int cyclesLeft)
    {
        Exceed(script);
        if (Pace is not null && _speed is not null) script.Afterwards(() => Anchor(script));
    }
}
