using MonitorSim.Explain;
using MonitorSim.Monitors;
using MonitorSim.Plans;
using ScottPlot;

namespace MonitorSim.Plots;

/// <summary>The panels of one axis, from top to bottom: its quantities, then the state as a band.</summary>
internal static class AxisPanels
{
    private const int MostTrips = 50;

    public static IReadOnlyList<Plot> Of(ReplayResult result, Trace trace, string name, AxisPlan axis)
    {
        var position = Series.Of(axis, Kind.Position, axis.Channels.Position, trace);
        var velocity = Series.Of(axis, Kind.Velocity, axis.Channels.Velocity, trace) ?? Series.Derived(axis.Modulo is null ? position : null, "velocity");
        var all = new (Series? Series, Kind Kind)[]
        {
            (position, Kind.Position), (velocity, Kind.Velocity), (Series.Of(axis, Kind.Acceleration, axis.Channels.Acceleration, trace), Kind.Acceleration),
            (Series.Of(axis, Kind.Torque, axis.Channels.Torque, trace), Kind.Torque), (Series.Of(axis, Kind.Temperature, axis.Channels.Temperature, trace), Kind.Temperature),
        };
        var motion = result.Simulated.FirstOrDefault(simulated => simulated.Axis == name);
        var speed = velocity is null ? null : SimulatedSeries.Over(velocity, Kind.Velocity, motion, axis.Modulo);
        var panels = new List<Plot>();
        foreach (var (recorded, kind) in all)
        {
            if (recorded is null) continue;
            var series = SimulatedSeries.Over(recorded, kind, motion, axis.Modulo);
            var plot = new Plot();
            plot.Axes.Left.Label.Text = $"{series.Name} [{series.Unit.Symbol}]";
            plot.Axes.Left.MinimumSize = plot.Axes.Left.MaximumSize = 90;
            if (panels.Count == 0) plot.Axes.Title.Label.Text = $"{result.Plan.Title} — {name}{(motion is null ? "" : "   (green: simulated, dotted: as recorded)")}";
            Watches(plot, result, name, axis, kind, series);
            StopLimits.Draw(plot, result, name, axis.Stops, kind, series, speed, axis.Standstill);
            if (Series.OfSecond(axis, kind, trace) is { } second) Second(plot, second);
            SimulatedSeries.Draw(plot, recorded, series, motion);
            Trips(plot, result, name, kind, series);
            panels.Add(plot);
        }

        panels.Add(StateBand(result, name));
        return panels;
    }

    /// <summary>Which panel a side belongs to.</summary>
    private static Kind KindOf(string function, string monitor, string side) => (function, side) switch
    {
        ("SOS", "speed") or ("SLS" or "SSR", _) => Kind.Velocity,
        ("SS1" or "SS2", "deceleration") or ("SLA" or "SAR", _) => Kind.Acceleration,
        ("SS1" or "SS2", _) => Kind.Velocity,
        ("SLT" or "STR" or "STO", _) => Kind.Torque,
        ("SMT", _) => Kind.Temperature,
        ("two channels", _) => Enum.TryParse<Kind>(monitor.Split(' ')[0], ignoreCase: true, out var kind) ? kind : Kind.Position,
        _ => Kind.Position,
    };

    private static void Watches(Plot plot, ReplayResult result, string name, AxisPlan axis, Kind kind, Series series)
    {
        foreach (var monitor in axis.Monitors)
        {
            var sides = result.Headroom.Where(h => h.Axis == name && h.Monitor == monitor.Name && KindOf(monitor.Function, monitor.Name, h.Side) == kind).ToList();
            if (sides.Count == 0 || result.Watching.FirstOrDefault(w => w.Axis == name && w.Monitor == monitor.Name) is not { } watching) continue;
            foreach (var stretch in watching.Stretches.Take(200))
            {
                var (from, until) = ((double)stretch.RequestedAt, (double)stretch.Until);
                var armed = stretch.WatchingAt is { } at ? (double)at : until;
                if (armed > from) plot.Add.HorizontalSpan(from, armed, Palette.Arming);
                if (stretch.WatchingAt is null) continue;
                plot.Add.HorizontalSpan(armed, until, Palette.Watching);
                var levels = monitor is Sls { Levels: not null } sls ? LevelsInForce.Of(result, name, sls, stretch) : null;
                foreach (var side in sides)
                {
                    if (side.Level is null || levels is null) Limit(plot, monitor, side, series, armed, until);
                    else foreach (var part in levels.Where(part => part.Level == side.Level)) Limit(plot, monitor, side, series, (double)part.From, (double)part.Until);
                }
            }
        }
    }

    private static void Limit(Plot plot, MonitorPlan monitor, Headroom side, Series series, double from, double until)
    {
        if (side.Side == "approach") return;
        if ((monitor is Sos && side.Side == "window") || monitor is Sdi or Sli)
        {
            ReferenceLimits.Draw(plot, monitor, side, series, from, until);
            return;
        }

        var value = series.Unit.FromSi(side.Limit);
        var isMagnitude = monitor is Sls { Signed: false } or Ssr { Signed: false } or Sla { Signed: false } or Sar { Signed: false } or Slt { Signed: false };
        foreach (var y in isMagnitude && value != 0 ? new[] { value, -value } : [value]) LimitLine.Level(plot, series, y, from, until);
    }

    // Beneath the first, which the monitors mostly look at, and of another lightness.
    private static void Second(Plot plot, Series series)
    {
        var thinned = series.Thinned();
        var line = plot.Add.ScatterLine(thinned.Times, thinned.Values);
        (line.Color, line.LineWidth) = (Palette.Second, 3);
        var note = plot.Add.Annotation("wide line beneath: second recording", Alignment.LowerLeft);
        (note.LabelFontSize, note.LabelBackgroundColor, note.LabelBorderWidth, note.LabelShadowColor) = (12, Colors.White.WithAlpha(0.85), 0, Colors.Transparent);
    }

    private static void Trips(Plot plot, ReplayResult result, string name, Kind kind, Series series)
    {
        var units = new UserUnits(result.Plan);
        var trips = result.Trips.Where(trip => trip.Axis == name && KindOf(trip.Function, trip.Monitor, trip.Side) == kind).ToList();
        var places = trips.Take(MostTrips).Select(trip => (Trip: trip, Time: (double)trip.Time, Value: series.At((double)trip.Time))).ToList();
        foreach (var (_, time, value) in places)
        {
            plot.Add.VerticalLine(time, 1.5f, Palette.Trip, LinePattern.Dotted).ExcludeFromLegend = true;
            if (!double.IsNaN(value)) plot.Add.Marker(time, value, MarkerShape.FilledDiamond, 11, Palette.Trip);
        }

        plot.Axes.Margins(0.01, 0.15);
        plot.Axes.AutoScale();
        var labels = new TripLabels(plot, ReplayPlot.PanelHeight);
        foreach (var (trip, time, value) in places.Where(place => !double.IsNaN(place.Value)))
        {
            string Text(double? si) => units.Text(name, trip.Monitor, trip.Side, si, trip.Unit);
            labels.Add(trip.Value is null ? $"{trip.Monitor}: invalid input" : $"{trip.Monitor}{(trip.Side is "upper" or "lower" ? "" : $", {trip.Side}")}: {Text(trip.Value)} {(trip.Side == "lower" ? "under" : "over")} limit {Text(trip.Limit)}", time, value);
        }

        labels.Finish(trips.Count - places.Count);
    }

    private static Plot StateBand(ReplayResult result, string name)
    {
        var plot = new Plot();
        var end = (double)Math.Max(result.Duration, 1e-9m);
        var changes = result.States.First(axis => axis.Axis == name).Changes;
        var (from, state) = (0.0, AxisState.Running);
        foreach (var (until, next) in changes.Select(change => ((double)change.Time, (AxisState?)change.State)).Append((end, null)))
        {
            if (until > from)
            {
                var box = plot.Add.Rectangle(from, until, 0, 1);
                (box.FillColor, box.LineColor, box.LineWidth) = (Palette.Of(state), Colors.Black, 1);
                if (state == AxisState.TorqueOff) Stripes.Draw(plot, from, until, end, Colors.White.WithAlpha(0.5));
                if ((until - from) / end > 0.07)
                {
                    var text = plot.Add.Text(state.ToString(), (from + until) / 2, 0.5);
                    (text.LabelAlignment, text.LabelFontSize, text.LabelBold, text.LabelBackgroundColor) = (Alignment.MiddleCenter, 12, true, Colors.White.WithAlpha(0.8));
                }
            }

            (from, state) = (until, next ?? state);
        }

        plot.Axes.Left.Label.Text = "state";
        plot.Axes.Left.MinimumSize = plot.Axes.Left.MaximumSize = 90;
        plot.Axes.Left.TickGenerator = new ScottPlot.TickGenerators.EmptyTickGenerator();
        plot.Axes.Bottom.Label.Text = "time [s]   (dark shade: watching, light shade: arming, dashed: limit, diamond: trip)";
        plot.Axes.SetLimits(0, end, 0, 1);
        plot.HideGrid();
        return plot;
    }
}
