using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using ScottPlot;
using SkiaSharp;

namespace MonitorSim.Plots;

/// <summary>Panels as PNG and SVG: of equal height above each other with one axis of time, or as a layout places them.</summary>
internal static partial class Pictures
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

    /// <summary>Writes a PNG and an SVG, each aside and renamed when it is whole, so that nobody finds half a picture.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="stem">The path without its extension; its folder is made if it is not there.</param>
    /// <param name="height">Pixels.</param>
    /// <returns>The paths written.</returns>
    public static IReadOnlyList<string> Write(Multiplot picture, string stem, int height)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(stem) is { Length: > 0 } folder ? folder : ".");
        var (png, svg) = (stem + ".png", stem + ".svg");
        Aside(png, part => Invariantly(() => picture.SavePng(part, Width, height)));
        Aside(svg, part => File.WriteAllText(part, Svg(picture, height)));
        return [png, svg];
    }

    /// <summary>A picture as SVG: the same picture is the same bytes.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="height">Pixels.</param>
    public static string Svg(Multiplot picture, int height)
    {
        using var stream = new MemoryStream();
        using (var canvas = SKSvgCanvas.Create(new SKRect(0, 0, Width, height), stream)) Invariantly(() => picture.Render(canvas, new PixelRect(0, Width, height, 0)));

        // The canvas numbers its clips through the life of the process.
        var numbers = new Dictionary<string, int>(StringComparer.Ordinal);
        return ClipId().Replace(Encoding.UTF8.GetString(stream.ToArray()), match =>
        {
            if (!numbers.TryGetValue(match.Value, out var number)) numbers[match.Value] = number = numbers.Count;
            return FormattableString.Invariant($"cl_{number}");
        });
    }

    private static void Aside(string path, Action<string> write)
    {
        var part = path + ".part";
        try
        {
            write(part);
            File.Move(part, path, overwrite: true);
        }
        finally
        {
            File.Delete(part);
        }
    }

    /// <summary>Numbers beside an axis are written when it is drawn, in the culture of the thread.</summary>
    private static void Invariantly(Action draw)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        try
        {
            draw();
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [GeneratedRegex(@"(?<=id=""|url\(#)cl_[0-9a-f]+")]
    private static partial Regex ClipId();
}
