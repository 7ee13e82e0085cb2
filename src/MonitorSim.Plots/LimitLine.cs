using ScottPlot;

namespace MonitorSim.Plots;

/// <summary>Limits as dashed lines. Each dash is a line of its own: an SVG canvas knows no pattern for paths and complains on standard error.</summary>
internal static class LimitLine
{
    private const int Dashes = 60;

    /// <summary>A limit that stays, over a part of the recording.</summary>
    public static void Level(Plot plot, Series series, double y, double from, double until)
    {
        // As many dashes as the part's share of the recording, so that their length is the same everywhere and many parts stay cheap.
        var share = (until - from) / Math.Max(series.Times[^1] - series.Times[0], 1e-12);
        var count = Math.Max(1, (int)Math.Ceiling(share * Dashes));
        var step = (until - from) / (count - 0.4);
        for (var k = 0; k < count; k++) Dash(plot, from + k * step, y, Math.Min(until, from + (k + 0.6) * step), y);
    }

    /// <summary>A limit between two places of a picture that has no time.</summary>
    public static void Straight(Plot plot, double x1, double y1, double x2, double y2, int dashes = 40) => Row(plot, x1, y1, x2, y2, dashes, 0.6, Palette.Limit, 2);

    /// <summary>A dotted line for what is no limit.</summary>
    public static void Dotted(Plot plot, double x1, double y1, double x2, double y2, Color color, int dots = 70) => Row(plot, x1, y1, x2, y2, dots, 0.35, color, 1.5f);

    /// <summary>A limit that moves.</summary>
    public static void Moving(Plot plot, double[] times, double[] values)
    {
        var step = Math.Max(1, times.Length / (2 * Dashes));
        for (var k = 0; k + 1 < times.Length; k += 2 * step)
        {
            var end = Math.Min(k + step, times.Length - 1);
            Dash(plot, times[k], values[k], times[end], values[end]);
        }
    }

    private static void Row(Plot plot, double x1, double y1, double x2, double y2, int count, double share, Color color, float width)
    {
        for (var k = 0; k < count; k++)
        {
            var (from, until) = (k / (count - 1 + share), (k + share) / (count - 1 + share));
            Dash(plot, x1 + from * (x2 - x1), y1 + from * (y2 - y1), x1 + until * (x2 - x1), y1 + until * (y2 - y1), color, width);
        }
    }

    private static void Dash(Plot plot, double x1, double y1, double x2, double y2) => Dash(plot, x1, y1, x2, y2, Palette.Limit, 2);

    private static void Dash(Plot plot, double x1, double y1, double x2, double y2, Color color, float width)
    {
        var dash = plot.Add.Line(x1, y1, x2, y2);
        (dash.LineColor, dash.LineWidth) = (color, width);
    }
}
