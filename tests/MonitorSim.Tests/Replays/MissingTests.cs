namespace MonitorSim.Tests.Replays;

/// <summary>Missing cells and gaps in time: rejected, held or tripping, as the plan says.</summary>
public class MissingTests
{
    private const double None = double.NaN;

    private static ReplayResult Replayed(string head, double[] v, double[] q, long[]? milliseconds = null) => Replay.Run(Bench.Plan($$"""
        "motion": "linear", "standstill": "1 mm/s", "stops": { "STO": {} }, "channels": { {{Bench.Channels("vq")}} },
        "monitors": [
          { "name": "speed", "function": "SLS", "limit": "5 mm/s", "reaction": "none", "filter": "2 ms" },
          { "name": "force", "function": "SLT", "limit": "5 N", "reaction": "none", "delay": "2 ms" } ]
        """, head), milliseconds is null ? Bench.Milliseconds(("v", v), ("q", q)) : Bench.At([.. milliseconds.Select(t => t * 1_000_000)], ("v", v), ("q", q)));

    [Fact]
    public void By_default_they_are_an_error_that_lists_every_place()
    {
        var e = Assert.Throws<InputException>(() => Replayed("", [0, None, 0, None], [0, 0, 0, 0]));
        Assert.Equal("array: column 'v' has 2 missing cells, at samples 1, 3; set \"missing\" to \"hold\" or \"trip\"", Assert.Single(e.Problems).ToString());
        Assert.Throws<InputException>(() => Replayed("", [0, 0, 0, 0, 0], new double[5], [0, 1, 2, 3, 9]));
    }

    [Fact]
    public void Held_the_last_value_counts_but_a_first_one_has_to_be_there()
    {
        const string hold = """ "missing": "hold", """;
        Assert.Equal([3m], Replayed(hold, [0, 6, None, None, 0], new double[5]).TripsOf("speed", "upper"));
        Assert.Throws<InputException>(() => Replayed(hold, [None, 6, 0, 0, 0], new double[5]));
    }

    [Fact]
    public void Tripping_a_watching_monitor_trips_that_needs_the_value_and_no_other()
    {
        const string trip = """ "missing": "trip", """;
        var result = Replayed(trip, [0, 0, 0, None, 0], [0, None, 0, 0, None]);

        // At 1 ms the force is not yet watched.
        Assert.Equal([("speed", 0.003m), ("force", 0.004m)], result.Trips.Select(t => (t.Monitor, t.Time)));
        Assert.All(result.Trips, t => Assert.Equal(("invalid input", null, null), (t.Side, t.Value, t.Limit)));

        // A cycle without a value breaks a run.
        result = Replayed(trip, [0, 6, 6, None, 6, 6, 0], new double[7]);
        Assert.Equal([(0.001m, 0.002m), (0.004m, 0.005m)], result.Excursions.Select(e => (e.From, e.Until)));
    }

    // The median period of 1, 1, 3, 3 ms is 2 ms, and five of them are no gap yet; of 1, 1, 1, 3 ms it is 1 ms.
    [Theory]
    [InlineData(new long[] { 0, 1, 2, 5, 8, 18 }, "", false)]
    [InlineData(new long[] { 0, 1, 2, 5, 15 }, "", false)]
    [InlineData(new long[] { 0, 1, 2, 5, 16 }, "", true)]
    [InlineData(new long[] { 0, 1, 2, 3, 8 }, "", false)]
    [InlineData(new long[] { 0, 1, 2, 3, 9 }, "", true)]
    [InlineData(new long[] { 0, 1, 2, 3, 9 }, "\"gap\": \"6 ms\",", false)]
    [InlineData(new long[] { 0, 1, 2, 3, 9 }, "\"gap\": \"5.999999 ms\",", true)]
    public void A_gap_is_longer_than_five_median_periods(long[] times, string gap, bool trips)
    {
        var result = Replayed("\"missing\": \"trip\", " + gap, new double[times.Length], new double[times.Length], times);
        Assert.Equal(trips ? ["force", "speed"] : [], result.Trips.Select(t => t.Monitor));
        Assert.All(result.Trips, t => Assert.Equal((times.Length - 1, "invalid input"), (t.Sample, t.Side)));
    }

    [Fact]
    public void A_gap_makes_no_value_missing()
    {
        var result = Replayed(""" "missing": "trip", """, [0, 0, 0, 0, 0], [0, 0, 0, 0, 5.1], [0, 1, 2, 3, 9]);
        Assert.Equal([("force", "invalid input"), ("force", "upper"), ("speed", "invalid input")], result.Trips.Select(t => (t.Monitor, t.Side)));
        Assert.Equal(5.1, result.Trips.Single(t => t.Side == "upper").Value!.Value, 1e-12);
    }
}
