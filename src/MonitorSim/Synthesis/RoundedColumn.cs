using System.Globalization;
using MonitorSim.Quantities;

namespace MonitorSim.Synthesis;

/// <summary>Rounds a column to what a recording resolves.</summary>
internal static class RoundedColumn
{
    /// <summary>Values in a unit, each the double nearest to a whole multiple of the resolution, halves away from 0.</summary>
    /// <param name="si">SI values.</param>
    /// <param name="unit">The unit of the column.</param>
    /// <param name="resolution">The step; null: 10⁻⁹ of the SI unit, or the power of ten just below it in the unit.</param>
    public static double[] Round(decimal[] si, Unit unit, Quantity? resolution)
    {
        var factor = unit.Factor.ToDecimal();
        var step = resolution is null ? 0.000_000_001m / factor : unit.FromSi(resolution.Exact).ToDecimal();

        // In other units than SI the default step need not be a decimal of few digits; the next smaller power of ten is.
        if (resolution is null) step = (decimal)Math.Pow(10, Math.Floor(Math.Log10((double)step) + 1e-9));
        var values = new double[si.Length];
        for (var k = 0; k < si.Length; k++)
        {
            // The double nearest to the decimal, so that the shortest decimal of the double is that decimal again.
            var rounded = Math.Round(si[k] / factor / step, MidpointRounding.AwayFromZero) * step;
            values[k] = double.Parse(rounded.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        }

        return values;
    }
}
