using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Signals;
using MonitorSim.Traces;

namespace MonitorSim.Replays;

/// <summary>What a replay reads: times, columns and signals by sample, whole or growing.</summary>
internal sealed class Inputs
{
    private readonly Dictionary<string, Numbers> _columns = [];
    private readonly Dictionary<string, Track> _signals = [];

    /// <summary>Inputs that grow sample by sample.</summary>
    public Inputs(Plan plan)
    {
        Times = new();
        Gaps = new(plan);
        foreach (var column in ChannelColumns(plan)) _columns[column] = new();
        foreach (var signal in plan.Signals.Keys) _signals[signal] = new();
    }

    /// <summary>The whole of a recording.</summary>
    /// <exception cref="InputException">A column is not there, is not of numbers, or has missing cells that the plan rejects.</exception>
    public Inputs(Plan plan, Trace trace)
    {
        MissingCells.Check(plan, trace, ChannelColumns(plan));
        Times = new(trace.TimesArray);
        Gaps = new(plan, trace.Times, trace.Sampling);
        Gaps.Check(plan, trace.Name);
        foreach (var column in ChannelColumns(plan))
        {
            _columns[column] = new((NumberColumn)trace.Find(column)!, plan.Missing == MissingPolicy.Hold);
            if (trace.Find(column)!.Unit is { } unit) Units[column] = unit;
        }

        foreach (var (name, signal) in plan.Signals) _signals[name] = new SignalReader(signal).Read(name, trace);
    }

    public SampleTimes Times { get; }

    public Gaps Gaps { get; }

    /// <summary>The units that the recording states, by column.</summary>
    public Dictionary<string, string> Units { get; } = [];

    public Numbers Column(string name) => _columns[name];

    public Track Signal(string name) => _signals[name];

    /// <summary>Lets a signal change later than recorded, ns.</summary>
    public void Delay(string name, long delay) => _signals[name] = _signals[name].Delayed(Times, delay);

    public IReadOnlyDictionary<string, Track> Signals => _signals;

    public IEnumerable<string> Columns => _columns.Keys;

    /// <summary>Forgets the samples before one.</summary>
    public void LetGo(int before)
    {
        Times.LetGo(before);
        Gaps.LetGo(before);
        foreach (var column in _columns.Values) column.LetGo(before);
        foreach (var signal in _signals.Values) signal.LetGo(before);
    }

    /// <summary>Carries the samples, in an order that is not the plan's.</summary>
    public void Carry(Checkpoint checkpoint)
    {
        Times.Carry(checkpoint);
        Gaps.Carry(checkpoint);
        foreach (var (_, column) in _columns.OrderBy(pair => pair.Key, StringComparer.Ordinal)) column.Carry(checkpoint);
        foreach (var (_, signal) in _signals.OrderBy(pair => pair.Key, StringComparer.Ordinal)) signal.Carry(checkpoint);
    }

    /// <summary>The columns that the plan's channels name.</summary>
    public static IReadOnlyList<string> ChannelColumns(Plan plan) =>
        [.. plan.Axes.Values.SelectMany(axis => Channels(axis.Channels)).SelectMany(channel => new[] { channel.Column, channel.Second?.Column })
            .OfType<string>().Distinct(StringComparer.Ordinal)];

    private static IEnumerable<ChannelPlan> Channels(ChannelsPlan channels) =>
        new[] { channels.Position, channels.Velocity, channels.Acceleration, channels.Torque, channels.Temperature }.OfType<ChannelPlan>();
}
