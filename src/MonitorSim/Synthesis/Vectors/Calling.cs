using Fractions;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>How a monitor or a stop is called for, and how that ends.</summary>
internal abstract class Calling
{
    /// <summary>What cannot be and why; null where it can be called for.</summary>
    public virtual string? Unreachable => null;

    /// <summary>Whether there is a time before it is called for.</summary>
    public abstract bool CanBeAbsent { get; }

    /// <summary>Whether it can end and come again.</summary>
    public virtual bool CanBeLost => CanBeAbsent;

    /// <summary>The trip that calls; null where none does.</summary>
    public virtual (string Axis, string Monitor)? By => null;

    /// <summary>The recorded quantity of an axis that calling moves; null: none.</summary>
    public virtual Kind? Moves(string axis) => null;

    /// <summary>A speed of an axis at which it still calls; null where the present one has to do.</summary>
    /// <param name="axis">The axis.</param>
    /// <param name="speed">The speed that would be best, SI.</param>
    /// <param name="root">The recorded quantity that the speed comes from.</param>
    public virtual Target? Calls(string axis, Fraction speed, Kind root) => new(speed);

    /// <summary>From the next cycle on it is not called for.</summary>
    public abstract void Leave(Script script);

    /// <summary>Runs up to the cycle before the one at which it is called for, or further where nothing but standing is seen then.</summary>
    /// <returns>The cycle at which it is called for.</returns>
    public abstract int Call(Script script);
}
