using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Motion.Envelopes;

/// <summary>The limits of every monitoring function as a simulated motion meets them.</summary>
/// <remarks>Where a reference is still to come (a monitor that is arming, the second phase of SLI), nothing is watched: a fault is rather found too late here than
/// too early. Outputs do not watch, nor does the approach of SLS.</remarks>
internal static class MonitorWatchers
{
    /// <summary>The limits that watch from a moment on; filter, response and reaction are the caller's.</summary>
    public static IEnumerable<Watcher> Of(MonitorPlan monitor, WatchMoment moment) => monitor switch
    {
        Sls sls => Levels(sls, moment),
        Ssr ssr => Range(ssr.Name, state => state.Velocity, ssr.Signed, ssr.Lower, ssr.Upper),
        Sar sar => Range(sar.Name, state => state.Acceleration, sar.Signed, sar.Lower, sar.Upper),
        Str str => Range(str.Name, state => state.Torque, isSigned: true, str.Lower, str.Upper),
        Slt slt => Range(slt.Name, state => state.Torque, slt.Signed, null, slt.Limit),
        Sla sla => Quadrants(sla),
        Slp slp => Window(slp, moment),
        Sdi sdi => Direction(sdi, moment),
        Sli sli => Move(sli, moment),
        Sos sos => Standstill(sos, moment),
        _ => [],
    };

    private static IEnumerable<Watcher> Levels(Sls sls, WatchMoment moment)
    {
        foreach (var (from, level) in moment.Levels)
        {
            var limit = (sls.Limit ?? sls.Levels![level].Limit).Si;
            yield return new(sls.Name, "upper", Magnitude(state => state.Velocity, sls.Signed), limit) { From = from };
        }
    }

    private static IEnumerable<Watcher> Range(string name, Func<MotionState, double> quantity, bool isSigned, Quantity? lower, Quantity? upper)
    {
        var measure = Magnitude(quantity, isSigned);
        if (upper is not null) yield return new(name, "upper", measure, upper.Si);
        if (lower is not null) yield return new(name, "lower", state => -measure(state), -lower.Si);
    }

    private static IEnumerable<Watcher> Quadrants(Sla sla)
    {
        var measure = Magnitude(state => state.Acceleration, sla.Signed);
        if (sla.Deceleration is not { } deceleration)
        {
            yield return new(sla.Name, "upper", measure, sla.Limit.Si);
            yield break;
        }

        yield return new(sla.Name, "upper", state => state.Acceleration * state.Velocity >= 0 ? measure(state) : double.NaN, sla.Limit.Si);
        yield return new(sla.Name, "deceleration", state => state.Acceleration * state.Velocity < 0 ? Math.Abs(state.Acceleration) : double.NaN, deceleration.Si);
    }

    private static IEnumerable<Watcher> Window(Slp slp, WatchMoment moment)
    {
        if (double.IsNaN(moment.Position)) yield break;
        var (lower, upper) = (slp.Lower?.Si, slp.Upper?.Si);
        var turned = 0.0;
        if (moment.Modulo is { } modulo && lower is { } low && upper is { } high)
        {
            while (high < low) high += modulo;
            upper = high;
            turned = Math.Floor(((low + high) / 2 + modulo / 2 - moment.Position) / modulo) * modulo;
        }

        if (upper is { } top) yield return new(slp.Name, "upper", state => state.Position + turned, top);
        if (lower is { } bottom) yield return new(slp.Name, "lower", state => -(state.Position + turned), -bottom);
    }

    private static IEnumerable<Watcher> Direction(Sdi sdi, WatchMoment moment)
    {
        var isPositive = sdi.Allow == Plans.Direction.Positive;
        var reference = sdi.Reference == DirectionReference.Start ? moment.Reference : isPositive ? moment.Highest : moment.Lowest;
        if (double.IsNaN(reference)) yield break;
        yield return new(sdi.Name, "upper", state => isPositive ? reference - state.Position : state.Position - reference, sdi.Tolerance.Si);
    }

    private static IEnumerable<Watcher> Move(Sli sli, WatchMoment moment)
    {
        if (double.IsNaN(moment.Reference)) yield break;
        var ends = sli.MoveTime is { } time ? time.Si - moment.WatchedFor : double.PositiveInfinity;
        if (ends > 0) yield return new(sli.Name, "increment", state => state.Time < ends ? Math.Abs(state.Position - moment.Reference) : double.NaN, sli.Increment.Si);
    }

    private static IEnumerable<Watcher> Standstill(Sos sos, WatchMoment moment)
    {
        if (!double.IsNaN(moment.Reference)) yield return new(sos.Name, "window", state => Math.Abs(state.Position - moment.Reference), sos.Window.Si);
        if (sos.Speed is { } speed) yield return new(sos.Name, "speed", state => Math.Abs(state.Velocity), speed.Si);
    }

    private static Func<MotionState, double> Magnitude(Func<MotionState, double> quantity, bool isSigned) =>
        isSigned ? quantity : state => Math.Abs(quantity(state));
}
