using MonitorSim.Plans;

namespace MonitorSim.Motion.Fit;

/// <summary>Finds plant parameters in recordings, with their uncertainty: of a move with torque, or of a coast-down.</summary>
public static class PlantFit
{
    /// <summary>Mass or inertia, Coulomb and viscous friction and constant load from a move with torque: q = M·a + b·v + Tc·sgn v - load.</summary>
    /// <param name="plan">Where speed and torque stand in the recording.</param>
    /// <param name="trace">The recording; the axis moves both ways, at several speeds and accelerations, where all parameters are to be told apart.</param>
    /// <param name="options">The axis and the stretch.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="InputException">The plan or an option is wrong, the axis has no torque or speed, or moves too little.</exception>
    public static FitResult Move(Plan plan, Trace trace, FitOptions? options = null, CancellationToken cancel = default)
    {
        options ??= new();
        var data = FitData.Of(plan, trace, options);
        if (data.Torque is null)
            throw new InputException(new Problem($"{data.Axis}.torque", "a fit of a move needs the torque", "name its column in the plan's channels, or fit a coast-down"));
        return new MoveFit(data, options, cancel).Run(trace.Name);
    }

    /// <summary>Viscous and Coulomb friction from a coast-down, as ratios to the inertia unless that is known. Without a stretch in the options the longest one is taken in
    /// which the plan's stops leave the axis without torque.</summary>
    /// <param name="plan">Where the speed stands in the recording, and what turns the torque off.</param>
    /// <param name="trace">The recording.</param>
    /// <param name="options">The axis, the stretch, and the inertia where it is known.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="InputException">The plan or an option is wrong, the axis has no speed, or there is no coast-down.</exception>
    public static FitResult CoastDown(Plan plan, Trace trace, FitOptions? options = null, CancellationToken cancel = default)
    {
        options ??= new();
        if (options.Asymmetric) throw new InputException(new Problem("asymmetric", "a coast-down moves one way", "leave it out, or fit a move with torque"));
        var data = FitData.Of(plan, trace, options);
        var (from, until) = (0, data.Times.Length);
        if (options.From is { } start) from = data.AtOrAfter(start.Nanoseconds);
        else (from, until) = TorqueOff(plan, trace, data, cancel);
        if (options.Until is { } end) until = data.AtOrAfter(end.Nanoseconds);
        return new CoastDownFit(data, options, cancel).Run(trace.Name, from, until);
    }

    private static (int From, int Until) TorqueOff(Plan plan, Trace trace, FitData data, CancellationToken cancel)
    {
        var changes = Replay.Run(plan, trace, cancel).States.FirstOrDefault(states => states.Axis == data.Axis)?.Changes ?? [];
        var stretches = changes.Select((change, i) => (change.State, From: change.Time, Until: i + 1 < changes.Count ? changes[i + 1].Time : decimal.MaxValue))
            .Where(stretch => stretch.State == AxisState.TorqueOff)
            .Select(stretch => (From: At(stretch.From), Until: stretch.Until == decimal.MaxValue ? data.Times.Length : At(stretch.Until))).ToList();
        if (stretches.Count == 0)
            throw new InputException(new Problem(data.Axis, "by the plan the torque is never off in this recording", "say from where it coasts with \"from\""));
        return stretches.MaxBy(stretch => stretch.Until - stretch.From);

        int At(decimal seconds) => data.AtOrAfter((long)(seconds * 1_000_000_000));
    }
}
