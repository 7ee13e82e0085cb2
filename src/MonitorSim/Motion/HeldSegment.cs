namespace MonitorSim.Motion;

/// <summary>Motion whose speed is a straight line: a drive that follows its ramp, or rest.</summary>
/// <remarks>The drive gives M·slope + viscous·v + dry·sign(v) - load; at rest only what dry friction does not hold already.</remarks>
internal sealed class HeldSegment(Plant plant, double from, double position, double velocity, Actuation actuation, double slope, double dry)
    : Segment(from, position, velocity, actuation)
{
    public override bool IsRest => Velocity == 0 && slope == 0;

    protected override (double Position, double Velocity) Move(double dt) =>
        (Position + (Velocity + slope * dt / 2) * dt, Velocity + slope * dt);

    protected override double Acceleration(double dt, double velocity) => slope;

    protected override double Torque(double velocity)
    {
        if (Actuation.Drive is Drive.Constant constant) return constant.Torque;
        if (IsRest) return Math.Abs(plant.Load) <= dry ? 0 : -plant.Load + Math.Sign(plant.Load) * dry;
        var direction = velocity != 0 ? Math.Sign(velocity) : Math.Sign(Velocity);
        return plant.Inertia * slope + plant.Viscous * velocity + direction * dry - plant.Load;
    }
}
