using ScottPlot;
using SkiaSharp;

namespace MonitorSim.Plots;

/// <summary>Panels of equal height above each other, with one axis of time, as PNG and SVG.</summary>
internal static class Pictures
{
    private const int Width = 1200;

    /// <summary>Saves the panels.</summary>
    /// <param name="panels">From top to bottom.</param>
    /// <param name="stem">The path without its extension.</param>
    /// <param name="panelHeight">Pixels.</param>
    public static IReadOnlyList<string> Save(IReadOnlyList<Plot> panels, string stem, int panelHeight)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(stem) is { Length: > 0 } folder ? folder : ".");
        var picture = new Multiplot();
        picture.RemovePlot(picture.GetPlot(0));
        foreach (var panel in panels) picture.AddPlot(panel);
        picture.CollapseVertically();
        picture.SharedAxes.ShareX(panels);
        var height = panels.Count * panelHeight + 60;
        picture.SavePng(stem + ".png", Width, height);
        using var stream = File.Create(stem + ".svg");
        using var canvas = SKSvgCanvas.Create(new SKRect(0, 0, Width, height), stream);
        picture.Render(canvas, new PixelRect(0, Width, height, 0));
        return [stem + ".png", stem + ".svg"];
    }
}
