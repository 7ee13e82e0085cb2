namespace MonitorSim.Motion;

/// <summary>Moves a plant from event to event: standstill, reversal, a drive that falls behind its ramp or catches up, an edge of a braking table.</summary>
/// <remarks>Between events the motion is in closed form; beside a short-circuited motor given by its constants it is integrated
/// until it is steady.</remarks>
internal sealed class PlantMotion(Plant plant)
{
    private const double Rounding = 1e-12;

    private double _step, _fastest;

    /// <summary>How the motion goes on from a state while the actuation stays.</summary>
    public Segment Next(in MotionState state, in Actuation actuation) => actuation.Drive switch
    {
        Drive.Constant constant => Free(state, actuation, constant.Torque),
        Drive.Ramp ramp => Following(state, actuation, ramp),
        _ => throw new ArgumentOutOfRangeException(nameof(actuation)),
    };

    /// <summary>Whether nothing pushes the axis on: what it does then can only come to rest.</summary>
    public bool IsOnlySlowed(in Actuation actuation) =>
        actuation.Drive is Drive.Constant constant && Math.Abs(constant.Torque + plant.Load) <= Holding(actuation);

    /// <summary>Whether a constant force works against the motion, so that it comes to rest in finite time; friction that vanishes with the speed never quite ends it.</summary>
    public bool EndsByItself(in MotionState state, in Actuation actuation) => actuation.Drive is not Drive.Constant constant || state.Velocity == 0
        || Math.Sign(state.Velocity) * (constant.Torque + plant.Load) < Holding(actuation);

    // Friction and brake, against any motion.
    private double Dry(in Actuation actuation) => plant.Coulomb + (actuation.IsBraked ? plant.Brake?.Torque ?? 0 : 0);

    private double Holding(in Actuation actuation) =>
        Dry(actuation) + (actuation.IsShorted && plant.ShortCircuit is TableBraking table ? table.AtRest : 0);

    private Segment Free(in MotionState state, in Actuation actuation, double torque)
    {
        var (net, v) = (torque + plant.Load, state.Velocity);
        if (v == 0 && Math.Abs(net) <= Holding(actuation)) return Resting(state, actuation);
        var direction = v != 0 ? Math.Sign(v) : Math.Sign(net);
        var driving = net - direction * Dry(actuation);
        if (actuation.IsShorted && plant.ShortCircuit is MagnetBraking magnet) return Stepped(state, actuation, driving, magnet);
        if (!actuation.IsShorted || plant.ShortCircuit is not TableBraking table) return Closed(state, actuation, driving, plant.Viscous, torque);

        // On a piece of the table the short circuit is one more constant and one more viscous force.
        var isRising = direction * (driving - plant.Viscous * v + table.Torque(v)) > 0;
        var band = table.BandOf(Math.Abs(v), isRising);
        var segment = Closed(state, actuation, driving - direction * band.Constant, plant.Viscous + band.Slope, torque);
        var edge = isRising ? band.Until : band.From;
        return edge > 0 && double.IsFinite(edge) && segment.TimeTo(direction * edge) is { } reached and > 0
            ? segment.EndingAt(state.Time + reached, direction * edge) : segment;
    }

    private FreeSegment Closed(in MotionState state, in Actuation actuation, double driving, double viscous, double torque)
    {
        var segment = new FreeSegment(state.Time, state.Position, state.Velocity, actuation, driving / plant.Inertia, viscous / plant.Inertia, torque);
        if (state.Velocity != 0 && segment.TimeTo(0) is { } standing) segment.EndingAt(state.Time + standing, 0);
        return segment;
    }

    private Segment Stepped(in MotionState state, in Actuation actuation, double driving, MagnetBraking magnet)
    {
        double Acceleration(double v) => (driving - plant.Viscous * v + magnet.Torque(v)) / plant.Inertia;
        if (IsSteady(Acceleration, state.Velocity)) return new FreeSegment(state.Time, state.Position, state.Velocity, actuation, g: 0, k: 0, torque: 0);
        var segment = new SteppedSegment(state.Time, state.Position, state.Velocity, actuation, Acceleration);
        var from = state.Time;
        if (_step <= 0) _step = 1e-4;
        _fastest = Math.Max(_fastest, Math.Abs(state.Velocity));
        var length = segment.Length(ref _step, _fastest);
        var direction = Math.Sign(state.Velocity);
        segment.EndingAt(from + length);
        double Turned(double time) => -segment.At(time).Velocity * direction;
        if (direction != 0 && Turned(from + length) >= 0) segment.EndingAt(Crossing.First(Turned, from, from + length), 0);
        return segment;
    }

    // A speed that forces around bring back, and that is already there but for rounding: steps as short as that would never get anywhere.
    private static bool IsSteady(Func<double, double> acceleration, double velocity)
    {
        const double Small = 1e-6, Settled = 1e-10;
        if (velocity == 0) return false;
        var now = acceleration(velocity);
        var slope = (acceleration(velocity * (1 + Small)) - now) / (velocity * Small);
        return slope < 0 && Math.Abs(now) <= Settled * Math.Abs(slope * velocity);
    }

    private HeldSegment Resting(in MotionState state, in Actuation actuation) =>
        new(plant, state.Time, state.Position, 0, actuation, 0, Dry(actuation));

    private Segment Following(in MotionState state, in Actuation actuation, Drive.Ramp ramp)
    {
        var (reference, slope, until) = ramp.At(state.Time);
        var dry = Dry(actuation);
        // A drive without a limit is where it should be at once; one that was there a moment ago still is, but for rounding.
        var isThere = double.IsPositiveInfinity(plant.Limit) || Math.Abs(state.Velocity - reference) <= Rounding * Math.Abs(ramp.Velocity);
        var v = isThere ? reference : state.Velocity;
        if (isThere && CanFollow(state, slope, reference, until, dry) is { } followed)
        {
            var segment = new HeldSegment(plant, state.Time, state.Position, v, actuation, slope, dry);
            return segment.EndingAt(followed, followed == until ? ramp.At(until).Velocity : null);
        }

        var sense = isThere ? Math.Sign(Needed(reference, slope, dry)) : Math.Sign(reference - v);
        var behind = Free(state with { Velocity = v }, actuation, sense * plant.Limit);
        return behind is FreeSegment free ? UntilCaughtUp(free, reference, slope, until, -sense, isThere) : behind.EndingAt(until);
    }

    // Until when the drive can follow its reference: as far as the torque needed stays within the limit. Null: not even now.
    private double? CanFollow(in MotionState state, double slope, double reference, double until, double dry)
    {
        if (reference == 0 && slope == 0) return Math.Abs(plant.Load) <= plant.Limit + dry ? until : null;
        if (Math.Abs(Needed(reference, slope, dry)) > plant.Limit * (1 + Rounding)) return null;
        if (slope == 0 || plant.Viscous == 0 || double.IsPositiveInfinity(plant.Limit)) return until;

        // The torque needed falls with the speed in a straight line; where it passes the limit, the drive falls behind.
        var direction = Math.Sign(reference);
        var atLimit = (-direction * plant.Limit - plant.Inertia * slope - direction * dry + plant.Load) / plant.Viscous;
        if (atLimit * direction <= 0) return until;
        var time = (atLimit - reference) / slope;
        return time > Rounding ? Math.Min(until, state.Time + time) : null;
    }

    private double Needed(double reference, double slope, double dry)
    {
        var direction = reference != 0 ? Math.Sign(reference) : -Math.Sign(slope);
        return plant.Inertia * slope + plant.Viscous * reference + direction * dry - plant.Load;
    }

    // side: of the reference, 1 where the speed is above it. It may only just have left it.
    private static FreeSegment UntilCaughtUp(FreeSegment free, double reference, double slope, double until, int side, bool hasJustLeft)
    {
        var (from, end) = (free.From, Math.Min(free.Until, until));
        double Back(double time) => (reference + slope * (time - from) - free.At(time).Velocity) * side;

        // The difference bends one way only: it comes back to 0 before its turning point, or at most once after it.
        var turn = free.TimeToAcceleration(slope) is { } time ? Math.Min(from + time, end) : hasJustLeft ? from : end;
        foreach (var (low, high) in new[] { (from, turn), (turn, end) })
        {
            if (low == from && hasJustLeft && turn > from) continue;
            var reach = double.IsPositiveInfinity(high) ? Reach(Back, low) : high;
            if (reach <= low || !(Back(reach) >= 0)) continue;
            var met = Crossing.First(Back, low, reach);
            free.EndingAt(met, reference + slope * (met - from));
            return free;
        }

        free.EndingAt(until);
        return free;
    }

    // A moment at which an endless difference has come back, or one so far away that it does not matter.
    private static double Reach(Func<double, double> back, double from)
    {
        for (var wait = 1e-3; wait < 1e6; wait *= 2)
            if (back(from + wait) >= 0) return from + wait;
        return from;
    }
}
