using Fractions;
using MonitorSim.Quantities;

namespace MonitorSim.Channels;

/// <summary>A number of the plan (a limit, a ramp, a modulo) in SI: exact, and as the double nearest to it.</summary>
internal sealed class Constant(Fraction exact)
{
    public static readonly Constant Zero = new(Fraction.Zero);

    /// <summary>One second per nanosecond: turns a duration in nanoseconds into seconds.</summary>
    public static readonly Constant SecondsPerNanosecond = new(new Fraction(1, 1_000_000_000));

    public Fraction Exact { get; } = exact;

    public double Value { get; } = ExactDouble.Nearest(exact);

    /// <summary>How far <see cref="Value"/> may lie from <see cref="Exact"/>.</summary>
    public double Error => Math.Abs(Value) * Rounding.Unit + double.Epsilon;

    public Constant Negated() => new(-Exact);

    public static Constant Of(Quantity quantity) => new(quantity.Exact);

    public static Constant? OfOptional(Quantity? quantity) => quantity is null ? null : Of(quantity);

    /// <summary>A rate in SI per second as one per nanosecond, to be multiplied with a duration in nanoseconds.</summary>
    public static Constant PerNanosecond(Quantity rate) => new(rate.Exact * SecondsPerNanosecond.Exact);
}
