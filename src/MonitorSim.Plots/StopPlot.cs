using MonitorSim.Explain;
using MonitorSim.Motion;
using ScottPlot;

namespace MonitorSim.Plots;

/// <summary>A simulated stop as a picture: position, speed and torque over time from the fault or the demand on, with the moments at which something acted.</summary>
public static class StopPlot
{
    private const int Points = 1500;

    /// <summary>Saves a PNG and an SVG, named after the axis.</summary>
    /// <param name="plan">The plan, for the units.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="stop">The stop.</param>
    /// <param name="heading">What it is, in words.</param>
    /// <param name="folder">Where the pictures go; made if it is not there.</param>
    /// <returns>The paths written.</returns>
    /// <exception cref="IOException">The folder cannot be written to.</exception>
    public static IReadOnlyList<string> Save(Plan plan, string axis, StopResult stop, string heading, string folder)
    {
        var units = new MotionUnits(plan.Axes[axis]);
        var length = Math.Max(stop.Motion.Until - stop.Motion.From, 1e-3);
        // What follows standstill is worth a glance, not most of the picture.
        if (stop.Time is { } stands) length = Math.Min(length, Math.Max(1.25 * Math.Max(stands, stop.OffAt ?? 0), 1e-3));
        var inMilliseconds = length < 2;
        var states = Enumerable.Range(0, Points + 1).Select(k => stop.Motion.At(stop.Motion.From + k * length / Points)).ToArray();
        var times = states.Select(state => state.Time * (inMilliseconds ? 1000 : 1)).ToArray();
        var panels = new[]
        {
            Panel("position", units.Position.Symbol, times, [.. states.Select(state => units.Position.FromSi(state.Position - states[0].Position))]),
            Panel("velocity", units.Speed.Symbol, times, [.. states.Select(state => units.Speed.FromSi(state.Velocity))]),
            Panel("drive", units.Torque.Symbol, times, [.. states.Select(state => units.Torque.FromSi(state.Torque))]),
        };
        panels[0].Axes.Title.Label.Text = $"{axis}: {heading}";
        panels[^1].Axes.Bottom.Label.Text = inMilliseconds ? "time after the fault or the demand [ms]" : "time after the fault or the demand [s]";
        foreach (var panel in panels) Moments(panel, stop, inMilliseconds ? 1000 : 1, length, panel == panels[0]);
        return Pictures.Save(panels, Path.Combine(folder, ReplayPlot.FileName(plan, axis) + "-stop"), 260);
    }

    private static Plot Panel(string name, string unit, double[] times, double[] values)
    {
        var plot = new Plot();
        plot.Axes.Left.Label.Text = $"{name} [{unit}]";
        plot.Axes.Left.MinimumSize = plot.Axes.Left.MaximumSize = 90;
        var line = plot.Add.ScatterLine(times, values);
        (line.Color, line.LineWidth) = (Palette.Measured, 2);
        plot.Axes.Margins(0.02, 0.2);
        return plot;
    }

    private static void Moments(Plot plot, StopResult stop, double scale, double length, bool isLabelled)
    {
        plot.Axes.AutoScaleY();
        plot.Axes.SetLimitsX(-0.02 * length * scale, 1.02 * length * scale);
        var row = 0;
        foreach (var (time, name) in new[]
        {
            (stop.DetectedAt, stop.DetectedBy is { } by ? $"{by.Monitor} trips" : "trip"), (stop.ActedAt == stop.OffAt ? null : stop.ActedAt, "drive acts"),
            (stop.OffAt, "torque off"), (stop.BrakedAt, "brake closed"), (stop.Time, "stands"),
        })
        {
            if (time is not { } at || at > length) continue;
            plot.Add.VerticalLine(at * scale, 1.5f, Palette.Trip, LinePattern.Dotted);
            if (!isLabelled) continue;
            var (bottom, top) = (plot.Axes.GetLimits().Bottom, plot.Axes.GetLimits().Top);
            var left = at < 0.6 * length;
            var text = plot.Add.Text($" {name}: {MotionUnits.Time(at)} ", at * scale, top - (0.06 + 0.13 * row++) * (top - bottom));
            (text.LabelFontSize, text.LabelBold, text.LabelBackgroundColor) = (13, true, Colors.White.WithAlpha(0.85));
            text.LabelAlignment = left ? Alignment.UpperLeft : Alignment.UpperRight;
        }
    }
}
