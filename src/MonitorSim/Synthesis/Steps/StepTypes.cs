namespace MonitorSim.Synthesis.Steps;

/// <summary>The steps that JSON can name. A new one's record goes into this list, in alphabetical order.</summary>
internal static class StepTypes
{
    public static readonly IReadOnlyList<Type> All =
        [typeof(CoastStep), typeof(DropOutStep), typeof(HoldStep), typeof(MoveStep), typeof(NoiseStep), typeof(RampStep), typeof(SignalStep), typeof(SineStep)];
}

/// <summary>Stands for a step whose word could not be read.</summary>
internal sealed record UnknownStep : ScenarioStep
{
    public override string Step => "?";

    internal override Profile AppendTo(Profile profile) => throw new InvalidOperationException("a scenario that could not be read is not sampled");
}
