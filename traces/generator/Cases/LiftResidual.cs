namespace MonitorSim.Demo.Cases;

/// <summary>The torque takes longer to go than it should.</summary>
internal sealed class LiftResidual : IDemoCase
{
    public string Name => "lift-residual";

    public Recording Record() => Recording.Of("lift", SlabSaw.Lift(56)
        .Until(0.5m)
        .Signal("emergency stop", true).Until(1.2m))
        .With("lift torque", "N·m", new Course((0.51m, 8), (0.55m, 2.4m), (0.74m, 0.5m), (0.8m, 0)), 0.03m, 57);
}
