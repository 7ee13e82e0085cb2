using MonitorSim.Tuning;
using ScottPlot;

namespace MonitorSim.Plots;

/// <summary>The room of a limit as a bar, from what production needs to what the hazard allows; where they cross, what is missing.</summary>
internal static class RoomPanel
{
    public static Plot Of(LimitFrame frame)
    {
        var (limit, room, plot) = (frame.Limit, frame.Limit.Room, new Plot());
        plot.Axes.Left.Label.Text = "room";
        plot.Axes.Left.MinimumSize = plot.Axes.Left.MaximumSize = 90;
        plot.Axes.Left.TickGenerator = new ScottPlot.TickGenerators.EmptyTickGenerator();
        plot.Axes.Bottom.TickGenerator = new ScottPlot.TickGenerators.NumericAutomatic { TargetTickCount = 12 };
        plot.HideGrid();
        double? Shown(double? si) => si is { } value ? frame.Unit.FromSi(value) : null;
        var (from, to) = (Shown(room.From), Shown(room.To));
        var marks = new[] { from, to, frame.Present }.OfType<double>().ToList();
        var (least, most) = (Math.Min(0, marks.Min()), marks.Max());
        var size = most > least ? most - least : 1;
        var (left, right) = (least, most + 0.12 * size);
        plot.Axes.SetLimits(left, right, 0, 1);

        if (room.IsThere == true) Bar(plot, from!.Value, to!.Value, Palette.Room);
        else if (room.IsThere == false) Bar(plot, to ?? left, from!.Value, Palette.Limit);
        if (from is { } need) LimitLine.Dotted(plot, need, 0, need, 1, Palette.Measured, 16);
        if (to is { } allowed) plot.Add.VerticalLine(allowed, 2, Palette.Limit);
        LimitLine.Straight(plot, frame.Present, 0, frame.Present, 1, dashes: 8);
        plot.Add.Marker(frame.Present, 0.5, MarkerShape.FilledDiamond, 12, Palette.Trip);
        plot.Axes.Bottom.Label.Text = $"limit [{frame.Unit.Symbol}]   (dotted: production needs, solid: the hazard allows, dashed: now)";
        plot.Axes.Title.Label.Text = Verdict(frame);
        plot.Axes.Title.Label.FontSize = 15;
        return plot;
    }

    private static void Bar(Plot plot, double from, double until, Color color)
    {
        var bar = plot.Add.Rectangle(from, until, 0.22, 0.78);
        (bar.FillColor, bar.LineColor, bar.LineWidth) = (color.WithAlpha(0.45), color, 1.5f);
    }

    private static string Verdict(LimitFrame frame)
    {
        var (room, text) = (frame.Limit.Room, frame.Text);
        var ends = $"production needs {text.Enough(room.From)}, the hazard allows {(room.To is null ? "no limit" : text.AtMost(room.To))} ({room.DecidedBy})";
        return room switch
        {
            { IsThere: true } => $"Room of {text.Difference(room.Size!.Value)}: {ends}",
            { IsThere: false, Size: { } missing } => $"NO ROOM, {text.Difference(-missing)} are missing: {ends}",
            { IsThere: false } => $"NO ROOM: {ends}",
            _ => $"Room open: {ends}",
        };
    }
}
