using MonitorSim.Tests.Replays;

namespace MonitorSim.Tests.Monitors;

/// <summary>A second recording of a quantity: compared with the first, and the one that counts against limits.</summary>
public class TwoRecordingsTests
{
    private static ReplayResult Replayed(string monitor, double[] first, double[] second, string time = "0 ms", string head = "") => Replay.Run(Bench.Plan($$"""
        "motion": "linear", "stops": { "STO": {} },
        "channels": { "velocity": { "column": "v", "unit": "mm/s", "second": { "column": "w", "tolerance": "2.5 mm/s", "time": "{{time}}", "reaction": "none" } } },
        "monitors": [ { "name": "m", "reaction": "none", {{monitor}} } ]
        """, head), Bench.Milliseconds(("v", first), ("w", second)));

    [Fact]
    public void They_may_differ_by_the_tolerance_for_the_time()
    {
        const string none = """ "function": "SLS", "limit": "1 m/s" """;
        Assert.Empty(Replayed(none, [10.3, -10.3], [12.8, -7.8]).Trips);
        var trip = Assert.Single(Replayed(none, [10.3, 10.3, 10.3], [12.8, 12.81, 10]).Trips);
        Assert.Equal(("velocity two channels", "two channels", "upper", 1), (trip.Monitor, trip.Function, trip.Side, trip.Sample));
        Assert.Equal([3m], Replayed(none, new double[6], [0, 3, -3, 3, 0, 0], "2 ms").TripsOf("velocity two channels", "upper"));
        Assert.Empty(Replayed(none, new double[6], [0, 3, -3, 0, 3, 3], "2 ms").Trips);
    }

    [Theory]
    [InlineData(20, 22, "")]
    [InlineData(22.1, 20, "upper")]
    [InlineData(20, -22.1, "upper")]
    [InlineData(20, 10, "")]
    [InlineData(20, 9.9, "lower")]
    [InlineData(9.9, 20, "lower")]
    public void The_larger_counts_against_upper_limits_the_smaller_against_lower_ones(double first, double second, string side)
    {
        var result = Replayed(""" "function": "SSR", "lower": "10 mm/s", "upper": "22 mm/s" """, [first], [second]);
        Assert.Equal(side.Length == 0 ? [] : [side], result.Trips.Where(trip => trip.Monitor == "m").Select(trip => trip.Side));
    }

    [Fact]
    public void Of_signed_limits_the_first_counts()
    {
        Assert.Empty(Replayed(""" "function": "SLS", "limit": "10 mm/s", "signed": true """, [10, -20], [11, 50]).TripsOf("m", "upper"));
        Assert.Equal([1m], Replayed(""" "function": "SLS", "limit": "10 mm/s", "signed": true """, [10, 10.1], [0, 0]).TripsOf("m", "upper"));
    }

    // What the second recording says does not count, so neither does its absence.
    [Theory]
    [InlineData(""" "function": "SLS", "limit": "10 mm/s" """)]
    [InlineData(""" "function": "SSR", "upper": "10 mm/s" """)]
    [InlineData(""" "function": "SLA", "limit": "10 mm/s²" """)]
    [InlineData(""" "function": "SLA", "limit": "10 mm/s²", "deceleration": "20 mm/s²" """)]
    [InlineData(""" "function": "SLT", "limit": "10 N" """)]
    public void A_signed_limit_does_not_wait_for_a_missing_second_recording(string monitor)
    {
        ReplayResult Missing(string more) => Replay.Run(Bench.Plan($$"""
            "motion": "linear", "stops": { "STO": {} },
            "channels": {
              "velocity": { "column": "x", "unit": "mm/s", "second": { "column": "y", "tolerance": "1 mm/s", "time": "0 ms", "reaction": "none" } },
              "acceleration": { "column": "x", "unit": "mm/s²", "second": { "column": "y", "tolerance": "1 mm/s²", "time": "0 ms", "reaction": "none" } },
              "torque": { "column": "x", "unit": "N", "second": { "column": "y", "tolerance": "1 N", "time": "0 ms", "reaction": "none" } } },
            "monitors": [ { "name": "m", "reaction": "none", {{monitor}} {{more}} } ]
            """, """ "missing": "trip", """), Bench.Milliseconds(("x", [10, 10.1]), ("y", [10, double.NaN])));

        Assert.Equal([1m], Missing(""", "signed": true """).TripsOf("m", "upper"));
        Assert.Empty(Missing(""", "signed": true """).TripsOf("m", "invalid input"));
        Assert.Equal([1m], Missing("").TripsOf("m", "invalid input"));
        Assert.Empty(Missing("").TripsOf("m", "upper"));
    }

    [Theory]
    [InlineData("true", new double[0])]
    [InlineData("false", new double[] { 1, 2 })]
    public void Nor_does_the_output_of_a_signed_speed(string signed, double[] changes)
    {
        var result = Replayed($$""" "function": "SSM", "upper": "20 mm/s", "signed": {{signed}} """, [10, 10, 10], [10, double.NaN, 10], head: """ "missing": "trip", """);
        Assert.Equal([0, .. changes], result.Outputs.Single().Edges.Select(edge => (double)edge.Time * 1000));
    }

    [Theory]
    [InlineData(0.1, 359.9, "0.2 deg", false)]
    [InlineData(0.1, 359.8, "0.2 deg", true)]
    [InlineData(0.0, 180.0, "180 deg", false)]
    [InlineData(0.0, 181.0, "179 deg", false)]
    [InlineData(0.0, 720.1, "0.1 deg", false)]
    public void Positions_of_a_turning_table_are_compared_the_shortest_way_round(double first, double second, string tolerance, bool trips)
    {
        var plan = Bench.Plan($$"""
            "motion": "rotary", "modulo": "360 deg", "stops": { "STO": {} },
            "channels": { "position": { "column": "p", "unit": "deg", "second": { "column": "w", "tolerance": "{{tolerance}}", "time": "0 ms", "reaction": "none" } } }
            """);
        Assert.Equal(trips, Replay.Run(plan, Bench.Milliseconds(("p", [first]), ("w", [second]))).IsTripped);
    }
}
