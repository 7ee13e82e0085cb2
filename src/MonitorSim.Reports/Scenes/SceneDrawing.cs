using System.Text;
using MonitorSim.Monitors;
using MonitorSim.Quantities;
using MonitorSim.Replays;

namespace MonitorSim.Reports.Scenes;

/// <summary>Where everything of a scene's picture lies: the measure against its limit over time, what the chain did, and the filter clock.</summary>
internal sealed class SceneDrawing
{
    public const int Width = 960, Height = 340;
    public const int Left = 84, Right = 940, Top = 40, Bottom = 284, FilterTop = 18, FilterBottom = 34;

    private readonly IReadOnlyList<ChainCycle> _cycles;
    private readonly Unit? _unit;

    public SceneDrawing(Scene scene, Unit? unit)
    {
        (_cycles, _unit) = (scene.History.Cycles, unit);
        Times = new((double)_cycles[0].Time, Math.Max((double)_cycles[^1].Time, (double)_cycles[0].Time + 1e-9), Left, Right);
        Values = Scale.Around(_cycles.SelectMany(cycle => new[] { cycle.Value, cycle.Limit }).Select(Shown), 0.12, Bottom, Top);
    }

    /// <summary>Time, s, to the right.</summary>
    public Scale Times { get; }

    /// <summary>Measure and limit, in the user's unit, upwards.</summary>
    public Scale Values { get; }

    public string UnitText => _unit?.Symbol ?? "";

    /// <summary>The measure as lines, interrupted where nothing is compared.</summary>
    public string Measure => Path(cycle => cycle.Value, isStaircase: false);

    /// <summary>The limit as a staircase.</summary>
    public string Limit => Path(cycle => cycle.Limit, isStaircase: true);

    /// <summary>The part of the measure beyond the limit.</summary>
    public string Beyond => Path(cycle => cycle.ExceededAt is null ? null : cycle.Value, isStaircase: false);

    /// <summary>Stretches in which the monitor was in a state.</summary>
    public IEnumerable<(double From, double Until)> In(MonitorState state) => Stretches(cycle => cycle.State == state);

    /// <summary>Stretches in which the limit was exceeded: the filter clock runs.</summary>
    public IEnumerable<(double From, double Until)> Exceeding => Stretches(cycle => cycle.ExceededAt is not null);

    /// <summary>Where a cycle lies; without a value y is the bottom.</summary>
    public (double X, double Y) At(ChainCycle cycle) => (Times.At((double)cycle.Time), cycle.Value is null ? Bottom : Values.At(Shown(cycle.Value)));

    private double Shown(double? si) => si is { } value ? _unit?.FromSi(value) ?? value : double.NaN;

    private string Path(Func<ChainCycle, double?> value, bool isStaircase)
    {
        var path = new StringBuilder();
        var isDown = false;
        foreach (var cycle in _cycles)
        {
            if (value(cycle) is not { } si)
            {
                isDown = false;
                continue;
            }

            var (x, y) = (Svg.Place(Times.At((double)cycle.Time)), Svg.Place(Values.At(Shown(si))));
            // A single point is a line of no length, which a round cap makes visible.
            path.Append(isDown ? isStaircase ? $"H{x}V{y}" : $"L{x} {y}" : $"M{x} {y}h0");
            isDown = true;
        }

        return path.ToString();
    }

    private IEnumerable<(double From, double Until)> Stretches(Func<ChainCycle, bool> holds)
    {
        for (var k = 0; k < _cycles.Count; k++)
        {
            if (!holds(_cycles[k])) continue;
            var from = k;
            while (k + 1 < _cycles.Count && holds(_cycles[k + 1])) k++;
            yield return (Times.At((double)_cycles[from].Time), Times.At((double)_cycles[Math.Min(k + 1, _cycles.Count - 1)].Time));
        }
    }
}
