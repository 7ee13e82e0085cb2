using MonitorSim.Plans;
using ScottPlot;
using SkiaSharp;

namespace MonitorSim.Plots;

/// <summary>A replay as pictures: one an axis, with a panel for each recorded quantity, limits where they were watched, trips, and the state as a band.</summary>
public static class ReplayPlot
{
    private const int Width = 1200;
    private const int PanelHeight = 300;

    /// <summary>Saves a PNG and an SVG for every axis.</summary>
    /// <param name="result">The replay.</param>
    /// <param name="trace">Its recording.</param>
    /// <param name="folder">Where the pictures go; made if it is not there.</param>
    /// <returns>The paths written.</returns>
    /// <exception cref="IOException">The folder cannot be written to.</exception>
    public static IReadOnlyList<string> Save(ReplayResult result, Trace trace, string folder)
    {
        Directory.CreateDirectory(folder);
        var files = new List<string>();
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var (name, axis) in result.Plan.Axes)
        {
            var panels = AxisPanels.Of(result, trace, name, axis);
            var picture = new Multiplot();
            picture.RemovePlot(picture.GetPlot(0));
            foreach (var panel in panels) picture.AddPlot(panel);
            picture.CollapseVertically();
            picture.SharedAxes.ShareX(panels);
            var (stem, height) = (Path.Combine(folder, FreeName(name, taken)), 120 + PanelHeight * (panels.Count - 1) + 60);
            picture.Layout = new BandLayout();
            picture.SavePng(stem + ".png", Width, height);
            SaveSvg(picture, stem + ".svg", height);
            files.AddRange([stem + ".png", stem + ".svg"]);
        }

        return files;
    }

    /// <summary>The file name of an axis among those of its plan.</summary>
    internal static string FileName(Plan plan, string axis)
    {
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        return plan.Axes.Keys.Select(name => (Name: name, File: FreeName(name, taken))).First(known => known.Name == axis).File;
    }

    /// <summary>An axis's name as a file name that stays in its folder.</summary>
    internal static string SafeName(string name)
    {
        var safe = string.Concat(name.Select(letter => char.IsLetterOrDigit(letter) || letter is '-' or '_' ? letter : '_'));
        return safe.Length == 0 ? "_" : safe;
    }

    /// <summary>A safe name that no earlier axis has: "a b" and "a_b" must not overwrite each other, nor "X" and "x" where case does not count.</summary>
    internal static string FreeName(string name, ISet<string> taken)
    {
        var safe = SafeName(name);
        var free = safe;
        for (var k = 2; !taken.Add(free); k++) free = FormattableString.Invariant($"{safe}-{k}");
        return free;
    }

    private static void SaveSvg(Multiplot picture, string path, int height)
    {
        using var stream = File.Create(path);
        using var canvas = SKSvgCanvas.Create(new SKRect(0, 0, Width, height), stream);
        picture.Render(canvas, new PixelRect(0, Width, height, 0));
    }

    /// <summary>Panels of equal height above a narrow band for the state.</summary>
    private sealed class BandLayout : IMultiplotLayout
    {
        public PixelRect[] GetSubplotRectangles(SubplotCollection subplots, PixelRect figure)
        {
            var count = subplots.Count;
            var band = count == 1 ? figure.Height : 130f;
            var panel = count == 1 ? 0 : (figure.Height - band) / (count - 1);
            return [.. Enumerable.Range(0, count).Select(k => new PixelRect(figure.Left, figure.Right,
                figure.Top + (k < count - 1 ? (k + 1) * panel : figure.Height), figure.Top + k * panel))];
        }
    }
}
