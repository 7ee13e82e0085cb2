using MonitorSim.Plans;
using ScottPlot;

namespace MonitorSim.Plots;

/// <summary>A replay as pictures: one an axis, with a panel for each recorded quantity, limits where they were watched, trips, and the state as a band.</summary>
public static class ReplayPlot
{
    internal const int PanelHeight = 300;

    /// <summary>Saves a PNG and an SVG for every axis.</summary>
    /// <param name="result">The replay.</param>
    /// <param name="trace">Its recording.</param>
    /// <param name="folder">Where the pictures go; made if it is not there.</param>
    /// <param name="cancel">Stops between two pictures.</param>
    /// <returns>The paths written.</returns>
    /// <exception cref="IOException">The folder cannot be written to.</exception>
    public static IReadOnlyList<string> Save(ReplayResult result, Trace trace, string folder, CancellationToken cancel = default)
    {
        Directory.CreateDirectory(folder);
        var files = new List<string>();
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var (name, axis) in result.Plan.Axes)
        {
            cancel.ThrowIfCancellationRequested();
            var stem = Path.Combine(folder, MonitorSim.FileName.Free(MonitorSim.FileName.Of(name), taken));
            var (picture, height) = Picture(result, trace, name, axis);
            files.AddRange(Pictures.Write(picture, stem, height));
        }

        return files;
    }

    /// <summary>The file name of an axis among those of its plan.</summary>
    internal static string FileName(Plan plan, string axis)
    {
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        return plan.Axes.Keys.Select(name => (Name: name, File: MonitorSim.FileName.Free(MonitorSim.FileName.Of(name), taken))).First(known => known.Name == axis).File;
    }

    /// <summary>The picture of one axis as SVG, for pages that carry their pictures in themselves.</summary>
    /// <param name="result">The replay.</param>
    /// <param name="trace">Its recording.</param>
    /// <param name="axis">The axis's name.</param>
    /// <exception cref="KeyNotFoundException">The plan has no such axis.</exception>
    public static string Svg(ReplayResult result, Trace trace, string axis)
    {
        ArgumentNullException.ThrowIfNull(result);
        var (picture, height) = Picture(result, trace, axis, result.Plan.Axes[axis]);
        return Pictures.Svg(picture, height);
    }

    private static (Multiplot Picture, int Height) Picture(ReplayResult result, Trace trace, string name, AxisPlan axis)
    {
        var panels = AxisPanels.Of(result, trace, name, axis);
        var picture = new Multiplot();
        picture.RemovePlot(picture.GetPlot(0));
        foreach (var panel in panels) picture.AddPlot(panel);
        picture.CollapseVertically();
        picture.SharedAxes.ShareX(panels);
        picture.Layout = new BandLayout();
        return (picture, 120 + PanelHeight * (panels.Count - 1) + 60);
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
