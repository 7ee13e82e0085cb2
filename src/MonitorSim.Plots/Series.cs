using MonitorSim.Plans;
using MonitorSim.Quantities;
using MonitorSim.Traces;

namespace MonitorSim.Plots;

/// <summary>One quantity over time in the unit of its channel, thinned to the least and the largest of each column of pixels.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Unit">The unit shown.</param>
/// <param name="Times">s.</param>
/// <param name="Values">In the unit.</param>
internal sealed record Series(string Name, Unit Unit, double[] Times, double[] Values)
{
    private const int Columns = 2000;

    public static Series? Of(AxisPlan axis, Kind kind, ChannelPlan? channel, Trace trace)
    {
        if (channel?.Column is not { } column || trace.Find(column) is not NumberColumn numbers) return null;
        var stated = numbers.Unit is { } text && Quantities.Unit.TryParse(text, out var known, out _) ? known : null;
        var scale = ChannelScale.Of(axis, kind, channel, stated);
        var shown = channel.Unit ?? stated!;
        if (shown.Dimension != scale.Dimension) shown = SiUnit(scale.Dimension);
        var (factor, offset) = (((scale.Factor) / shown.Factor).ToDouble(), ((scale.Offset - shown.Offset) / shown.Factor).ToDouble());
        return Thin(kind.ToString().ToLowerInvariant(), shown, trace.Times, numbers.Values, factor, offset);
    }

    /// <summary>A speed that was not recorded, as the plain difference of neighbouring positions.</summary>
    public static Series? Derived(Series? position, string name)
    {
        if (position is null || position.Times.Length < 3 || !Quantities.Unit.TryParse(position.Unit.Symbol + "/s", out var unit, out _)) return null;
        var values = new double[position.Values.Length];
        values[0] = double.NaN;
        for (var k = 1; k < values.Length; k++) values[k] = (position.Values[k] - position.Values[k - 1]) / Math.Max(1e-12, position.Times[k] - position.Times[k - 1]);
        return new(name + " (derived)", unit!, position.Times, values);
    }

    private static Unit SiUnit(Dimension dimension) => new[] { "m", "rad", "m/s", "rad/s", "m/s²", "rad/s²", "N", "N·m", "°C" }
        .Select(symbol => Quantities.Unit.Parse(symbol)).First(unit => unit.Dimension == dimension);

    private static Series Thin(string name, Unit unit, ReadOnlySpan<long> times, ReadOnlySpan<double> raw, double factor, double offset)
    {
        var (x, y) = (new List<double>(), new List<double>());
        var step = Math.Max(1, times.Length / Columns);
        for (var from = 0; from < times.Length; from += step)
        {
            int least = from, most = from, until = Math.Min(from + step, times.Length);
            for (var k = from; k < until; k++)
            {
                if (raw[k] < raw[least]) least = k;
                if (raw[k] > raw[most]) most = k;
            }

            foreach (var k in step == 1 ? [from] : new[] { Math.Min(least, most), Math.Max(least, most) })
            {
                x.Add(times[k] / 1e9);
                y.Add(raw[k] * factor + offset);
            }
        }

        return new(name, unit, [.. x], [.. y]);
    }
}
