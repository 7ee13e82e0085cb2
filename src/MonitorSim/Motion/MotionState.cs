namespace MonitorSim.Motion;

/// <summary>Where an axis is, how fast, and what its drive does, at one moment. SI.</summary>
/// <param name="Time">s from the beginning of the motion.</param>
/// <param name="Position">m or rad.</param>
/// <param name="Velocity">m/s or rad/s.</param>
/// <param name="Acceleration">m/s² or rad/s²; where it jumps, the one after.</param>
/// <param name="Torque">Of the drive alone, N or N·m: neither brake, load, friction nor short circuit.</param>
public readonly record struct MotionState(double Time, double Position, double Velocity, double Acceleration, double Torque);
