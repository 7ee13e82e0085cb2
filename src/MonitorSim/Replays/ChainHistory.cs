using MonitorSim.Monitors;
using MonitorSim.Motion;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Replays;

/// <summary>What every link of one monitor's chain showed at each cycle of a window: request, arming clock, measure against limit, filter clock, trip.
/// It is read off the chain that trips, so it cannot disagree with the trip.</summary>
/// <param name="Window">What was asked for.</param>
/// <param name="Unit">The SI unit of measure and limit.</param>
/// <param name="Delay">The arming delay, s.</param>
/// <param name="Filter">How long an exceedance must last to trip, s.</param>
/// <param name="Cycles">The cycles of the window, in order; none where the recording has none there.</param>
public sealed record ChainHistory(ChainWindow Window, string Unit, decimal Delay, decimal Filter, IReadOnlyList<ChainCycle> Cycles)
{
    /// <summary>Replays a recording up to the end of the last window and notes what the chains showed.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="trace">The recording.</param>
    /// <param name="windows">What to note; windows may overlap.</param>
    /// <param name="faults">What is injected, as in the replay that it explains; none without it.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>One history a window, in their order.</returns>
    /// <exception cref="InputException">The plan is wrong, or the recording lacks what it needs.</exception>
    /// <exception cref="ArgumentException">A window names a monitor or a side that the plan does not have.</exception>
    public static IReadOnlyList<ChainHistory> Of(Plan plan, Trace trace, IReadOnlyList<ChainWindow> windows, IReadOnlyList<Injection>? faults = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(windows);
        PlanChecks.Require(plan);
        // A chain that can tell that nothing happens is not asked what it measures, so every cycle is stepped here.
        var engine = new Engine(plan, Replay.InputsOf(plan, trace, faults ?? []), everyCycle: true, faults);
        var pens = windows.Select(window => new Pen(window, engine)).ToList();
        var end = windows.Count == 0 ? -1 : windows.Max(window => window.Until);
        foreach (var cycle in engine.Clock.Between(0, engine.Clock.Count))
        {
            if ((cycle.Index & 0xFFF) == 0) cancel.ThrowIfCancellationRequested();
            if (Seconds.Of(cycle.Time) > end) break;
            engine.Step(cycle);
            foreach (var pen in pens) pen.Note(cycle);
        }

        return [.. pens.Select(pen => pen.History())];
    }

    /// <summary>Notes one window as the replay passes.</summary>
    private sealed class Pen
    {
        private readonly List<ChainCycle> _cycles = [];
        private readonly ChainWindow _window;
        private readonly MonitorRun _run;
        private readonly Func<AxisState> _axis;
        private readonly int _side;

        public Pen(ChainWindow window, Engine engine)
        {
            _window = window;
            _run = engine.Runs.FirstOrDefault(run => run.Axis == window.Axis && run.Name == window.Monitor)
                ?? throw new ArgumentException($"the plan has no monitor {window.Axis}.{window.Monitor} that compares anything", nameof(window));
            _side = _run.Sides.TakeWhile(side => side.Name != window.Side).Count();
            if (_side == _run.Sides.Count)
                throw new ArgumentException($"{window.Axis}.{window.Monitor} has no side '{window.Side}'; it has {string.Join(", ", _run.Sides.Select(side => side.Name))}", nameof(window));
            _axis = () => engine.Reactors[window.Axis].State;
        }

        public void Note(in Cycle cycle)
        {
            var time = Seconds.Of(cycle.Time);
            if (time < _window.From || time > _window.Until) return;
            var (watch, run, side) = (_run.Chain.Watch, _run.Chain.Runs[_side], _run.Sides[_side]);
            var comparison = watch.Comparisons[_side];
            double? Shown(Fractions.Fraction value) => ExactDouble.Nearest(side.Shown(value));
            _cycles.Add(new()
            {
                Index = cycle.Index,
                Time = time,
                State = _run.Chain.State,
                Axis = _axis(),
                RequestedAt = watch.IsRequested ? Seconds.Of(watch.RequestedAt) : null,
                WatchingAt = Seconds.Of(watch.WatchingSince),
                Value = comparison.IsMade ? Shown(comparison.Reading.Exact()) : null,
                Limit = comparison.IsMade ? Shown(side.Limits[comparison.Level].Exact) : null,
                Level = comparison.IsMade && side.HasLevels ? comparison.Level : null,
                ExceededAt = run.IsOn ? Seconds.Of(run.Since) : null,
            });
        }

        public ChainHistory History() => new(_window, _run.Sides[_side].Unit, Seconds.Of(_run.Delay), Seconds.Of(_run.Filter), _cycles);
    }
}

/// <summary>Which side of which monitor to look at, and when.</summary>
/// <param name="Axis">The axis.</param>
/// <param name="Monitor">The monitor, or a stop that compares something.</param>
/// <param name="Side">The limit side.</param>
/// <param name="From">The first cycle time, s, included.</param>
/// <param name="Until">The last cycle time, s, included.</param>
public sealed record ChainWindow(string Axis, string Monitor, string Side, decimal From, decimal Until);

/// <summary>The links of a chain after one cycle. Times are seconds, all other numbers SI.</summary>
public sealed record ChainCycle
{
    /// <summary>The cycle's number n, from 0.</summary>
    public required int Index { get; init; }
    /// <summary>The cycle's time c_n, s.</summary>
    public required decimal Time { get; init; }
    /// <summary>The state of the monitor.</summary>
    public required MonitorState State { get; init; }
    /// <summary>The state of its axis.</summary>
    public required AxisState Axis { get; init; }
    /// <summary>t_a, when the present request came, s; null without one.</summary>
    public decimal? RequestedAt { get; init; }
    /// <summary>When watching began, s; null while not watching.</summary>
    public decimal? WatchingAt { get; init; }
    /// <summary>The measure as people see it (lower sides are the quantity itself), SI; null where nothing is compared.</summary>
    public double? Value { get; init; }
    /// <summary>The limit in force, SI; null where nothing is compared.</summary>
    public double? Limit { get; init; }
    /// <summary>The level in force, from 0; null where there are none.</summary>
    public int? Level { get; init; }
    /// <summary>When the present exceedance began, s; null while the limit is kept.</summary>
    public decimal? ExceededAt { get; init; }
}
