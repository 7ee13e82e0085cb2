using MonitorSim.Plans;
using MonitorSim.Quantities;
using MonitorSim.Traces;

namespace MonitorSim.Plots;

/// <summary>One quantity over time in the unit of its channel.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Unit">The unit shown.</param>
/// <param name="Times">s.</param>
/// <param name="Values">In the unit.</param>
internal sealed record Series(string Name, Unit Unit, double[] Times, double[] Values)
{
    private const int Columns = 2000;

    /// <summary>The value at the newest sample up to a time, NaN before the first.</summary>
    public double At(double time)
    {
        var k = Array.BinarySearch(Times, time);
        if (k < 0) k = ~k - 1;
        return k < 0 ? double.NaN : Values[k];
    }

    /// <summary>A difference in SI as one in the unit shown.</summary>
    public double Difference(double si) => (Unit with { Offset = default }).FromSi(si);

    public static Series? Of(AxisPlan axis, Kind kind, ChannelPlan? channel, Trace trace, Unit? asShown = null)
    {
        if (channel?.Column is not { } column || trace.Find(column) is not NumberColumn numbers) return null;
        var stated = numbers.Unit is { } text && Quantities.Unit.TryParse(text, out var known, out _) ? known : null;
        var scale = ChannelScale.Of(axis, kind, channel, stated);
        var shown = asShown ?? channel.Unit ?? stated!;
        if (shown.Dimension != scale.Dimension) shown = SiUnit(scale.Dimension);
        var (factor, offset) = (((scale.Factor) / shown.Factor).ToDouble(), ((scale.Offset - shown.Offset) / shown.Factor).ToDouble());
        return new(kind.ToString().ToLowerInvariant(), shown, [.. trace.Times.ToArray().Select(t => t / 1e9)], [.. numbers.Values.ToArray().Select(raw => raw * factor + offset)]);
    }

    /// <summary>The second recording of a quantity; what it does not say is as with the first. Null without one.</summary>
    public static Series? OfSecond(AxisPlan axis, Kind kind, Trace trace)
    {
        var first = kind switch
        {
            Kind.Position => axis.Channels.Position,
            Kind.Velocity => axis.Channels.Velocity,
            Kind.Acceleration => axis.Channels.Acceleration,
            Kind.Torque => axis.Channels.Torque,
            _ => axis.Channels.Temperature,
        };
        if (first?.Second is not { } second || Of(axis, kind, first, trace) is not { } shown) return null;
        var own = first with { Column = second.Column, Unit = second.Unit ?? first.Unit, Side = second.Side ?? first.Side,
            Scale = second.Scale ?? first.Scale, Invert = second.Invert ?? first.Invert, Offset = second.Offset ?? first.Offset };
        return Of(axis, kind, own, trace, shown.Unit);
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

    /// <summary>The least and the largest of each column of pixels, so that no peak is lost; a missing value hides no other one.</summary>
    public Series Thinned()
    {
        var step = (Times.Length + Columns - 1) / Columns;
        if (step <= 2) return this;
        var (x, y) = (new List<double>(), new List<double>());
        for (var from = 0; from < Times.Length; from += step)
        {
            int least = from, most = from;
            for (var k = from; k < Math.Min(from + step, Times.Length); k++)
            {
                // Comparisons with NaN are false: written so that any number replaces a missing value.
                if (!(Values[k] >= Values[least]) && !double.IsNaN(Values[k])) least = k;
                if (!(Values[k] <= Values[most]) && !double.IsNaN(Values[k])) most = k;
            }

            foreach (var k in new[] { Math.Min(least, most), Math.Max(least, most) })
            {
                x.Add(Times[k]);
                y.Add(Values[k]);
            }
        }

        return this with { Times = [.. x], Values = [.. y] };
    }
}
