namespace MonitorSim.Motion;

/// <summary>One step of an integration where there is no closed form: a short-circuited motor beside other forces.</summary>
/// <remarks>Runge-Kutta of order 5 with an error estimate of order 4 (J. R. Dormand, P. J. Prince, J. Comp. Appl. Math. 6 (1980) 19). A state within the step
/// is that of a shorter step from the same beginning, so that events are found as exactly as the step itself is.</remarks>
/// <param name="from">When it begins, s.</param>
/// <param name="position">Where.</param>
/// <param name="velocity">How fast; not 0 unless <paramref name="acceleration"/> moves it off.</param>
/// <param name="actuation">What acts.</param>
/// <param name="acceleration">The acceleration at a speed, in the direction of this motion.</param>
internal sealed class SteppedSegment(double from, double position, double velocity, Actuation actuation, Func<double, double> acceleration)
    : Segment(from, position, velocity, actuation)
{
    // Of the speed; a speed that has all but vanished beside the fastest one is not worth shorter steps.
    private const double Relative = 1e-11, Vanished = 1e-6;

    // Its end is asked for again and again.
    private (double Dt, double Position, double Velocity) _latest = (0, position, velocity);

    /// <summary>A step is short enough by itself.</summary>
    public override int Parts => 1;

    /// <summary>The longest step that keeps the error small, at most the one tried.</summary>
    /// <param name="step">The one tried, s; returns one to try next.</param>
    /// <param name="fastest">The largest speed of the motion so far.</param>
    public double Length(ref double step, double fastest)
    {
        while (true)
        {
            var (_, v, error) = Step(step);
            var allowed = Relative * Math.Max(Vanished * fastest, Math.Max(Math.Abs(Velocity), Math.Abs(v))) + 1e-300;
            var taken = step;
            var factor = error == 0 ? 4 : Math.Clamp(0.9 * Math.Pow(allowed / error, 0.2), 0.2, 4);
            step *= factor;
            if (error <= allowed) return taken;
        }
    }

    protected override (double Position, double Velocity) Move(double dt)
    {
        if (dt != _latest.Dt)
        {
            var (x, v, _) = Step(dt);
            _latest = (dt, x, v);
        }

        return (_latest.Position, _latest.Velocity);
    }

    protected override double Acceleration(double dt, double velocity) => acceleration(velocity);

    protected override double Torque(double velocity) => 0;

    private (double Position, double Velocity, double Error) Step(double h)
    {
        // Only the speed has a rate of its own; the position's stages are the speeds.
        var v1 = Velocity;
        var a1 = acceleration(v1);
        var v2 = v1 + h * (a1 / 5);
        var a2 = acceleration(v2);
        var v3 = v1 + h * (3.0 / 40 * a1 + 9.0 / 40 * a2);
        var a3 = acceleration(v3);
        var v4 = v1 + h * (44.0 / 45 * a1 - 56.0 / 15 * a2 + 32.0 / 9 * a3);
        var a4 = acceleration(v4);
        var v5 = v1 + h * (19372.0 / 6561 * a1 - 25360.0 / 2187 * a2 + 64448.0 / 6561 * a3 - 212.0 / 729 * a4);
        var a5 = acceleration(v5);
        var v6 = v1 + h * (9017.0 / 3168 * a1 - 355.0 / 33 * a2 + 46732.0 / 5247 * a3 + 49.0 / 176 * a4 - 5103.0 / 18656 * a5);
        var a6 = acceleration(v6);
        var v = v1 + h * (35.0 / 384 * a1 + 500.0 / 1113 * a3 + 125.0 / 192 * a4 - 2187.0 / 6784 * a5 + 11.0 / 84 * a6);
        var x = Position + h * (35.0 / 384 * v1 + 500.0 / 1113 * v3 + 125.0 / 192 * v4 - 2187.0 / 6784 * v5 + 11.0 / 84 * v6);
        var a7 = acceleration(v);
        var error = h * (71.0 / 57600 * a1 - 71.0 / 16695 * a3 + 71.0 / 1920 * a4 - 17253.0 / 339200 * a5 + 22.0 / 525 * a6 - a7 / 40);
        return (x, v, Math.Abs(error));
    }
}
