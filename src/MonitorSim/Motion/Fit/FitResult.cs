using MonitorSim.Plans;

namespace MonitorSim.Motion.Fit;

/// <summary>How plant parameters were found.</summary>
public enum FitMethod
{
    /// <summary>From a move with torque: momentum balances of windows, linear least squares.</summary>
    Move,
    /// <summary>From a coast-down: the closed form of viscous and Coulomb friction, least squares on the speed.</summary>
    CoastDown,
}

/// <summary>A parameter with its uncertainty, as the noise of the recording makes it.</summary>
/// <param name="Name"><c>mass</c>, <c>inertia</c>, <c>viscous</c>, <c>coulomb</c>, <c>load</c>; of friction by direction
/// <c>coulomb forward</c>, <c>viscous forward</c>, <c>coulomb backward</c>, <c>viscous backward</c>; in a coast-down without known inertia
/// <c>viscous/inertia</c> and <c>coulomb/inertia</c> (of a linear axis <c>…/mass</c>), and the speed at its beginning.</param>
/// <param name="Value">The estimate, SI.</param>
/// <param name="StandardError">Its standard error, SI.</param>
/// <param name="Lower">Lower end of the 95 % confidence interval (Student's t), SI.</param>
/// <param name="Upper">Upper end.</param>
/// <param name="Unit">The SI unit.</param>
public sealed record FittedParameter(string Name, double Value, double StandardError, double Lower, double Upper, string Unit)
{
    /// <summary>The estimate for people: digits to a hundredth of its standard error, and no more than nine.</summary>
    public string Text
    {
        get
        {
            var digits = StandardError > 0 && Value != 0 ? (int)Math.Ceiling(Math.Log10(Math.Abs(Value) / StandardError)) + 2 : 9;
            return Quantities.Unit.Parse(Unit).Format(Value, Math.Clamp(digits, 2, 9));
        }
    }
}

/// <summary>What the model leaves over.</summary>
/// <param name="Rms">Root of the mean square: of window means of torque (move), of the speed (coast-down), SI.</param>
/// <param name="Max">The largest magnitude, SI.</param>
/// <param name="SignalRms">The same root of what was to be explained: torque, or speed.</param>
/// <param name="Neighbours">The correlation of neighbours: near 0 where what is left is noise, near 1 where it is something that the model lacks.</param>
/// <param name="Unit">The SI unit.</param>
public sealed record FitResiduals(double Rms, double Max, double SignalRms, double Neighbours, string Unit);

/// <summary>One equation of a fit, for pictures: what was measured and what the model says.</summary>
/// <param name="Time">The middle of the window, or the sample, s from the recording's beginning.</param>
/// <param name="Measured">Torque or speed, SI.</param>
/// <param name="Model">The same by the model.</param>
public readonly record struct FitPoint(double Time, double Measured, double Model);

/// <summary>Plant parameters from a recording. Everything of the load side, SI.</summary>
public sealed record FitResult
{
    /// <summary>The axis.</summary>
    public required string Axis { get; init; }
    /// <summary>The recording's name.</summary>
    public required string Trace { get; init; }
    /// <summary>How they were found.</summary>
    public required FitMethod Method { get; init; }
    /// <summary>The beginning of the stretch, s.</summary>
    public required double From { get; init; }
    /// <summary>The end of the stretch, s.</summary>
    public required double Until { get; init; }
    /// <summary>How many samples were used.</summary>
    public required int Samples { get; init; }
    /// <summary>How many equations they make: windows of a move, samples of a coast-down.</summary>
    public required int Equations { get; init; }
    /// <summary>How long a window is, s; 0 in a coast-down.</summary>
    public required double Window { get; init; }
    /// <summary>The parameters.</summary>
    public required IReadOnlyList<FittedParameter> Parameters { get; init; }
    /// <summary>What the model leaves over.</summary>
    public required FitResiduals Residuals { get; init; }
    /// <summary>The condition number of the regressors, each scaled to length 1: 1 is best, beyond 30 some parameters are hard to tell apart.</summary>
    public required double Condition { get; init; }
    /// <summary>What has to be known before the numbers are used, in sentences.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }
    /// <summary>The plant, to go into a plan; null where the recording does not tell its inertia.</summary>
    public PlantPlan? Plant { get; init; }
    /// <summary>What was measured beside what the model says.</summary>
    public required IReadOnlyList<FitPoint> Points { get; init; }

    /// <summary>The parameter of that name, or null.</summary>
    public FittedParameter? Find(string name) => Parameters.FirstOrDefault(parameter => parameter.Name == name);
}
