using MonitorSim.Explain;
using MonitorSim.Motion.Envelopes;
using ScottPlot;

namespace MonitorSim.Plots;

/// <summary>An envelope as a picture: over the recording, its speed, and how far, how fast and how long a fault at each moment would have taken the axis.</summary>
public static class EnvelopePlot
{
    /// <summary>Saves a PNG and an SVG, named after the axis.</summary>
    /// <param name="plan">The plan, for the units.</param>
    /// <param name="trace">The recording.</param>
    /// <param name="envelope">The envelope.</param>
    /// <param name="folder">Where the pictures go; made if it is not there.</param>
    /// <returns>The paths written.</returns>
    /// <exception cref="IOException">The folder cannot be written to.</exception>
    public static IReadOnlyList<string> Save(Plan plan, Trace trace, EnvelopeResult envelope, string folder)
    {
        var units = new MotionUnits(plan.Axes[envelope.Axis]);
        var panels = new List<Plot>
        {
            Panel(envelope, "speed", units.Speed.Symbol, point => units.Speed.FromSi(point.Velocity), onlyFound: false),
            Panel(envelope, "distance", units.Position.Symbol, point => units.Position.FromSi(point.Distance)),
            Panel(envelope, "peak speed", units.Speed.Symbol, point => units.Speed.FromSi(point.PeakSpeed)),
            Panel(envelope, "standstill after", "ms", point => point.Time * 1000 ?? double.NaN),
        };
        if (envelope.Points.Any(point => point.Drop > 0)) panels.Insert(2, Panel(envelope, "drop", units.Position.Symbol, point => point.Drop is { } drop ? units.Position.FromSi(drop) : double.NaN));
        panels[0].Axes.Title.Label.Text = $"{envelope.Axis} — {trace.Name}: a fault at every moment";
        panels[^1].Axes.Bottom.Label.Text = envelope.Undetected + envelope.NotStopped > 0
            ? "time of the fault [s]   (shaded: not found by any limit, or not stopped; diamond: worst distance)" : "time of the fault [s]   (diamond: worst distance)";
        var (first, last) = ((double)envelope.Points[0].At, (double)envelope.Points[^1].At);
        foreach (var panel in panels)
        {
            Open(panel, envelope);
            panel.Axes.SetLimitsX(first - 0.01 * (last - first), last + 0.01 * (last - first));
        }

        return Pictures.Save(panels, Path.Combine(folder, ReplayPlot.FileName(plan, envelope.Axis) + "-envelope"), 230);
    }

    private static Plot Panel(EnvelopeResult envelope, string name, string unit, Func<EnvelopePoint, double> value, bool onlyFound = true)
    {
        var plot = new Plot();
        plot.Axes.Left.Label.Text = $"{name} [{unit}]";
        plot.Axes.Left.MinimumSize = plot.Axes.Left.MaximumSize = 90;
        var times = envelope.Points.Select(point => (double)point.At).ToArray();
        var values = envelope.Points.Select(point => !onlyFound || !IsOpen(point) ? value(point) : double.NaN).ToArray();
        var series = new Series(name, Quantities.Unit.Parse("s"), times, values).Thinned();
        var line = plot.Add.ScatterLine(series.Times, series.Values);
        (line.Color, line.LineWidth) = (Palette.Measured, 1.5f);
        if (envelope.Worst.FirstOrDefault() is { Point: { } worst } && double.IsFinite(value(worst)))
            plot.Add.Marker((double)worst.At, value(worst), MarkerShape.FilledDiamond, 11, Palette.Trip);
        if (onlyFound) plot.Axes.AutoScaleY();
        plot.Axes.Margins(0.01, 0.15);
        return plot;
    }

    private static bool IsOpen(EnvelopePoint point) => point.Time is null;

    // Stretches without an answer, as bands.
    private static void Open(Plot plot, EnvelopeResult envelope)
    {
        var points = envelope.Points;
        for (var k = 0; k < points.Count; k++)
        {
            if (!IsOpen(points[k])) continue;
            var from = k;
            while (k + 1 < points.Count && IsOpen(points[k + 1])) k++;
            plot.Add.HorizontalSpan((double)points[from].At, (double)points[Math.Min(k + 1, points.Count - 1)].At, Palette.Limit.WithAlpha(0.18));
        }
    }
}
