using MonitorSim.Motion.Faults;
using MonitorSim.Plans;
using MonitorSim.Quantities;
using MonitorSim.Traces;

namespace MonitorSim.Synthesis;

/// <summary>Turns a scenario without errors into a recording.</summary>
internal sealed class ScenarioSampler(Scenario scenario)
{
    public Trace Sample(string name, CancellationToken cancel)
    {
        var profiles = scenario.Axes.ToDictionary(axis => axis.Key, axis => ProfileOf(scenario.Rate, axis.Value), StringComparer.Ordinal);
        var seconds = scenario.Duration?.Exact.ToDecimal() ?? profiles.Values.Max(profile => profile.Duration);
        var times = SampleMoments.Even(scenario.Rate, seconds, name)
            .Jittered(scenario.Jitter?.Nanoseconds ?? 0, Noise.Seed(scenario.Seed, "jitter"))
            .Without([.. (scenario.MissingRows ?? []).Select(Window)]);
        var columns = new List<Column>();
        foreach (var (axis, profile) in profiles)
        {
            var sampler = new ProfileSampler(profile, times, scenario.Seed);
            foreach (var (column, what) in ColumnsOf(scenario, axis))
            {
                cancel.ThrowIfCancellationRequested();
                columns.Add(Numbers(column, what, scenario.Axes[axis], sampler, times));
            }
        }

        columns.AddRange(scenario.Signals.Select(signal => ProfileSampler.Signal(signal.Key, Within(signal.Value, times))));
        columns.AddRange(profiles.Values.SelectMany(profile => profile.Signals.Select(mark => mark.Signal).Distinct(StringComparer.Ordinal)
            .Select(new ProfileSampler(profile, times).Signal)));
        return new Trace(name, times.Nanoseconds, columns);
    }

    /// <summary>The motion of an axis.</summary>
    /// <exception cref="InputException">A step that cannot follow those before it.</exception>
    public static Profile ProfileOf(Quantity rate, ScenarioAxis axis)
    {
        var start = Profile.At(rate, axis.Motion == AxisMotion.Rotary);
        return axis.Steps.Aggregate(axis.From is null ? start : start.From(axis.From), (profile, step) => step.AppendTo(profile));
    }

    /// <summary>The columns of an axis, those that stand for none included.</summary>
    public static IEnumerable<KeyValuePair<string, ScenarioColumn>> ColumnsOf(Scenario scenario, string axis)
    {
        if (scenario.Axes[axis].Columns is { Count: > 0 } columns) return columns;
        var before = scenario.Axes.Count == 1 ? "" : axis + " ";
        return
        [
            new(before + ProfileSampler.Position, new() { Of = ScenarioQuantity.Position }),
            new(before + ProfileSampler.Velocity, new() { Of = ScenarioQuantity.Velocity }),
        ];
    }

    private NumberColumn Numbers(string name, ScenarioColumn column, ScenarioAxis axis, ProfileSampler sampler, SampleMoments times)
    {
        var values = column.Of == ScenarioQuantity.Torque ? Torque(axis.Plant!, sampler) : sampler.Values(column.Of);
        if (column.Noise is { Number.IsZero: false } noise)
        {
            var (deviation, seed) = (noise.ExactDifference.ToDecimal(), Noise.Seed(scenario.Seed, name));
            for (var k = 0; k < values.Length; k++) values[k] += deviation * Noise.At(seed, times.Numbers[k]);
        }

        var unit = column.Unit ?? sampler.SiUnit(column.Of);
        var rounded = column.Faults.Count == 0 ? RoundedColumn.Round(values, unit, column.Resolution) : Faulty(values, column, unit, times);
        sampler.Empty(rounded);
        return new(name, unit.Symbol, rounded);
    }

    private static double[] Faulty(decimal[] exact, ScenarioColumn column, Unit unit, SampleMoments times)
    {
        var values = Array.ConvertAll(exact, value => (double)value);
        foreach (var fault in column.Faults) fault.Apply(times.Nanoseconds, values);
        var rounded = RoundedColumn.Round(Array.ConvertAll(values, value => double.IsNaN(value) ? 0 : (decimal)value), unit, column.Resolution);
        for (var k = 0; k < values.Length; k++)
            if (double.IsNaN(values[k])) rounded[k] = double.NaN;
        return rounded;
    }

    private static decimal[] Torque(PlantPlan plant, ProfileSampler sampler)
    {
        var (velocity, torque) = (sampler.TrueValues(ScenarioQuantity.Velocity), sampler.TrueValues(ScenarioQuantity.Acceleration));
        var mass = (plant.Mass ?? plant.Inertia)!.Exact.ToDecimal();
        var (viscous, coulomb, load) = (Si(plant.Viscous), Si(plant.Coulomb), Si(plant.Load));
        for (var k = 0; k < torque.Length; k++) torque[k] = mass * torque[k] + viscous * velocity[k] + coulomb * Math.Sign(velocity[k]) - load;
        return torque;

        static decimal Si(Quantity? quantity) => quantity?.Exact.ToDecimal() ?? 0;
    }

    private static bool[] Within(ScenarioSignal signal, SampleMoments times)
    {
        List<(long From, long Until)> windows = [.. signal.Windows.Select(Window)];
        return Array.ConvertAll(times.Nanoseconds, time => windows.Exists(window => window.From <= time && time < window.Until));
    }

    private static (long From, long Until) Window(IReadOnlyList<Quantity> pair) => (pair[0].Nanoseconds, pair[1].Nanoseconds);
}
