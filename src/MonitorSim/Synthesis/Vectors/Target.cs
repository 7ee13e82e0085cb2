using Fractions;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>Which step of a column's grid a wanted value stands for.</summary>
internal enum Step
{
    /// <summary>The nearest.</summary>
    Nearest,
    /// <summary>The last that is not above.</summary>
    NotAbove,
    /// <summary>The first that is above.</summary>
    Above,
    /// <summary>The last that is not below.</summary>
    NotBelow,
    /// <summary>The first that is below.</summary>
    Below,
}

/// <summary>What a channel is to show at a cycle.</summary>
/// <param name="Value">SI at the load.</param>
/// <param name="Step">Which step of the grid.</param>
internal readonly record struct Target(Fraction Value, Step Step = Step.Nearest)
{
    /// <summary>Whether a value is on the wanted side; the nearest step has none.</summary>
    public bool Allows(Fraction value) => Step switch
    {
        Step.NotAbove => value <= Value,
        Step.Above => value > Value,
        Step.NotBelow => value >= Value,
        Step.Below => value < Value,
        _ => true,
    };

    /// <summary>Whether the wanted steps lie above the value, so that the first of them is the lowest.</summary>
    public bool IsFromBelow => Step is Step.Above or Step.NotBelow;

    /// <summary>At a limit, or the last step before it.</summary>
    /// <param name="limit">The limit with its sign.</param>
    /// <param name="upper">Whether it is exceeded by larger values.</param>
    public static Target At(Fraction limit, bool upper) => new(limit, upper ? Step.NotAbove : Step.NotBelow);

    /// <summary>The first step past a limit.</summary>
    /// <param name="limit">The limit with its sign.</param>
    /// <param name="upper">Whether it is exceeded by larger values.</param>
    public static Target Past(Fraction limit, bool upper) => new(limit, upper ? Step.Above : Step.Below);
}
