using System.Globalization;
using MonitorSim.Quantities;
using MonitorSim.Tuning;

namespace MonitorSim.Explain;

/// <summary>The numbers of a tuned limit in the unit in which its plan states it.</summary>
/// <param name="limit">The limit.</param>
public sealed class TunedText(TunedLimit limit)
{
    private readonly Unit _unit = Quantity.Parse(limit.Written).Unit;

    /// <summary>The monitor with its axis, and its level where it has levels.</summary>
    /// <param name="limit">The limit.</param>
    public static string Name(TunedLimit limit)
    {
        ArgumentNullException.ThrowIfNull(limit);
        return $"{limit.Axis}.{limit.Monitor}" + (limit.Level is { } level ? $" (level {level.ToString(CultureInfo.InvariantCulture)})" : "");
    }

    /// <summary>A value, SI; a dash where there is none.</summary>
    /// <param name="si">The value.</param>
    public string Value(double? si) => si is { } value ? _unit.Format(value) : "–";

    /// <summary>A limit that is enough, rounded to the side on which it does not trip; a dash where there is none.</summary>
    /// <param name="si">The smallest limit that is enough (for lower sides the largest), SI.</param>
    public string Enough(double? si) => si is { } value && double.IsFinite(value) ? SafeRounding.Text(value, _unit, limit.IsLower) : Value(si);

    /// <summary>A limit that is not too much, rounded to the side that is; a dash where there is none.</summary>
    /// <param name="si">The largest limit that is not too much (for lower sides the smallest), SI.</param>
    public string AtMost(double? si) => si is { } value && double.IsFinite(value) ? SafeRounding.Text(value, _unit, !limit.IsLower) : Value(si);

    /// <summary>A way, m or rad, in the unit of length that the limit's unit is made of: mm where limits are in mm/s.</summary>
    /// <param name="si">The way.</param>
    public string Way(double si)
    {
        var way = limit.Unit.StartsWith("rad", StringComparison.Ordinal) ? Dimension.Radian : Dimension.Metre;
        return Unit.TryParse(_unit.Symbol.Split('/')[0], out var unit, out _) && unit!.Dimension == way ? unit.Format(si, 4) : Unit.Parse(way == Dimension.Radian ? "rev" : "mm").Format(si, 4);
    }

    /// <summary>The unit of acceleration that goes with the limit's unit of speed: mm/s² with mm/s; SI where the limit is in none per second.</summary>
    internal Unit Acceleration => _unit.Symbol.EndsWith("/s", StringComparison.Ordinal) && Unit.TryParse(_unit.Symbol + "²", out var unit, out _) ? unit! : Unit.Parse(limit.Unit + "²");

    /// <summary>A difference, SI.</summary>
    /// <param name="si">The difference.</param>
    public string Difference(double si) => _unit.FormatDifference(si);

    /// <summary>What the present limit has to spare, positive on either side; a dash where nothing was compared.</summary>
    public string Headroom() => limit.Critical is not { } critical ? "–" : Difference(limit.IsLower ? critical - limit.Limit : limit.Limit - critical);
}
