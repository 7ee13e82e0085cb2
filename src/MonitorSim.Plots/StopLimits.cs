using MonitorSim.Plans;
using MonitorSim.Quantities;
using ScottPlot;

namespace MonitorSim.Plots;

/// <summary>What the stops of an axis compare, drawn while they do: the ramp of SS1 and SS2 with its tolerance, the least deceleration, the window and
/// speed of SOS, the slip of the brake, the residual torque.</summary>
internal static class StopLimits
{
    public static void Draw(Plot plot, ReplayResult result, string axis, StopsPlan stops, Kind kind, Series series, Series? velocity, Quantity? standstill)
    {
        foreach (var watched in result.Watching.Where(watched => watched.Axis == axis))
        {
            foreach (var stretch in watched.Stretches.Where(stretch => stretch.WatchingAt is not null).Take(200))
            {
                var (from, until) = ((double)stretch.WatchingAt!.Value, (double)stretch.Until);
                var drawn = (watched.Monitor, kind) switch
                {
                    ("SS1", Kind.Velocity) => Ramp(plot, stops.Ss1!, series, standstill, from, until),
                    ("SS2", Kind.Velocity) => Ramp(plot, stops.Ss2!, series, standstill, from, until),
                    ("SS1", Kind.Acceleration) => Least(plot, stops.Ss1!, series, velocity, from, until),
                    ("SS2", Kind.Acceleration) => Least(plot, stops.Ss2!, series, velocity, from, until),
                    ("SOS", Kind.Position) => Around(plot, stops.Sos!.Window, series, series.At(from), from, until),
                    ("SOS", Kind.Velocity) => Around(plot, stops.Sos!.Speed, series, 0, from, until),
                    ("SBC", Kind.Position) => Around(plot, stops.Sbc!.Window, series, series.At(from), from, until),
                    ("STO", Kind.Torque) => Around(plot, stops.Sto!.Residual, series, 0, from, until),
                    _ => false,
                };
                if (drawn) plot.Add.HorizontalSpan(from, until, Palette.Watching);
            }
        }
    }

    // Where standstill is reached nothing is compared, so the line does not go below it.
    private static bool Ramp(Plot plot, RampStopPlan stop, Series series, Quantity? standstill, double from, double until)
    {
        if (stop.Variant != StopVariant.Ramp || double.IsNaN(series.At(from))) return false;
        double Shown(Quantity? quantity) => quantity is null ? 0 : series.Difference(quantity.Si);
        var (start, least) = (series.At(from), Shown(standstill));
        var begins = Math.Min(until, from + (stop.Delay?.Si ?? 0));
        var times = Enumerable.Range(0, 101).Select(k => begins + (until - begins) * k / 100).Prepend(from).ToArray();
        var line = times.Select(t => Math.Max(least, Math.Abs(start) - Shown(stop.Deceleration) * Math.Max(0, t - begins) + Shown(stop.Tolerance)) * (start < 0 ? -1 : 1)).ToArray();
        LimitLine.Moving(plot, times, line);
        return true;
    }

    private static bool Least(Plot plot, RampStopPlan stop, Series series, Series? velocity, double from, double until)
    {
        if (stop.Variant != StopVariant.Deceleration || velocity is null) return false;
        var y = -Math.Sign(velocity.At(from)) * series.Difference(stop.Deceleration!.Si);
        LimitLine.Level(plot, series, y, from, until);
        return true;
    }

    private static bool Around(Plot plot, Quantity? distance, Series series, double middle, double from, double until)
    {
        if (distance is null || double.IsNaN(middle)) return false;
        ReferenceLimits.Around(plot, series, middle, series.Difference(distance.Si), from, until);
        return true;
    }
}
