using System.Globalization;
using MonitorSim.Synthesis;
using MonitorSim.Traces;

namespace MonitorSim.Demo;

/// <summary>Columns recorded together: the motion and signals of some axes, each a profile, and what no profile has (torque, temperature, a second encoder).</summary>
public sealed class Recording
{
    private readonly long[] _times;
    private readonly List<Column> _columns = [];

    private Recording(ReadOnlySpan<long> times) => _times = times.ToArray();

    /// <summary>Begins with an axis: columns <c>bridge position</c> and <c>bridge speed</c>, and its signals by their own names.</summary>
    public static Recording Of(string axis, Profile profile)
    {
        var trace = profile.ToTrace(axis);
        return new Recording(trace.Times).Take(axis, trace);
    }

    /// <summary>Another axis of the same rate and length.</summary>
    public Recording With(string axis, Profile profile)
    {
        var trace = profile.ToTrace(axis);
        return trace.Times.SequenceEqual(_times) ? Take(axis, trace)
            : throw new InvalidOperationException($"{axis} has {trace.Count} samples, the recording {_times.Length}: make them equally long");
    }

    /// <summary>A quantity of its own course.</summary>
    /// <param name="name">The column.</param>
    /// <param name="unit">Its unit.</param>
    /// <param name="course">Its value over time, in the unit.</param>
    /// <param name="noise">Standard deviation, in the unit.</param>
    /// <param name="seed">Which noise.</param>
    /// <param name="decimals">How many it is recorded with.</param>
    public Recording With(string name, string unit, Course course, decimal noise, int seed, int decimals = 2) =>
        Add(name, unit, k => course.At(Seconds(k)), noise, seed, decimals);

    /// <summary>A second recording of a column, off by a course of its own.</summary>
    public Recording Beside(string column, string name, Course offset, decimal noise, int seed, int decimals = 3)
    {
        var first = Find(column);
        return Add(name, first.Unit!, k => (decimal)first.Values[k] + offset.At(Seconds(k)), noise, seed, decimals);
    }

    /// <summary>Writes a position the way an encoder of one turn does: from 0 to below the turn, again and again.</summary>
    public Recording Wrapped(string column, decimal turn)
    {
        var first = Find(column);
        var wrapped = first.Values.ToArray().Select(value => Nearest((((decimal)value % turn) + turn) % turn)).ToArray();
        _columns[_columns.IndexOf(first)] = new NumberColumn(column, first.Unit, wrapped);
        return this;
    }

    /// <summary>The whole.</summary>
    public Trace ToTrace(string name) => new(name, [.. _times], [.. _columns]);

    private Recording Take(string axis, Trace trace)
    {
        _columns.Add(Named(axis + " position", (NumberColumn)trace.Columns[0]));
        _columns.Add(Named(axis + " speed", (NumberColumn)trace.Columns[1]));
        _columns.AddRange(trace.Columns.Skip(2));
        return this;
    }

    private Recording Add(string name, string unit, Func<int, decimal> value, decimal noise, int seed, int decimals)
    {
        var spread = Deviates(seed, _times.Length);
        _columns.Add(new NumberColumn(name, unit,
            [.. Enumerable.Range(0, _times.Length).Select(k => Nearest(Math.Round(value(k) + noise * (decimal)spread[k], decimals, MidpointRounding.AwayFromZero)))]));
        return this;
    }

    private NumberColumn Find(string column) => _columns.OfType<NumberColumn>().Single(c => c.Name == column);

    private decimal Seconds(int sample) => _times[sample] / 1_000_000_000m;

    private static NumberColumn Named(string name, NumberColumn column) => new(name, column.Unit, column.Values.ToArray());

    // The library's one noise, borrowed from a profile that stands still.
    private static double[] Deviates(int seed, int count) =>
        ((NumberColumn)Profile.At("1 Hz").Noise("1 m", seed).Hold(string.Create(CultureInfo.InvariantCulture, $"{count} s")).ToTrace("noise").Columns[0]).Values.ToArray();

    private static double Nearest(decimal value) => double.Parse(value.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
