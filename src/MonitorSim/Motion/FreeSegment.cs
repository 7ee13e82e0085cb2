namespace MonitorSim.Motion;

/// <summary>Motion under a constant and a viscous force, in closed form: dv/dt = g - k·v.</summary>
/// <remarks>v = v0 + (g - k·v0)·f1(t), x = x0 + v0·t + (g - k·v0)·f2(t), with f1 = (1 - e^(-kt))/k and f2 = (t - f1)/k, which tend to t and t²/2 as k
/// tends to 0. A speed w is reached at t = -ln(1 - k·(w - v0)/(g - k·v0))/k. (Derived; linear equation of first order.)</remarks>
internal sealed class FreeSegment(double from, double position, double velocity, Actuation actuation, double g, double k, double torque)
    : Segment(from, position, velocity, actuation)
{
    private readonly double _acceleration = g - k * velocity;

    /// <summary>How long until a speed is reached, s; null: never.</summary>
    public double? TimeTo(double speed)
    {
        var change = speed - Velocity;
        if (change == 0) return 0;
        if (_acceleration == 0 || Math.Sign(change) != Math.Sign(_acceleration)) return null;
        var steady = change / _acceleration;
        var z = -k * steady;
        return z <= -1 ? null : steady * RatioOfLog(z);
    }

    /// <summary>How long until the acceleration has become this one, s; null: never.</summary>
    public double? TimeToAcceleration(double acceleration)
    {
        if (k == 0 || _acceleration == 0 || acceleration / _acceleration is not (> 0 and var ratio)) return null;
        var time = -Math.Log(ratio) / k;
        return time > 0 ? time : null;
    }

    protected override (double Position, double Velocity) Move(double dt)
    {
        if (k == 0) return (Position + Velocity * dt + _acceleration * (dt * dt / 2), Velocity + _acceleration * dt);
        var z = k * dt;
        var (f1, f2) = (dt * First(z), dt * dt * Second(z));
        return (Position + Velocity * dt + _acceleration * f2, Velocity + _acceleration * f1);
    }

    protected override double Acceleration(double dt, double velocity) => k == 0 ? _acceleration : _acceleration * Math.Exp(-k * dt);

    protected override double Torque(double velocity) => torque;

    // ln(1 + z)/z without cancellation (W. Kahan's way).
    private static double RatioOfLog(double z)
    {
        var u = 1 + z;
        return u == 1 ? 1 : Math.Log(u) / (u - 1);
    }

    // (1 - e^-z)/z, likewise.
    private static double First(double z)
    {
        var u = Math.Exp(-z);
        if (u == 1) return 1;
        return u == 0 || double.IsInfinity(u) ? (1 - u) / z : (u - 1) / Math.Log(u);
    }

    // (z - 1 + e^-z)/z², by its series 1/2! - z/3! + z²/4! - … where the difference would cancel.
    private static double Second(double z)
    {
        if (Math.Abs(z) > 0.5) return (1 - First(z)) / z;
        var (sum, term) = (0.0, 0.5);
        for (var n = 3; sum + term != sum; n++)
        {
            sum += term;
            term *= -z / n;
        }

        return sum;
    }
}
