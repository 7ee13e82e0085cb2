using MonitorSim.Explain;
using MonitorSim.Quantities;
using MonitorSim.Tuning;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace MonitorSim.Plots;

/// <summary>What the pictures of one tuned limit have in common: its unit, the filters shown, and the limits shown.</summary>
internal sealed class LimitFrame
{
    private const float AxisSize = 90;

    /// <param name="limit">The limit.</param>
    /// <param name="isNear">Whether to look at the frontiers from near, even if the present limit is far from them.</param>
    public LimitFrame(TunedLimit limit, bool isNear = false)
    {
        Limit = limit;
        Text = new(limit);
        Unit = Quantity.Parse(limit.Written).Unit;
        Scale = new(limit.Frontier.Select(step => step.Filter).Append(limit.Filter).Append(limit.FilterAbove ?? 0));
        var found = limit.Frontier.Concat(limit.Runs.SelectMany(run => run.Frontier)).Select(step => step.Limit).Concat(limit.Runs.Select(run => run.Critical).OfType<double>()).Select(Unit.FromSi).ToList();
        var (least, most) = (found.Min(), found.Max());
        var isFar = isNear && (Present > most + (most - least) || Present < least - (most - least));
        foreach (var other in isNear ? isFar ? [] : new[] { Present } : [Present, Unit.FromSi(limit.Bounds.Normal ?? limit.Limit)])
            (least, most) = (Math.Min(least, other), Math.Max(most, other));
        var size = most > least ? most - least : Math.Max(Math.Abs(most), 1);
        // Words stand on the side where nothing trips: above, for lower sides below.
        var words = isNear ? 0.1 : 0.5;
        (Bottom, Top) = limit.IsLower ? (least - words * size, most + 0.1 * size) : (least - 0.1 * size, most + words * size);
        Stairs = new(Scale, Unit, limit.IsLower ? Top : Bottom);
    }

    public TunedLimit Limit { get; }

    public TunedText Text { get; }

    public Unit Unit { get; }

    public FilterScale Scale { get; }

    public Staircase Stairs { get; }

    /// <summary>The least limit shown, in the unit.</summary>
    public double Bottom { get; }

    /// <summary>The largest limit shown, in the unit.</summary>
    public double Top { get; }

    /// <summary>The present limit, in the unit.</summary>
    public double Present => Unit.FromSi(Limit.Limit);

    /// <summary>Whether the present limit is in the picture.</summary>
    public bool ShowsPresent => Present >= Bottom && Present <= Top;

    /// <summary>An empty panel whose vertical axis are the limits.</summary>
    /// <param name="left">Pixels for the axis.</param>
    /// <param name="ticks">About how many ticks it has.</param>
    public Plot Panel(float left = AxisSize, int ticks = 9)
    {
        var plot = new Plot();
        plot.Axes.Left.MinimumSize = plot.Axes.Left.MaximumSize = left;
        plot.Axes.Left.TickGenerator = new NumericAutomatic { TargetTickCount = ticks };
        plot.Axes.SetLimitsY(Bottom, Top);
        return plot;
    }

    /// <summary>Makes filters the horizontal axis, and draws where the present filter and limit stand.</summary>
    /// <param name="plot">The panel.</param>
    /// <param name="ticks">The least distance of two ticks, as a share of the axis.</param>
    /// <param name="dashes">How many dashes a line takes.</param>
    /// <param name="size">The size of the mark, in pixels.</param>
    public void ShowPresent(Plot plot, double ticks, int dashes, float size)
    {
        plot.Axes.Bottom.TickGenerator = Scale.Ticks(ticks);
        plot.Axes.SetLimitsX(Scale.Start, Scale.End);
        LimitLine.Dotted(plot, Scale.At(Limit.Filter), Bottom, Scale.At(Limit.Filter), Top, Palette.Trip, 2 * dashes);
        if (!ShowsPresent) return;
        LimitLine.Straight(plot, Scale.Start, Present, Scale.End, Present, dashes);
        plot.Add.Marker(Scale.At(Limit.Filter), Present, MarkerShape.FilledDiamond, size, Palette.Trip);
    }

    /// <summary>Words in the corner where nothing trips.</summary>
    public void Say(Plot plot, Alignment upper, Alignment lower, IEnumerable<string> lines, float size = 13)
    {
        var words = plot.Add.Annotation(string.Join('\n', lines), Limit.IsLower ? lower : upper);
        (words.LabelFontSize, words.LabelBackgroundColor, words.LabelBorderColor, words.LabelShadowColor) = (size, Colors.White.WithAlpha(0.9), Colors.Gray, Colors.Transparent);
    }
}
