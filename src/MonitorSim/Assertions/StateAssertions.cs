using MonitorSim.Quantities;

namespace MonitorSim.Assertions;

/// <summary>What a test expects of an axis's states.</summary>
public static class StateAssertions
{
    /// <summary>An axis is in a state at some cycle. Running counts from the recording's start, unless the axis left it there.</summary>
    /// <param name="result">The replay.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="state">The state.</param>
    /// <returns>What more can be expected of it.</returns>
    /// <exception cref="ReplayExpectationException">It never is, or there is no such axis.</exception>
    public static StateExpectation ShouldReach(this ReplayResult result, string axis, AxisState state)
    {
        var expected = $"{axis} reaches {state}";
        Known.Axis(result, axis, expected);
        return First(result, axis, state) is { } time
            ? new(result, axis, expected, time)
            : throw new ReplayExpectationException(expected, "it never does", ReplayFacts.OfAxis(result, axis));
    }

    /// <summary>An axis is never in a state.</summary>
    /// <param name="result">The replay.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="state">The state.</param>
    /// <exception cref="ReplayExpectationException">It is, or there is no such axis.</exception>
    public static void ShouldNotReach(this ReplayResult result, string axis, AxisState state)
    {
        var expected = $"{axis} never reaches {state}";
        Known.Axis(result, axis, expected);
        if (First(result, axis, state) is { } time)
            throw new ReplayExpectationException(expected, $"it does at {ReplayFacts.Time(time)}", ReplayFacts.OfAxis(result, axis));
    }

    private static decimal? First(ReplayResult result, string axis, AxisState state)
    {
        var changes = result.States.Where(states => states.Axis == axis).SelectMany(states => states.Changes).ToList();
        if (state == AxisState.Running && !changes.Exists(change => change.Time == 0)) return 0;
        return changes.Where(change => change.State == state).Select(change => (decimal?)change.Time).FirstOrDefault();
    }
}

/// <summary>An axis that did reach a state, and what more is expected of it.</summary>
public sealed class StateExpectation
{
    private readonly ReplayResult _result;
    private readonly string _axis, _expected;

    internal StateExpectation(ReplayResult result, string axis, string expected, decimal time) => (_result, _axis, _expected, Time) = (result, axis, expected, time);

    /// <summary>The first cycle in that state, s.</summary>
    public decimal Time { get; }

    /// <summary>Strictly before that time, as in a plan's <c>expect</c>.</summary>
    /// <param name="time">From the first sample, such as <c>1 s</c>.</param>
    /// <exception cref="ReplayExpectationException">It is there later.</exception>
    public StateExpectation Before(Quantity time) =>
        Time < Times.Seconds(time) ? this : throw Failure($"before {time}", Times.Seconds(time));

    /// <summary>At exactly that time.</summary>
    /// <param name="time">From the first sample, such as <c>0.512 s</c>.</param>
    /// <exception cref="ReplayExpectationException">It is there earlier or later.</exception>
    public StateExpectation At(Quantity time) => Time == Times.Seconds(time) ? this : throw Failure($"at {time}", Times.Seconds(time));

    private ReplayExpectationException Failure(string expected, decimal wanted) => new($"{_expected} {expected}",
        $"it does at {ReplayFacts.Time(Time)}, {(Time == wanted ? "not strictly before" : Times.Difference(Time, wanted))}", ReplayFacts.OfAxis(_result, _axis));
}
