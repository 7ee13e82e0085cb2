namespace MonitorSim.Assertions;

/// <summary>What a test expects of a replay's trips. Works in any test framework: what does not hold throws
/// <see cref="ReplayExpectationException"/>, whose message says what happened instead.</summary>
public static class TripAssertions
{
    /// <summary>A monitor trips, at least once.</summary>
    /// <param name="result">The replay.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="monitor">The monitor, or the name of a stop (SS1, SOS …).</param>
    /// <returns>What more can be expected of that trip.</returns>
    /// <exception cref="ReplayExpectationException">It does not, or there is no such monitor.</exception>
    public static TripExpectation ShouldTrip(this ReplayResult result, string axis, string monitor)
    {
        var expected = $"{axis}.{monitor} trips";
        Known.Monitor(result, axis, monitor, expected);
        var trips = result.Trips.Where(trip => trip.Axis == axis && trip.Monitor == monitor).ToList();
        return trips.Count > 0 ? new(result, trips, expected) : throw Failure(result, axis, monitor, expected, "it never trips");
    }

    /// <summary>A monitor watches and does not trip. One that never watched fails, because that proves nothing about it: see
    /// <see cref="ShouldNotWatch"/>.</summary>
    /// <param name="result">The replay.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="monitor">The monitor, or the name of a stop.</param>
    /// <exception cref="ReplayExpectationException">It trips, never watches, or there is no such monitor.</exception>
    public static void ShouldNotTrip(this ReplayResult result, string axis, string monitor)
    {
        var expected = $"{axis}.{monitor} watches and does not trip";
        Known.Monitor(result, axis, monitor, expected);
        var first = result.Trips.FirstOrDefault(trip => trip.Axis == axis && trip.Monitor == monitor);
        if (first is not null) throw Failure(result, axis, monitor, expected, $"it trips at {ReplayFacts.Time(first.Time)}");
        if (!result.WasWatched(axis, monitor)) throw Failure(result, axis, monitor, expected, "it never watched, which proves nothing");
    }

    /// <summary>Nothing trips on any axis.</summary>
    /// <param name="result">The replay.</param>
    /// <exception cref="ReplayExpectationException">Something trips.</exception>
    public static void ShouldNotTrip(this ReplayResult result)
    {
        if (!result.IsTripped) return;
        throw Failure(result, null, null, "nothing trips", FormattableString.Invariant($"there {(result.Trips.Count == 1 ? "is 1 trip" : $"are {result.Trips.Count} trips")}"));
    }

    /// <summary>A monitor never watches: its request never lasts as long as its delay.</summary>
    /// <param name="result">The replay.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="monitor">The monitor.</param>
    /// <exception cref="ReplayExpectationException">It watches, or there is no such monitor.</exception>
    public static void ShouldNotWatch(this ReplayResult result, string axis, string monitor)
    {
        var expected = $"{axis}.{monitor} never watches";
        Known.Monitor(result, axis, monitor, expected);
        var since = result.Watching.Where(w => w.Axis == axis && w.Monitor == monitor).SelectMany(w => w.Stretches).Select(s => s.WatchingAt).FirstOrDefault(at => at is not null);
        if (since is { } time) throw Failure(result, axis, monitor, expected, $"it watches from {ReplayFacts.Time(time)}");
    }

    /// <summary>The plan's own <c>expect</c> lines hold, all of them, and there is at least one.</summary>
    /// <param name="result">The replay.</param>
    /// <exception cref="ReplayExpectationException">A line does not hold, or there is none.</exception>
    public static void ShouldMeetItsPlan(this ReplayResult result)
    {
        const string Expected = "every expect line of the plan holds";
        if (result.Expect.Count == 0) throw Failure(result, null, null, Expected, "the plan has none");
        var broken = result.Expect.Where(line => !line.Holds).Select(line => FormattableString.Invariant($"line {line.Index}: {line.Because}")).ToList();
        if (broken.Count > 0) throw Failure(result, null, null, Expected, string.Join("; ", broken));
    }

    private static ReplayExpectationException Failure(ReplayResult result, string? axis, string? monitor, string expected, string instead) =>
        new(expected, instead, ReplayFacts.Of(result, axis, monitor));
}
