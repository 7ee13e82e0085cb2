using Palette = MonitorSim.Plots.Palette;

namespace MonitorSim.Reports.Page;

/// <summary>The colours of the pictures, for the page: both speak one language.</summary>
internal static class PageColours
{
    public static string Css() => ":root{" + string.Concat(
        Variable("measured", Palette.Measured), Variable("limit", Palette.Limit), Variable("trip", Palette.Trip), Variable("watching", Palette.Watching),
        Variable("arming", Palette.Arming), Variable("holding", Palette.Of(AxisState.Holding)), Variable("stopping", Palette.Of(AxisState.StoppingToOff))) + "}\n";

    private static string Variable(string name, ScottPlot.Color colour) => $"--{name}:{colour.ToHex()};";
}
