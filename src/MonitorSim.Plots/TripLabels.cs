using ScottPlot;

namespace MonitorSim.Plots;

/// <summary>Says beside each trip what tripped, such that no label covers another: each takes the first free row away from its diamond, towards the middle of the panel.
/// Those that find no room keep their diamond, and the panel says how many.</summary>
/// <param name="plot">The panel, with its limits as they will be drawn.</param>
/// <param name="height">Its height, pixels.</param>
internal sealed class TripLabels(Plot plot, double height)
{
    private const double Width = 1090, LetterWidth = 7.6, RowHeight = 21, Gap = 10;

    private readonly List<(double Left, double Right, double Top)> _taken = [];
    private int _unlabelled;

    /// <summary>Draws a label; the place is that of its diamond.</summary>
    public void Add(string words, double time, double value)
    {
        var limits = plot.Axes.GetLimits();
        var x = (time - limits.Left) / (limits.Right - limits.Left) * Width;
        var y = (limits.Top - value) / (limits.Top - limits.Bottom) * height;
        var (isRight, isBelow) = (x < Width * 0.6, y < height / 2);
        var length = words.Length * LetterWidth;
        var left = isRight ? x + Gap : x - Gap - length;
        for (var row = 0; ; row++)
        {
            var top = isBelow ? y + Gap + row * RowHeight : y - Gap - (row + 1) * RowHeight;
            if (top < 0 || top + RowHeight > height)
            {
                _unlabelled++;
                return;
            }

            if (_taken.Exists(other => other.Left < left + length && left < other.Right && Math.Abs(other.Top - top) < RowHeight)) continue;
            _taken.Add((left, left + length, top));
            var text = plot.Add.Text(words, time, value);
            (text.LabelFontSize, text.LabelBold, text.LabelBackgroundColor) = (13, true, Colors.White.WithAlpha(0.85));
            text.LabelAlignment = isBelow ? isRight ? Alignment.UpperLeft : Alignment.UpperRight : isRight ? Alignment.LowerLeft : Alignment.LowerRight;
            (text.OffsetX, text.OffsetY) = (isRight ? (float)Gap : (float)-Gap, (float)((isBelow ? 1 : -1) * (Gap + row * RowHeight)));
            return;
        }
    }

    /// <summary>Says how many trips are drawn without a label, for want of room or because there are too many.</summary>
    /// <param name="undrawn">How many are not even drawn.</param>
    public void Finish(int undrawn)
    {
        var words = string.Join(", ", new[]
        {
            _unlabelled == 0 ? "" : FormattableString.Invariant($"{_unlabelled} more trips without a label"), undrawn == 0 ? "" : FormattableString.Invariant($"{undrawn} later trips not drawn"),
        }.Where(part => part.Length > 0));
        if (words.Length == 0) return;
        var note = plot.Add.Annotation(words, Alignment.LowerRight);
        (note.LabelFontSize, note.LabelBackgroundColor, note.LabelBorderWidth, note.LabelShadowColor) = (12, Colors.White.WithAlpha(0.85), 0, Colors.Transparent);
    }
}
