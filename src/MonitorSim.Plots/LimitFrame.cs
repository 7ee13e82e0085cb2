using MonitorSim.Explain;
using MonitorSim.Quantities;
using MonitorSim.Tuning;
using ScottPlot;

namespace MonitorSim.Plots;

/// <summary>What the pictures of one tuned limit have in common: its unit, the filters shown, and the limits shown.</summary>
internal sealed class LimitFrame
{
    private const float AxisSize = 90;

    public LimitFrame(TunedLimit limit)
    {
        Limit = limit;
        Text = new(limit);
        Unit = Quantity.Parse(limit.Written).Unit;
        Scale = new(limit.Frontier.Select(step => step.Filter).Append(limit.Filter).Append(limit.FilterAbove ?? 0));
        var shown = limit.Frontier.Select(step => step.Limit).Concat(limit.Runs.Select(run => run.Critical).OfType<double>())
            .Append(limit.Limit).Append(limit.Bounds.Normal ?? limit.Limit).Select(Unit.FromSi).Where(double.IsFinite).ToList();
        var (least, most) = (shown.Min(), shown.Max());
        var size = most > least ? most - least : Math.Max(Math.Abs(most), 1);
        // Words stand on the side where nothing trips: above, for lower sides below.
        (Bottom, Top) = limit.IsLower ? (least - 0.5 * size, most + 0.1 * size) : (least - 0.1 * size, most + 0.5 * size);
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

    /// <summary>An empty panel whose vertical axis are the limits.</summary>
    public Plot Panel(float left = AxisSize)
    {
        var plot = new Plot();
        plot.Axes.Left.MinimumSize = plot.Axes.Left.MaximumSize = left;
        plot.Axes.SetLimitsY(Bottom, Top);
        return plot;
    }

    /// <summary>Words in the corner where nothing trips.</summary>
    public void Say(Plot plot, Alignment upper, Alignment lower, IEnumerable<string> lines, float size = 13)
    {
        var words = plot.Add.Annotation(string.Join('\n', lines), Limit.IsLower ? lower : upper);
        (words.LabelFontSize, words.LabelBackgroundColor, words.LabelBorderColor, words.LabelShadowColor) = (size, Colors.White.WithAlpha(0.9), Colors.Gray, Colors.Transparent);
    }

    /// <summary>The present limit, dashed, from one place to another.</summary>
    public void DrawLimit(Plot plot, double from, double until) => LimitLine.Straight(plot, from, Present, until, Present);
}
