namespace MonitorSim.Motion;

/// <summary>What acts on a plant from outside, until it changes.</summary>
/// <param name="Drive">What the drive does.</param>
/// <param name="IsBraked">Whether the holding brake has closed.</param>
/// <param name="IsShorted">Whether the motor's windings are short-circuited.</param>
internal readonly record struct Actuation(Drive Drive, bool IsBraked = false, bool IsShorted = false);

/// <summary>What a drive does.</summary>
internal abstract record Drive
{
    /// <summary>A torque that does not change: 0 without power, the full one in a runaway.</summary>
    internal sealed record Constant(double Torque) : Drive;

    /// <summary>Follows a speed that falls (or stays) in a straight line and rests at 0, as far as its torque allows.</summary>
    /// <param name="From">When the line begins, s.</param>
    /// <param name="Velocity">The speed at that moment, with its sign; held before it.</param>
    /// <param name="Deceleration">>= 0.</param>
    internal sealed record Ramp(double From, double Velocity, double Deceleration) : Drive
    {
        /// <summary>When the reference comes to rest.</summary>
        public double End => Velocity == 0 ? From : Deceleration == 0 ? double.PositiveInfinity : From + Math.Abs(Velocity) / Deceleration;

        /// <summary>The reference from a moment on: its value, its slope, and until when that slope lasts.</summary>
        public (double Velocity, double Slope, double Until) At(double time)
        {
            if (time < From) return (Velocity, 0, From);
            if (time >= End) return (0, 0, double.PositiveInfinity);
            var slope = -Math.Sign(Velocity) * Deceleration;
            return (Velocity + slope * (time - From), slope, End);
        }
    }

    /// <summary>No torque.</summary>
    public static readonly Drive Off = new Constant(0);

    /// <summary>Holds still.</summary>
    public static readonly Drive Hold = new Ramp(0, 0, 0);
}
