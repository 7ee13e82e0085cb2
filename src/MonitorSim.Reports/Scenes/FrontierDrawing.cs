using System.Text;
using MonitorSim.Quantities;
using MonitorSim.Tuning;

namespace MonitorSim.Reports.Scenes;

/// <summary>Where everything of a frontier's picture lies: filters in ms to the right, limits in the user's unit upwards.</summary>
internal sealed class FrontierDrawing
{
    public const int Width = 960, Height = 300;
    public const int Left = 84, Right = 940, Top = 30, Bottom = 244;

    private readonly TunedLimit _limit;
    private readonly Unit _unit;

    public FrontierDrawing(TunedLimit limit)
    {
        (_limit, _unit) = (limit, Quantity.Parse(limit.Written).Unit);
        var longest = Math.Max((double)Math.Max(limit.Frontier[^1].Filter, limit.Filter), 1e-3) * 1e3;
        Filters = new(0, longest * 1.05, Left, Right);
        Limits = Scale.Around(limit.Frontier.Select(step => Shown(step.Limit)).Append(Shown(limit.Limit)), 0.12, Bottom, Top);
    }

    public Scale Filters { get; }

    public Scale Limits { get; }

    public string UnitText => _unit.Symbol;

    /// <summary>From filter 0 to the last step, then down to where nothing trips.</summary>
    public string Staircase
    {
        get
        {
            var path = new StringBuilder($"M{Left} {Svg.Place(Limits.At(Shown(_limit.Frontier[0].Limit)))}");
            foreach (var step in _limit.Frontier)
                path.Append($"V{Svg.Place(Limits.At(Shown(step.Limit)))}H{Svg.Place(Filters.At((double)step.Filter * 1e3))}");
            return path.Append($"V{(_limit.IsLower ? Top : Bottom)}").ToString();
        }
    }

    public string PresentLimit => $"M{Left} {Svg.Place(Limits.At(Shown(_limit.Limit)))}H{Right}";

    public string Present => Svg.Diamond(Filters.At((double)_limit.Filter * 1e3), Limits.At(Shown(_limit.Limit)));

    private double Shown(double si) => _unit.FromSi(si);
}
