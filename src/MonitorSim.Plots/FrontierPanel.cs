using MonitorSim.Explain;
using MonitorSim.Tuning;
using ScottPlot;

namespace MonitorSim.Plots;

/// <summary>The frontier of a limit over all recordings: which limit trips at which filter, and where the present one stands.</summary>
internal static class FrontierPanel
{
    // More single staircases than this are a carpet, not lines.
    private const int MostRuns = 60;

    public static Plot Of(LimitFrame frame, string title)
    {
        var (limit, plot) = (frame.Limit, frame.Panel());
        plot.Axes.Title.Label.Text = title;
        plot.Axes.Left.Label.Text = $"limit [{frame.Unit.Symbol}]";
        plot.Axes.Bottom.Label.Text = $"filter [{(frame.Scale.IsInMilliseconds ? "ms" : "s")}]   (shaded: trips, dashed: present limit, dotted: present filter)";
        frame.Stairs.Shade(plot, limit.Frontier);
        if (limit.Runs.Count is > 1 and <= MostRuns)
            foreach (var run in limit.Runs) frame.Stairs.Draw(plot, run.Frontier, Palette.Measured.WithAlpha(0.35), 1);
        frame.Stairs.Draw(plot, limit.Frontier, Palette.Measured, 2.5f);
        if (limit.Critical is { } critical) plot.Add.Marker(frame.Scale.At(limit.Filter), frame.Unit.FromSi(critical), MarkerShape.FilledCircle, 10, Palette.Measured);
        if (Trips(limit) && limit.FilterAbove is { } above) plot.Add.Marker(frame.Scale.At(above), frame.Present, MarkerShape.FilledSquare, 9, Palette.Limit);
        frame.ShowPresent(plot, ticks: 0.05, dashes: 40, size: 12);
        frame.Say(plot, Alignment.UpperRight, Alignment.LowerRight, Words(frame));
        return plot;
    }

    private static IEnumerable<string> Words(LimitFrame frame)
    {
        var (limit, text) = (frame.Limit, frame.Text);
        yield return $"diamond: now, {limit.Written} at {Time(frame, limit.Filter)} {(Trips(limit) ? "TRIPS" : "does not trip")}";
        if (limit.Deciding is { } step) yield return $"circle: needed at this filter, {text.Enough(limit.Critical)} ({Path.GetFileName(step.Trace)})";
        else yield return "nothing was compared for so long: this proves nothing";
        if (Trips(limit) && limit.FilterAbove is { } above) yield return $"square: any filter longer than {Time(frame, above)} would keep {limit.Written}";
    }

    private static bool Trips(TunedLimit limit) => limit.Critical is { } critical && (limit.IsLower ? limit.Limit > critical : limit.Limit < critical);

    private static string Time(LimitFrame frame, decimal seconds) => Quantities.Unit.Parse(frame.Scale.IsInMilliseconds ? "ms" : "s").Format((double)seconds, 9);
}
