using Fractions;

namespace MonitorSim.Quantities;

/// <summary>A unit as its user wrote it, with its exact way to SI: si = value · <see cref="Factor"/> + <see cref="Offset"/>.</summary>
/// <param name="Symbol">The spelling that the user chose, such as <c>mm/s</c>.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Factor">Exact number of SI units in one of it. Angles take pi as exactly 3.141592653589793.</param>
/// <param name="Offset">SI value of its zero: 0, except for temperatures other than °C.</param>
public sealed record Unit(string Symbol, Dimension Dimension, Fraction Factor, Fraction Offset)
{
    /// <summary>The fixed number that stands for pi everywhere.</summary>
    public static readonly Fraction Pi = new(3141592653589793L, 1000000000000000L);
}
