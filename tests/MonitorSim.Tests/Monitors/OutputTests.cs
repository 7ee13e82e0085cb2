using MonitorSim.Tests.Replays;

namespace MonitorSim.Tests.Monitors;

/// <summary>Functions with an output (SCA, SSM, SMT): hysteresis and delays at their boundaries.</summary>
public class OutputTests
{
    private static (decimal Time, bool On)[] Edges(string column, string monitor, double[] values) =>
        [.. Replay.Run(Bench.Linear(column, monitor), Bench.Milliseconds((column, values))).Outputs.Single().Edges.Select(edge => (edge.Time * 1000, edge.On))];

    [Fact]
    public void A_cam_turns_on_with_hysteresis_to_spare_and_off_when_outside()
    {
        // 10..20 mm with 0.2 mm: on from 10.2 to 19.8, off below 10 and above 20.
        const string cam = """ "function": "SCA", "ranges": [["10 mm", "20 mm"]], "hysteresis": "0.2 mm" """;
        Assert.Equal([(2, true), (5, false), (7, true)], Edges("p", cam, [10, 10.19, 10.2, 10, 20, 20.01, 19.81, 19.8]));
        Assert.Equal([(1, true), (3, false)], Edges("p", cam, [9, 15, 10, 9.99]));

        // To spare within one range: two that touch do not add up.
        Assert.Empty(Edges("p", """ "function": "SCA", "ranges": [["10 mm", "20 mm"], ["20 mm", "30 mm"]], "hysteresis": "0.2 mm" """, [19.9, 20, 20.1]));

        // Where two overlap, a position in both is in: 17 is, 25 is in the second alone.
        Assert.Equal([(1, true), (3, false)], Edges("p", """ "function": "SCA", "ranges": [["10 mm", "20 mm"], ["15 mm", "30 mm"]] """, [9, 17, 25, 31]));
    }

    [Fact]
    public void Delays_count_without_interruption_from_the_cycle_at_which_it_began()
    {
        const string cam = """ "function": "SCA", "ranges": [["10 mm", "20 mm"]], "onDelay": "3 ms", "offDelay": "2 ms" """;
        double[] p = [15, 15, 15, 0, 15, 15, 15, 15, 0, 0, 15, 0, 0, 0, 0];
        Assert.Equal([(7, true), (13, false)], Edges("p", cam, p));
    }

    [Fact]
    public void A_speed_monitor_compares_magnitudes_unless_signed()
    {
        Assert.Equal([(1, true), (3, false)], Edges("v", """ "function": "SSM", "lower": "5 mm/s", "upper": "9 mm/s" """, [4.9, -5, 9, -9.1]));
        Assert.Equal([(0, true), (2, false)], Edges("v", """ "function": "SSM", "upper": "-5 mm/s", "signed": true """, [-5, -6, -4.9]));
        Assert.Equal([(1, true)], Edges("v", """ "function": "SSM", "lower": "5 mm/s", "hysteresis": "1 mm/s" """, [5.9, 6, 5]));
    }

    [Theory]
    [InlineData("none", false)]
    [InlineData("stop 0", true)]
    public void A_temperature_trips_only_with_a_reaction(string reaction, bool trips)
    {
        var plan = Bench.Plan($$"""
            "motion": "linear", "stops": { "STO": {} }, "channels": { "temperature": { "column": "T", "unit": "°C" } },
            "monitors": [ { "name": "m", "function": "SMT", "limit": "80 °C", "hysteresis": "5 K", "filter": "1 ms", "reaction": "{{reaction}}" } ]
            """);
        var result = Replay.Run(plan, Bench.Milliseconds(("T", [75.1, 75, 80, 80.1, 80.1, 75.1, 75])));
        Assert.Equal([(1, true), (3, false), (6, true)], result.Outputs.Single().Edges.Select(edge => ((int)(edge.Time * 1000), edge.On)));
        Assert.Equal(trips ? [4m] : [], result.TripsOf("m", "upper"));
        Assert.Equal(0.003m, Assert.Single(result.Excursions).From);
    }

    [Fact]
    public void An_output_is_off_unless_watching_and_others_see_it_a_cycle_later()
    {
        var plan = Bench.Plan($$"""
            "motion": "linear", "stops": { "STO": {} }, "channels": { {{Bench.Channels("pv")}} },
            "monitors": [
              { "name": "parked", "function": "SCA", "ranges": [["0 mm", "1 mm"]], "request": "on" },
              { "name": "slow", "function": "SLS", "limit": "5 mm/s", "request": "x.parked", "reaction": "none" } ]
            """, """ "signals": { "on": { "windows": [["2 ms", "6 ms"]] } }, """);
        var result = Replay.Run(plan, Bench.Milliseconds(("p", new double[9]), ("v", [0, 0, 9, 9, 0, 0, 0, 9, 9])));
        Assert.Equal([(0.002m, true), (0.006m, false)], result.Outputs.Single().Edges.Select(edge => (edge.Time, edge.On)));

        // On at 2 ms, seen at 3; off at 6 ms, gone at 7.
        Assert.Equal([3m], result.TripsOf("slow", "upper"));
        Assert.False(result.Trips[0].AvoidedBy.Exact);
        Assert.Equal((1, 0.003m), (result.Coverage.Single(c => c.Monitor == "slow").Requests, result.Coverage.Single(c => c.Monitor == "slow").Watched));
    }
}
