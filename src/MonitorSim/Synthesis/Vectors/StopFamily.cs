using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>What the stops of an axis compare with a limit that stays: STO's residual, SOS's window and speed, SBC's window, and SS1 and SS2 by deceleration.
/// Each is a chain that a state calls for.</summary>
internal sealed class StopFamily(Bench bench, string axis)
{
    private readonly StopsPlan _stops = bench.Plan.Axes[axis].Stops;
    private readonly Demands _demands = new(bench);

    public void Make(Harvest harvest)
    {
        if (_stops.Sto is { Residual: { } residual } sto)
            Both(harvest, "STO", "STO", bench.Clock.Cycles(sto.Grace), 0, Reaction.None, negative => new ChannelLever(bench, axis, "upper", Kind.Torque, residual.Exact, upper: true, magnitude: true, negative));
        if (_stops.Sos is { Window: { } window } sos)
        {
            Both(harvest, "SOS", "SOS", 0, 0, Reaction.Stop0,
                negative => new StandingLever(bench, axis, window.Exact, sos.Speed?.Exact, negative, gently: true), negative => new StandingLever(bench, axis, window.Exact, sos.Speed?.Exact, negative));
            if (sos.Speed is { } speed) Both(harvest, "SOS", "SOS", 0, 0, Reaction.Stop0, negative => new StandingSpeedLever(bench, axis, window.Exact, speed.Exact, negative, 0));
        }

        if (_stops.Sbc is { Window: { } slip } sbc)
            Both(harvest, "SBC", "STO", bench.Clock.Cycles(sbc.Apply), 0, Reaction.None, negative => new TravelLever(bench, axis, "window", slip.Exact, negative));
        foreach (var (name, stop) in new[] { ("SS1", _stops.Ss1), ("SS2", _stops.Ss2) })
        {
            if (stop is { Variant: StopVariant.Deceleration })
                Slowing(harvest, name, stop);
        }
    }

    private void Both(Harvest harvest, string name, string state, int delay, int filter, Reaction reaction, params Func<bool, Lever>[] levers)
    {
        var subjects = _demands.Ways(axis, state, levers[0](false).Moves).Select(way => new Subject(axis, name, way, delay, filter, reaction)).ToList();
        ChainFamily.Make(harvest, [.. subjects.SelectMany(subject => levers.Select(lever => new ChainFamily(bench, subject, lever(false))))]);
        MirrorFamily.Make(harvest, [.. subjects.SelectMany(subject => levers.Select(lever => new MirrorFamily(bench, subject, lever(true))))]);
    }

    private void Slowing(Harvest harvest, string name, RampStopPlan stop)
    {
        var (delay, filter) = (bench.Clock.Cycles(stop.Delay), bench.Clock.Cycles(stop.Filter));
        IEnumerable<Subject> Subjects(bool negative) => _demands.SlowingWays(axis, name, stop, 4 * (delay + filter) + 20, negative).Select(way => new Subject(axis, name, way, delay, filter, Reaction.Stop0));
        ChainFamily.Make(harvest, [.. Subjects(false).Select(subject => new ChainFamily(bench, subject, new SlowingLever(bench, axis, stop, negative: false)))]);
        MirrorFamily.Make(harvest, [.. Subjects(true).Select(subject => new MirrorFamily(bench, subject, new SlowingLever(bench, axis, stop, negative: true)))]);
    }
}
