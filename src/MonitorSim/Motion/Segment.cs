namespace MonitorSim.Motion;

/// <summary>A stretch of motion between two events, in closed form or as one step of an integration.</summary>
/// <param name="from">When it begins, s.</param>
/// <param name="position">Where.</param>
/// <param name="velocity">How fast.</param>
/// <param name="actuation">What acts during it.</param>
internal abstract class Segment(double from, double position, double velocity, Actuation actuation)
{
    private double? _velocityAtEnd;

    public double From => from;

    /// <summary>When it ends by itself, or was cut, s.</summary>
    public double Until { get; private set; } = double.PositiveInfinity;

    public Actuation Actuation => actuation;

    /// <summary>Whether it goes on like this for ever unless something acts.</summary>
    public virtual bool IsRest => false;

    /// <summary>In how many parts it is looked at: a quantity of a closed form rises or falls, a ramp beside it bends once, and parts keep a short excursion from being passed over.</summary>
    public virtual int Parts => 8;

    protected double Position => position;

    protected double Velocity => velocity;

    /// <summary>The state at a moment within it.</summary>
    public MotionState At(double time)
    {
        var (x, v) = Move(time - from);
        if (time == Until && _velocityAtEnd is { } exact) v = exact;
        return new(time, x, v, Acceleration(time - from, v), Torque(v));
    }

    /// <summary>Ends it earlier than otherwise.</summary>
    /// <param name="time">When, s; later than its end changes nothing.</param>
    /// <param name="velocityThere">The speed that is known there, without the rounding of the way there.</param>
    public Segment EndingAt(double time, double? velocityThere = null)
    {
        if (time < Until) (Until, _velocityAtEnd) = (time, velocityThere);
        return this;
    }

    /// <summary>Position and speed so much later than the beginning.</summary>
    protected abstract (double Position, double Velocity) Move(double dt);

    protected abstract double Acceleration(double dt, double velocity);

    protected abstract double Torque(double velocity);
}
