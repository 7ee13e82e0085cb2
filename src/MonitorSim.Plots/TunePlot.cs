using MonitorSim.Explain;
using MonitorSim.Tuning;
using ScottPlot;

namespace MonitorSim.Plots;

/// <summary>A tuning result as pictures: of each limit that was challenged its frontier with the present limit and filter, what each run needs, and its room as a bar; and the
/// frontier of each run as small multiples, where these were kept.</summary>
public static class TunePlot
{
    private const int Height = 520;
    private const int BarHeight = 170;

    /// <summary>Saves a PNG and an SVG for every limit that has a frontier, and as many for its runs.</summary>
    /// <param name="result">The result.</param>
    /// <param name="folder">Where the pictures go; made if it is not there.</param>
    /// <param name="cancel">Stops between two pictures.</param>
    /// <returns>The paths written.</returns>
    /// <exception cref="IOException">The folder cannot be written to.</exception>
    public static IReadOnlyList<string> Save(TuneResult result, string folder, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(result);
        Directory.CreateDirectory(folder);
        var files = new List<string>();
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var limit in result.Monitors.Where(limit => limit.Frontier.Count > 0))
        {
            cancel.ThrowIfCancellationRequested();
            var (frame, title) = (new LimitFrame(limit), $"{TunedText.Name(limit)}, {limit.Side}");
            var stem = Path.Combine(folder, FileName.Free(FileName.Of($"{limit.Axis}-{limit.Monitor}-{limit.Side}{(limit.Level is { } level ? FormattableString.Invariant($"-{level}") : "")}"), taken));
            var hasRoom = limit.Room.DecidedBy is not null;
            List<Plot> panels = [FrontierPanel.Of(frame, $"{result.Plan.Title} — {title}"), RunsPanel.Of(frame)];
            if (hasRoom) panels.Add(RoomPanel.Of(frame));
            files.AddRange(Pictures.Save(panels, new FrontierLayout(), stem, hasRoom ? Height + BarHeight : Height));
            files.AddRange(RunMultiples.Save(limit, title, stem + "-runs"));
        }

        return files;
    }

    /// <summary>The frontier with the runs to its right, and the room's bar below if it is there.</summary>
    private sealed class FrontierLayout : IMultiplotLayout
    {
        public PixelRect[] GetSubplotRectangles(SubplotCollection subplots, PixelRect figure)
        {
            var bottom = subplots.Count > 2 ? figure.Top + figure.Height - BarHeight : figure.Top + figure.Height;
            var middle = figure.Left + 0.7f * figure.Width;
            PixelRect[] all = [new(figure.Left, middle, bottom, figure.Top), new(middle, figure.Right, bottom, figure.Top), new(figure.Left, figure.Right, figure.Top + figure.Height, bottom)];
            return all[..subplots.Count];
        }
    }
}
