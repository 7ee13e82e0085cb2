using MonitorSim.Quantities;

namespace MonitorSim.Assertions;

/// <summary>A monitor that did trip, and what more is expected of it. Each expectation returns the same trips, so that they can be chained.</summary>
public sealed class TripExpectation
{
    private readonly ReplayResult _result;
    private readonly string _expected;

    internal TripExpectation(ReplayResult result, IReadOnlyList<Trip> trips, string expected) => (_result, Trips, _expected) = (result, trips, expected);

    /// <summary>Its trips, by time; at least one.</summary>
    public IReadOnlyList<Trip> Trips { get; }

    /// <summary>The first of them.</summary>
    public Trip First => Trips[0];

    /// <summary>The first trip is at exactly that time.</summary>
    /// <param name="time">From the first sample, such as <c>0.512 s</c>.</param>
    /// <exception cref="ReplayExpectationException">It is earlier or later.</exception>
    public TripExpectation At(Quantity time)
    {
        var wanted = Times.Seconds(time);
        return First.Time == wanted ? this : throw Failure($"at {time}", $"it first trips at {ReplayFacts.Time(First.Time)}, {Times.Difference(First.Time, wanted)}");
    }

    /// <summary>The first trip is within these times, ends included.</summary>
    /// <param name="from">Not before.</param>
    /// <param name="until">Not after.</param>
    /// <exception cref="ReplayExpectationException">It is earlier or later.</exception>
    public TripExpectation Between(Quantity from, Quantity until)
    {
        var (low, high) = (Times.Seconds(from), Times.Seconds(until));
        if (low <= First.Time && First.Time <= high) return this;
        var miss = Times.Difference(First.Time, First.Time < low ? low : high);
        throw Failure($"between {from} and {until}", $"it first trips at {ReplayFacts.Time(First.Time)}, {miss}");
    }

    /// <summary>It trips on that side; only those trips are looked at from then on.</summary>
    /// <param name="side"><c>upper</c>, <c>lower</c>, <c>window</c>, <c>invalid input</c> …</param>
    /// <exception cref="ReplayExpectationException">It trips on other sides only.</exception>
    public TripExpectation On(string side)
    {
        var trips = Trips.Where(trip => trip.Side == side).ToList();
        if (trips.Count > 0) return new(_result, trips, $"{_expected} on {side}");
        throw Failure($"on {side}", "it trips on " + string.Join(", ", Trips.Select(trip => trip.Side).Distinct()));
    }

    /// <summary>It trips so often.</summary>
    /// <param name="count">1 or more.</param>
    /// <exception cref="ReplayExpectationException">It trips more or less often.</exception>
    public TripExpectation Exactly(int count) =>
        Trips.Count == count ? this : throw Failure(FormattableString.Invariant($"{count} ×"), FormattableString.Invariant($"it trips {Trips.Count} ×"));

    private ReplayExpectationException Failure(string expected, string instead) =>
        new($"{_expected} {expected}", instead, ReplayFacts.Of(_result, First.Axis, First.Monitor));
}
