using Fractions;
using MonitorSim.Channels;
using MonitorSim.Estimators;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Synthesis.Vectors;

using SampleTimes = MonitorSim.Channels.SampleTimes;

/// <summary>Writes the columns of one axis so that its channels, recorded or derived, show what is wanted: the way from columns to channels, inverted.</summary>
/// <remarks>A derived rate is a function of its newest sample that rises or falls evenly, so that its column follows from two trials; what rounding
/// leaves is put right by steps of the grid.</remarks>
internal sealed class AxisDrive
{
    private const int MostCorrections = 200;

    private readonly AxisPlan _plan;
    private readonly SampleTimes _times;
    private readonly Dictionary<Kind, DrivenColumn> _columns = [], _seconds = [];
    private readonly Dictionary<Kind, ChannelScale> _scales = [], _secondScales = [];
    private readonly Dictionary<Kind, Channel> _channels = [];

    /// <param name="name">The axis's name.</param>
    /// <param name="plan">The axis, every unit stated.</param>
    /// <param name="times">The times of the samples so far.</param>
    /// <param name="period">The step of time, ns.</param>
    /// <param name="column">A column by name; the digits that it needs are those of its first user.</param>
    public AxisDrive(string name, AxisPlan plan, SampleTimes times, long period, Func<string, int, DrivenColumn> column)
    {
        (Name, _plan, _times) = (name, plan, times);
        foreach (var (kind, channel) in ChannelChecks.Of(plan))
        {
            if (channel?.Column is not { } raw) continue;
            var landmarks = GridDigits.Landmarks(plan, kind, period).ToList();
            _scales[kind] = ChannelScale.Of(plan, kind, channel);
            _columns[kind] = column(raw, GridDigits.Of(_scales[kind], landmarks));
            if (channel.Second is not { } second) continue;
            _secondScales[kind] = ChannelScale.OfSecond(plan, kind, channel);
            _seconds[kind] = column(second.Column, GridDigits.OfSecond(_secondScales[kind], _scales[kind], _columns[kind].Grid, landmarks));
        }
    }

    public string Name { get; }

    /// <summary>Whether the axis has that quantity, recorded or derived.</summary>
    public bool Has(Kind kind) => ChannelChecks.IsThere(_plan, kind);

    /// <summary>Whether what the channel shows is compared exactly: all but the smoothing estimators.</summary>
    public bool IsExact(Kind kind) => _columns.ContainsKey(kind) || (EstimatorOf(kind).Name == EstimatorName.Difference && IsExact(ChannelChecks.Source(kind)!.Value));

    /// <summary>The recorded quantity that a channel comes from.</summary>
    public Kind Root(Kind kind) => _columns.ContainsKey(kind) ? kind : Root(ChannelChecks.Source(kind)!.Value);

    /// <summary>The first sample at which the channel has a value.</summary>
    public int Order(Kind kind) => _columns.ContainsKey(kind) ? 0 : 1 + Order(ChannelChecks.Source(kind)!.Value);

    /// <summary>How many samples a constant value must last until nothing earlier counts any more.</summary>
    public int Memory(Kind kind)
    {
        if (_columns.ContainsKey(kind)) return 0;
        var estimator = EstimatorOf(kind);
        return Memory(ChannelChecks.Source(kind)!.Value) + (estimator.Name is EstimatorName.LowPass or EstimatorName.AlphaBeta ? 50 : (estimator.Samples ?? 1) + 1);
    }

    /// <summary>Whether a rate is at rest only once its source has been constant for some samples: to lead such a rate to 0 at once would make the source swing.</summary>
    public bool ForgetsByStanding(Kind kind) => !_columns.ContainsKey(kind) && EstimatorOf(kind) is { Name: not (EstimatorName.LowPass or EstimatorName.AlphaBeta) } estimator && (estimator.Samples ?? 1) > 1;

    /// <summary>What the channel shows at a sample that has been written, SI; null where it has no value yet.</summary>
    public Fraction? Value(Kind kind, int sample) => sample < Order(kind) ? null : ChannelOf(kind).Exact(sample);

    /// <summary>The same of a magnitude: where there are two recordings, the larger one counts.</summary>
    public Fraction? Magnitude(Kind kind, int sample)
    {
        var first = Value(kind, sample)?.Abs();
        if (first is null || !_seconds.TryGetValue(kind, out var column)) return first;
        var second = _secondScales[kind].ToSi(column[sample]).Abs();
        return second > first ? second : first;
    }

    /// <summary>What a recorded channel shows where this is wanted of it.</summary>
    public Fraction Snap(Kind kind, Target target) => _scales[kind].ToSi(Direct(_columns[kind], _scales[kind], target));

    /// <summary>Writes a sample.</summary>
    /// <param name="sample">The sample, the next to be written.</param>
    /// <param name="targets">What channels are to show. Of several with one root one is heeded.</param>
    /// <param name="seconds">What second recordings are to show; else the same as the first.</param>
    /// <param name="start">What channels show from the beginning, where nothing is wanted of them.</param>
    public void Write(int sample, IReadOnlyDictionary<Kind, Target> targets, IReadOnlyDictionary<Kind, SecondTarget> seconds, IReadOnlyDictionary<Kind, Fraction> start)
    {
        foreach (var (root, column) in _columns)
        {
            // A column that two channels share is the first one's.
            if (column.Count > sample) continue;
            var wanted = targets.Where(target => Has(target.Key) && Root(target.Key) == root).Select(target => (KeyValuePair<Kind, Target>?)target).FirstOrDefault();
            if (wanted is { } driven) Drive(root, column, sample, driven.Key, driven.Value, start);
            else column.Set(sample, sample > 0 ? column[sample - 1] : At(root, column, new(StartOf(start, root))));
        }

        foreach (var (kind, column) in _seconds)
        {
            if (column.Count > sample) continue;
            var scale = _secondScales[kind];
            var first = Value(kind, sample)!.Value;
            column.Set(sample, Direct(column, scale, seconds.TryGetValue(kind, out var wanted) ? wanted.From(first) : SecondTarget.Following(kind, first)));
        }
    }

    private void Drive(Kind root, DrivenColumn column, int sample, Kind kind, Target target, IReadOnlyDictionary<Kind, Fraction> start)
    {
        // Before the rate exists, what it is derived from stands or goes evenly.
        while (sample < Order(kind))
        {
            kind = ChannelChecks.Source(kind)!.Value;
            target = new(StartOf(start, kind));
        }

        if (kind == root)
        {
            column.Set(sample, At(root, column, target));
            return;
        }

        var origin = column[sample - 1];
        Fraction Shown(Fraction raw)
        {
            Put(column, sample, raw);
            return Value(kind, sample)!.Value;
        }

        var atOrigin = Shown(origin);
        var slope = Shown(origin + Fraction.One) - atOrigin;
        if (slope == Fraction.Zero) throw new VectorException($"the {Choice.Name(kind)} of '{Name}' does not depend on its newest sample");
        var wanted = origin + (target.Value - atOrigin) / slope;

        // Towards the first step on the wanted side: from the far side, so that the first that is allowed is it.
        var into = (target.IsFromBelow ? 1 : -1) * (slope > Fraction.Zero ? 1 : -1);
        var raw = column.Snap(wanted, target.Step == Step.Nearest ? 0 : into);
        if (target.Step != Step.Nearest)
        {
            var tries = 0;
            while (target.Allows(Shown(raw - into * column.Grid)) && tries++ < MostCorrections) raw -= into * column.Grid;
            while (!target.Allows(Shown(raw)) && tries++ < MostCorrections) raw += into * column.Grid;
        }

        Put(column, sample, raw);
    }

    /// <summary>Writes a sample in place of a trial: estimators forget what they made of that.</summary>
    private void Put(DrivenColumn column, int sample, Fraction raw)
    {
        column.Set(sample, raw);
        foreach (var channel in _channels.Values) (channel as SmoothedChannel)?.Forget(sample);
    }

    private Fraction At(Kind kind, DrivenColumn column, Target target) => Direct(column, _scales[kind], target);

    private static Fraction Direct(DrivenColumn column, ChannelScale scale, Target target)
    {
        var wanted = (target.Value - scale.Offset) / scale.Factor;
        if (target.Step == Step.Nearest) return column.Snap(wanted, 0);
        var into = (target.IsFromBelow ? 1 : -1) * (scale.Factor > Fraction.Zero ? 1 : -1);
        var raw = column.Snap(wanted, into);
        return target.Allows(scale.ToSi(raw)) ? raw : raw + into * column.Grid;
    }

    private Channel ChannelOf(Kind kind)
    {
        if (!_channels.TryGetValue(kind, out var channel))
        {
            _channels[kind] = channel = _columns.TryGetValue(kind, out var column)
                ? column.AsChannel(_scales[kind])
                : Estimator.Of(EstimatorOf(kind), ChannelOf(ChannelChecks.Source(kind)!.Value), _times);
        }

        return channel;
    }

    private static Fraction StartOf(IReadOnlyDictionary<Kind, Fraction> start, Kind kind) => start.TryGetValue(kind, out var value) ? value : Fraction.Zero;

    private EstimatorPlan EstimatorOf(Kind kind) => ChannelChecks.Of(_plan).First(channel => channel.Kind == kind).Plan?.Estimator ?? new();
}
