using System.Globalization;
using ScottPlot;

namespace MonitorSim.Plots;

/// <summary>What each recording needs at the present filter, in the order of their names, and the bound for the next one.</summary>
internal static class RunsPanel
{
    public static Plot Of(LimitFrame frame)
    {
        var (limit, plot) = (frame.Limit, frame.Panel(60));
        var runs = limit.Runs;
        plot.Axes.Title.Label.Text = "each run";
        plot.Axes.SetLimitsX(0, runs.Count + 1);
        plot.Axes.Bottom.Label.Text = limit.Bounds.Normal is null ? "run" : "run   (dotted: normal bound)";
        plot.Axes.Bottom.TickGenerator = new ScottPlot.TickGenerators.NumericAutomatic { IntegerTicksOnly = true };
        LimitLine.Straight(plot, 0, frame.Present, runs.Count + 1, frame.Present, dashes: 20);
        if (limit.Bounds.Normal is { } normal) LimitLine.Dotted(plot, 0, frame.Unit.FromSi(normal), runs.Count + 1, frame.Unit.FromSi(normal), Palette.Measured, 40);
        var deciding = limit.Deciding?.Trace;
        for (var k = 0; k < runs.Count; k++)
        {
            if (runs[k].Critical is not { } critical) continue;
            plot.Add.Marker(k + 1, frame.Unit.FromSi(critical), MarkerShape.FilledCircle, runs[k].Trace == deciding ? 10 : 6, Palette.Measured);
        }

        frame.Say(plot, Alignment.UpperRight, Alignment.LowerRight, Words(frame), 12);
        return plot;
    }

    private static IEnumerable<string> Words(LimitFrame frame)
    {
        var (bounds, text) = (frame.Limit.Bounds, frame.Text);
        var count = frame.Limit.Runs.Count(run => run.Critical is not null);
        yield return string.Create(CultureInfo.InvariantCulture, $"{bounds.Coverage * 100:0.##} % of future runs stay within");
        yield return string.Create(CultureInfo.InvariantCulture, $"the {(frame.Limit.IsLower ? "least" : "largest")} of these {count}: {Math.Floor(bounds.Reached * 1000) / 10:0.#} % sure");
        if (bounds.Normal is { } normal) yield return string.Create(CultureInfo.InvariantCulture, $"{text.Enough(normal)}: {bounds.Confidence * 100:0.##} % sure, if normal");
    }
}
