using Fractions;
using MonitorSim.Channels;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

using SampleTimes = MonitorSim.Channels.SampleTimes;

/// <summary>A vector while it is written: what is wanted of signals and channels now, and the samples so far.</summary>
internal sealed class Script
{
    private readonly Dictionary<string, DrivenColumn> _columns = new(StringComparer.Ordinal);
    private readonly Dictionary<string, AxisDrive> _axes = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Axis, Kind Kind), Target> _targets = [];
    private readonly Dictionary<(string Axis, Kind Kind), SecondTarget> _seconds = [];
    private readonly Dictionary<(string Axis, Kind Kind), Fraction> _start = [];
    private readonly List<Setting> _settings = [];
    private readonly SampleTimes _times = new();
    private readonly Bench _bench;
    private Setting _setting;
    private Action? _afterwards;

    /// <param name="bench">The plan and its clock.</param>
    /// <param name="focus">The axis whose columns come first where axes share one.</param>
    public Script(Bench bench, string focus)
    {
        (_bench, _setting) = (bench, bench.Requests.Quiet);
        foreach (var (name, axis) in bench.Plan.Axes.OrderBy(axis => axis.Key == focus ? 0 : 1).ThenBy(axis => axis.Key, StringComparer.Ordinal))
        {
            _axes[name] = new(name, axis, _times, bench.Clock.Period, Column);
            foreach (var (kind, value) in bench.RestOf(name))
                if (_axes[name].Has(kind)) Start(name, kind, value);
        }
    }

    /// <summary>What it takes for granted of outputs and states, in words: they may turn out otherwise. Null: nothing.</summary>
    public string? Assumption { get; set; }

    /// <summary>How many samples there are; the index of the next.</summary>
    public int Count => _settings.Count;

    public SampleTimes Times => _times;

    public IReadOnlyList<Setting> Settings => _settings;

    public IEnumerable<DrivenColumn> Columns => _columns.Values;

    public AxisDrive Axis(string name) => _axes[name];

    /// <summary>States what a channel shows at the beginning and until something else is wanted.</summary>
    public void Start(string axis, Kind kind, Fraction value)
    {
        _start[(axis, kind)] = value;
        if (value != Fraction.Zero || _axes[axis].Root(kind) == kind) Want(axis, kind, new(value));
    }

    /// <summary>From now on the signals hold these words.</summary>
    public void Ask(Setting setting) => _setting = setting;

    /// <summary>The present setting.</summary>
    public Setting Setting => _setting;

    /// <summary>From now on a channel shows this; what had been wanted of channels of the same column is dropped.</summary>
    public void Want(string axis, Kind kind, Target target)
    {
        var root = _axes[axis].Root(kind);
        foreach (var other in _targets.Keys.Where(key => key.Axis == axis && _axes[axis].Root(key.Kind) == root).ToList()) _targets.Remove(other);
        _targets[(axis, kind)] = target;
    }

    /// <summary>From now on an axis stands, if its speed is known at all.</summary>
    public void Stand(string axis)
    {
        var drive = _axes[axis];
        if (!drive.Has(Kind.Velocity)) return;
        if (drive.ForgetsByStanding(Kind.Velocity)) Want(axis, drive.Root(Kind.Velocity), new(Now(axis, drive.Root(Kind.Velocity))));
        else Want(axis, Kind.Velocity, new(Fraction.Zero));
    }

    /// <summary>From now on the second recording shows this.</summary>
    public void WantSecond(string axis, Kind kind, Target target) => _seconds[(axis, kind)] = new(target, IsSpread: false);

    /// <summary>From now on the second recording is so far from the first.</summary>
    public void WantSpread(string axis, Kind kind, Target distance) => _seconds[(axis, kind)] = new(distance, IsSpread: true);

    /// <summary>From now on the second recording shows the same as the first.</summary>
    public void WantSame(string axis, Kind kind) => _seconds.Remove((axis, kind));

    /// <summary>What a channel shows at the newest sample, SI; at the start, where there is none.</summary>
    public Fraction Now(string axis, Kind kind) => (Count == 0 ? null : _axes[axis].Value(kind, Count - 1)) ?? (_start.TryGetValue((axis, kind), out var start) ? start : Fraction.Zero);

    /// <summary>Does something once the next cycle has been written.</summary>
    public void Afterwards(Action action) => _afterwards += action;

    /// <summary>Lets so many cycles pass.</summary>
    public void Run(int cycles)
    {
        for (var i = 0; i < cycles; i++)
        {
            var sample = Count;
            if (sample >= Bench.MostCycles) throw new VectorException($"it would take more than {Bench.MostCycles} cycles");
            _times.Append(_bench.Clock.Sample(sample));
            _settings.Add(_setting);
            foreach (var (name, axis) in _axes) axis.Write(sample, Of(_targets, name), Of(_seconds, name), Of(_start, name));
            if (_afterwards is not { } action) continue;
            _afterwards = null;
            action();
        }
    }

    private static Dictionary<Kind, T> Of<T>(Dictionary<(string Axis, Kind Kind), T> wanted, string axis) =>
        wanted.Where(one => one.Key.Axis == axis).ToDictionary(one => one.Key.Kind, one => one.Value);

    private DrivenColumn Column(string name, int digits)
    {
        if (!_columns.TryGetValue(name, out var column)) _columns[name] = column = new(name, digits);
        return column;
    }
}
