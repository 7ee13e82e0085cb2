using ScottPlot;
using SkiaSharp;

namespace MonitorSim.Plots;

/// <summary>Panels as PNG and SVG: of equal height above each other with one axis of time, or as a layout places them.</summary>
internal static class Pictures
{
    private const int Width = 1200;

    /// <summary>Saves the panels.</summary>
    /// <param name="panels">From top to bottom.</param>
    /// <param name="stem">The path without its extension.</param>
    /// <param name="panelHeight">Pixels.</param>
    public static IReadOnlyList<string> Save(IReadOnlyList<Plot> panels, string stem, int panelHeight)
    {
        var picture = new Multiplot();
        picture.RemovePlot(picture.GetPlot(0));
        foreach (var panel in panels) picture.AddPlot(panel);
        picture.CollapseVertically();
        picture.SharedAxes.ShareX(panels);
        return Write(picture, stem, panels.Count * panelHeight + 60);
    }

    /// <summary>Saves panels that stand where a layout puts them.</summary>
    /// <param name="panels">In the layout's order.</param>
    /// <param name="layout">Places them.</param>
    /// <param name="stem">The path without its extension.</param>
    /// <param name="height">Pixels.</param>
    public static IReadOnlyList<string> Save(IReadOnlyList<Plot> panels, IMultiplotLayout layout, string stem, int height)
    {
        var picture = new Multiplot { Layout = layout };
        picture.RemovePlot(picture.GetPlot(0));
        foreach (var panel in panels) picture.AddPlot(panel);
        return Write(picture, stem, height);
    }

    private static IReadOnlyList<string> Write(Multiplot picture, string stem, int height)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(stem) is { Length: > 0 } folder ? folder : ".");
        picture.SavePng(stem + ".png", Width, height);
        using var stream = File.Create(stem + ".svg");
        using var canvas = SKSvgCanvas.Create(new SKRect(0, 0, Width, height), stream);
        picture.Render(canvas, new PixelRect(0, Width, height, 0));
        return [stem + ".png", stem + ".svg"];
    }
}
