using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;
using MonitorSim.Replays;

namespace MonitorSim.Motion.Fit;

/// <summary>What a fit needs of one axis: speed and torque of the load side by sample, SI; NaN where there is none.</summary>
internal sealed class FitData
{
    private readonly Gaps _gaps;

    private FitData(string axis, AxisPlan plan, long[] times, double[] velocity, double[]? torque, Gaps gaps) =>
        (Axis, Plan, Times, Velocity, Torque, _gaps) = (axis, plan, times, velocity, torque, gaps);

    public string Axis { get; }

    public AxisPlan Plan { get; }

    public bool IsRotary => Plan.Motion == AxisMotion.Rotary;

    /// <summary><c>inertia</c> or <c>mass</c>.</summary>
    public string InertiaName => IsRotary ? "inertia" : "mass";

    /// <summary>ns.</summary>
    public long[] Times { get; }

    public double[] Velocity { get; }

    /// <summary>null where none is recorded.</summary>
    public double[]? Torque { get; }

    /// <summary>Whether the speed is no recording but derived from the position.</summary>
    public bool IsDerived => Plan.Channels.Velocity?.Column is null;

    /// <summary>Whether a sample follows the one before it without a gap, and both have what a fit needs.</summary>
    public bool Follows(int sample) => sample > 0 && Has(sample) && Has(sample - 1) && !_gaps.IsFirstAfter(sample);

    public bool Has(int sample) => double.IsFinite(Velocity[sample]) && (Torque is null || double.IsFinite(Torque[sample]));

    /// <summary>The first sample at or after a moment; the number of samples where there is none.</summary>
    public int AtOrAfter(long nanoseconds)
    {
        var at = Array.BinarySearch(Times, nanoseconds);
        return at < 0 ? ~at : at;
    }

    /// <summary>The speed above which a sample counts.</summary>
    public double Threshold(FitOptions options)
    {
        if (options.Above is { } above) return above.Si;
        var peak = Velocity.Where(double.IsFinite).Select(Math.Abs).DefaultIfEmpty(0).Max();
        return Math.Max(Plan.Standstill?.Si ?? 0, 0.02 * peak);
    }

    /// <summary>Reads the axis's channels.</summary>
    /// <exception cref="InputException">The plan is wrong, there is no such axis, it has no speed, or an option does not fit.</exception>
    public static FitData Of(Plan plan, Trace trace, FitOptions options)
    {
        PlanChecks.Require(plan);
        var name = AxisName(plan, options);
        var axis = plan.Axes[name];
        Require("above", options.Above, Kind.Velocity, axis);
        Require("inertia", options.Inertia, Kind.Inertia, axis);
        foreach (var (option, time) in new[] { ("from", options.From), ("until", options.Until), ("window", options.Window) }) Require(option, time, Kind.Time, axis);

        // Missing cells and gaps are passed over: every stretch between them tells something.
        var inputs = new Inputs(plan with { Missing = MissingPolicy.Trip }, trace);
        var channels = new AxisChannelsBuilder(name, axis, inputs.Column, column => inputs.Units.GetValueOrDefault(column), inputs.Times).Build();
        if (channels.Velocity is not { } velocity)
            throw new InputException(new Problem(name, "a fit needs the axis's speed", "name the column of its velocity or position in the plan's channels"));
        if (channels.Torque is { } recorded && recorded.Unit != (axis.Motion == AxisMotion.Rotary ? "N·m" : "N"))
            throw new InputException(new Problem($"{name}.torque", $"a {Choice.Name(axis.Motion)} axis is not moved by '{recorded.Unit}'", "state the side \"motor\" with gear and feed, or a unit of the load side"));
        return new(name, axis, trace.Times.ToArray(), Values(velocity, trace.Count), channels.Torque is { } torque ? Values(torque, trace.Count) : null, inputs.Gaps);
    }

    private static double[] Values(Measured channel, int count) =>
        [.. Enumerable.Range(0, count).Select(k => channel.First.IsPresent(k) ? channel.First.Value(k) : double.NaN)];

    private static string AxisName(Plan plan, FitOptions options)
    {
        if (options.Axis is { } name)
            return plan.Axes.ContainsKey(name) ? name : throw new InputException(new Problem("axis", $"unknown axis '{name}'", ClosestName.Advice(name, [.. plan.Axes.Keys], "axis")));
        return plan.Axes.Count == 1 ? plan.Axes.Keys.First() : throw new InputException(new Problem("axis", "the plan has several axes", "name one of " + string.Join(", ", plan.Axes.Keys)));
    }

    private static void Require(string option, Quantity? quantity, Kind kind, AxisPlan axis)
    {
        if (quantity is null) return;
        var units = KindUnits.Of(kind, axis.Motion == AxisMotion.Rotary);
        if (!units.Dimensions.Contains(quantity.Unit.Dimension)) throw new InputException(new Problem(option, $"'{quantity}' is no {units.Noun}", units.WouldDo));
        var tooSmall = option is "inertia" or "window" ? quantity.Number <= 0 : quantity.Number < 0;
        if (tooSmall) throw new InputException(new Problem(option, $"'{quantity}' is too small", option is "inertia" or "window" ? "give more than 0" : "give 0 or more"));
    }
}
