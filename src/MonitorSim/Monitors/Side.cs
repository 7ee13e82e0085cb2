using Fractions;
using MonitorSim.Channels;

namespace MonitorSim.Monitors;

/// <summary>One limit side of a monitor: what its measure is called, and against which limits it is compared.</summary>
/// <param name="Name"><c>upper</c>, <c>lower</c>, <c>window</c> and the like.</param>
/// <param name="Unit">The SI unit of measure and limit.</param>
/// <param name="Limits">The limits as compared: one, or one a level.</param>
internal sealed record Side(string Name, string Unit, params IReadOnlyList<Constant> Limits)
{
    /// <summary>Whether people see measure and limit with the opposite sign: -|v| vs -lower is shown as |v| and lower.</summary>
    public bool IsLower { get; init; }

    /// <summary>Whether <see cref="Limits"/> are levels.</summary>
    public bool HasLevels { get; init; }

    /// <summary>Whether it is compared from the request on, so that no delay would have avoided it.</summary>
    public bool IgnoresDelay { get; init; }

    /// <summary>Whether it is compared while arming too.</summary>
    public bool IsComparedWhileArming { get; init; }

    /// <summary>Added to what people see: whole turns back to the limit as written, where a window wraps.</summary>
    public Fraction Turned { get; init; }

    /// <summary>A limit or measure as people see it.</summary>
    public Fraction Shown(Fraction value) => (IsLower ? -value : value) + Turned;

    public static Side Lower(string unit, Constant lower) => new("lower", unit, lower.Negated()) { IsLower = true };

    public static Side Upper(string unit, Constant upper) => new("upper", unit, upper);
}

/// <summary>What one side has to say at one cycle.</summary>
internal struct Comparison
{
    /// <summary>Whether anything is compared.</summary>
    public bool IsMade;
    /// <summary>The index of the limit that it is compared with.</summary>
    public int Level;
    /// <summary>The measure x_n.</summary>
    public Reading Reading;

    public void Make(in Reading reading, int level = 0) => (IsMade, Reading, Level) = (true, reading, level);

    public readonly bool IsExceeded(Side side) => IsMade && Reading.Compare(Reading, side.Limits[Level]) > 0;
}
