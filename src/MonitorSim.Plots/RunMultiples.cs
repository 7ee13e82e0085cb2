using System.Globalization;
using MonitorSim.Tuning;
using ScottPlot;

namespace MonitorSim.Plots;

/// <summary>A small frontier for each recording, all to one scale: which run is unlike the others, and where.</summary>
internal static class RunMultiples
{
    private const int Columns = 5;
    private const int Most = 60;
    private const int RowHeight = 190;

    /// <summary>Saves the picture; nothing where the frontiers of single recordings were not kept.</summary>
    public static IReadOnlyList<string> Save(TunedLimit limit, string title, string stem)
    {
        var frame = new LimitFrame(limit, isNear: true);
        // Of very many runs those that need most are looked at.
        var sign = limit.IsLower ? -1 : 1;
        var runs = limit.Runs.Where(run => run.Frontier.Count > 0).OrderByDescending(run => sign * run.Critical ?? double.NegativeInfinity).Take(Most)
            .OrderBy(run => run.Trace, StringComparer.Ordinal).ToList();
        if (runs.Count < 2) return [];
        var panels = new List<Plot>();
        for (var k = 0; k < runs.Count; k++)
        {
            var (run, plot) = (runs[k], frame.Panel(70, ticks: 4));
            plot.Axes.Title.Label.Text = $"{Path.GetFileNameWithoutExtension(run.Trace)}: {(run.Critical is null ? "not that long" : frame.Text.Enough(run.Critical))}";
            (plot.Axes.Title.Label.FontSize, plot.Axes.Title.Label.Bold) = (12, run.Trace == limit.Deciding?.Trace);
            if (k >= runs.Count - Columns) plot.Axes.Bottom.Label.Text = $"filter [{(frame.Scale.IsInMilliseconds ? "ms" : "s")}]";
            plot.Axes.Bottom.MinimumSize = plot.Axes.Bottom.MaximumSize = k >= runs.Count - Columns ? 48 : 28;
            if (k % Columns == 0) plot.Axes.Left.Label.Text = $"[{frame.Unit.Symbol}]";
            frame.Stairs.Shade(plot, run.Frontier);
            frame.Stairs.Draw(plot, limit.Frontier, Colors.Gray.WithAlpha(0.7), 1);
            frame.Stairs.Draw(plot, run.Frontier, Palette.Measured, 2);
            frame.ShowPresent(plot, ticks: 0.2, dashes: 14, size: 7);
            panels.Add(plot);
        }

        var left = limit.Runs.Count - runs.Count;
        var head = $"{title}, run by run{(left > 0 ? string.Create(CultureInfo.InvariantCulture, $" (the {Most} that need most of {limit.Runs.Count})") : "")}"
            + $"   (shaded: trips, gray: all runs together, dotted: present filter, {(frame.ShowsPresent ? "dashed: present limit" : $"present limit {limit.Written}: far outside")})";
        var rows = (runs.Count + Columns - 1) / Columns;
        return Pictures.Save([Heading(head), .. panels], new GridLayout(Columns, rows), stem, GridLayout.Head + rows * RowHeight);
    }

    private static Plot Heading(string text)
    {
        var plot = new Plot();
        plot.HideAxesAndGrid();
        var words = plot.Add.Annotation(text, Alignment.MiddleCenter);
        (words.LabelFontSize, words.LabelBold, words.LabelBackgroundColor, words.LabelBorderColor, words.LabelShadowColor) = (14, true, Colors.Transparent, Colors.Transparent, Colors.Transparent);
        return plot;
    }

    /// <summary>A heading above rows of equal panels.</summary>
    private sealed class GridLayout(int columns, int rows) : IMultiplotLayout
    {
        public const int Head = 40;

        public PixelRect[] GetSubplotRectangles(SubplotCollection subplots, PixelRect figure)
        {
            var (width, height) = (figure.Width / columns, (figure.Height - Head) / rows);
            return [new(figure.Left, figure.Right, figure.Top + Head, figure.Top), .. Enumerable.Range(0, subplots.Count - 1).Select(k =>
            {
                var (left, top) = (figure.Left + k % columns * width, figure.Top + Head + k / columns * height);
                return new PixelRect(left, left + width, top + height, top);
            })];
        }
    }
}
