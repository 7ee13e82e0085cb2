using MonitorSim.Motion;
using MonitorSim.Plans;
using MonitorSim.Quantities;
using ScottPlot;

namespace MonitorSim.Plots;

/// <summary>A quantity of an axis that left its recording: recorded up to there, simulated from there on.</summary>
internal static class SimulatedSeries
{
    /// <summary>The quantity as the monitors met it.</summary>
    /// <param name="recorded">As recorded.</param>
    /// <param name="kind">Which quantity.</param>
    /// <param name="motion">The simulated motion, or null.</param>
    /// <param name="modulo">The turn of the axis, or null.</param>
    public static Series Over(Series recorded, Kind kind, SimulatedMotion? motion, Quantity? modulo)
    {
        if (motion is null || kind == Kind.Temperature) return recorded;
        var values = recorded.Values.ToArray();
        foreach (var state in motion.States)
        {
            if (Array.BinarySearch(recorded.Times, state.Time) is >= 0 and var k) values[k] = recorded.Unit.FromSi(Quantity(state, kind, modulo?.Si));
        }

        return recorded with { Values = values };
    }

    /// <summary>Draws it: what was recorded, what is simulated, and faintly how the recording goes on.</summary>
    public static void Draw(Plot plot, Series recorded, Series met, SimulatedMotion? motion)
    {
        var left = motion is null || recorded == met ? recorded.Times.Length : Array.FindIndex(recorded.Times, time => time > (double)motion.From);
        if (left < 0) left = recorded.Times.Length;
        var before = Math.Max(0, left - 1);
        Line(plot, Part(recorded, before, recorded.Times.Length), Palette.Recorded, 1, LinePattern.Dotted, left < recorded.Times.Length);
        Line(plot, Part(recorded, 0, left), Palette.Measured, 1.5f, LinePattern.Solid, left > 0);
        Line(plot, Part(met, before, met.Times.Length), Palette.Simulated, 2, LinePattern.Solid, left < recorded.Times.Length);
    }

    private static double Quantity(in MotionState state, Kind kind, double? modulo) => kind switch
    {
        Kind.Position => modulo is { } turn ? state.Position - Math.Floor(state.Position / turn) * turn : state.Position,
        Kind.Velocity => state.Velocity,
        Kind.Acceleration => state.Acceleration,
        _ => state.Torque,
    };

    private static Series Part(Series series, int from, int until) => series with { Times = series.Times[from..until], Values = series.Values[from..until] };

    private static void Line(Plot plot, Series series, Color color, float width, LinePattern pattern, bool isThere)
    {
        if (!isThere) return;
        var thinned = series.Thinned();
        var line = plot.Add.ScatterLine(thinned.Times, thinned.Values);
        (line.Color, line.LineWidth, line.LinePattern) = (color, width, pattern);
    }
}
