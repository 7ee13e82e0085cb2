namespace MonitorSim.Assertions;

/// <summary>A misspelt name must not let a test pass.</summary>
internal static class Known
{
    /// <exception cref="ReplayExpectationException">There is no such axis.</exception>
    public static void Axis(ReplayResult result, string axis, string expected)
    {
        if (!result.Plan.Axes.ContainsKey(axis))
            throw new ReplayExpectationException(expected, $"the plan has no axis '{axis}'; {ClosestName.Advice(axis, [.. result.Plan.Axes.Keys.Order(StringComparer.Ordinal)], "axis")}", []);
    }

    /// <exception cref="ReplayExpectationException">There is no such axis, or no such monitor or stop on it.</exception>
    public static void Monitor(ReplayResult result, string axis, string monitor, string expected)
    {
        Axis(result, axis, expected);
        var names = result.Plan.Axes[axis].Monitors.Select(m => m.Name).Concat(result.Coverage.Where(c => c.Axis == axis).Select(c => c.Monitor))
            .Concat(result.Watching.Where(w => w.Axis == axis).Select(w => w.Monitor)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        if (!names.Contains(monitor))
            throw new ReplayExpectationException(expected, $"axis '{axis}' has no monitor '{monitor}'; {ClosestName.Advice(monitor, names, "monitor")}", []);
    }
}
