using MonitorSim.Plans;
using MonitorSim.Quantities;
using MonitorSim.Synthesis.Steps;

namespace MonitorSim.Synthesis;

/// <summary>One axis of a scenario: what it does, and what is recorded of it.</summary>
public sealed record ScenarioAxis
{
    /// <summary>Linear or rotary.</summary>
    [AlwaysWritten] public AxisMotion Motion { get; init; }
    /// <summary>Where it begins, at rest; default 0.</summary>
    [Kind(Kind.Position, Allowed.Any)] public Quantity? From { get; init; }
    /// <summary>What it does, one after the other.</summary>
    public IReadOnlyList<ScenarioStep> Steps { get; init; } = [];
    /// <summary>What moves, where torque or force is recorded: M·a + b·v + Tc·sign(v) - load (at standstill friction takes no part).</summary>
    public PlantPlan? Plant { get; init; }
    /// <summary>The recorded columns by their headers; none: <c>position</c> and <c>velocity</c> in SI, after the axis's name where there are several axes.</summary>
    public IReadOnlyDictionary<string, ScenarioColumn> Columns { get; init; } = new Dictionary<string, ScenarioColumn>();

    internal static ScenarioAxis Of(Profile profile) => new()
    {
        Motion = profile.Units.IsRotary == true ? AxisMotion.Rotary : AxisMotion.Linear,
        From = profile.Start,
        Steps = profile.Steps,
        Columns = new Dictionary<string, ScenarioColumn>
        {
            [ProfileSampler.Position] = new() { Of = ScenarioQuantity.Position, Unit = profile.PositionUnit, Resolution = profile.PositionResolution },
            [ProfileSampler.Velocity] = new() { Of = ScenarioQuantity.Velocity, Unit = profile.VelocityUnit, Resolution = profile.VelocityResolution },
        },
    };
}
