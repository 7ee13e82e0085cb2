using MonitorSim.Plans;

namespace MonitorSim.Tests.Stops;

/// <summary>SS1 and SS2 by time, ramp and deceleration, SOS, STO and SBC, each at its boundaries.</summary>
public class StopVariantTests
{
    private static double[] Speeds(params double[] values) => values;

    [Theory]
    [InlineData("4 ms", 6)]
    [InlineData("3.000001 ms", 6)]
    [InlineData("3 ms", 5)]
    [InlineData("0 ms", 2)]
    public void By_time_it_ends_at_the_first_cycle_after(string time, int end)
    {
        var result = StopBench.Replayed($$""" "SS1": { "variant": "t", "time": "{{time}}" } """, [("v", Speeds(0, 0, 101, 500, 500, 500, 500, 500))]);
        Assert.Equal(end == 2 ? [(2, AxisState.TorqueOff)] : [(2, AxisState.StoppingToOff), (end, AxisState.TorqueOff)], result.Changes());
        Assert.Empty(result.StopTrips());
        if (end > 2) Assert.Equal(["x.fast", "time"], result.States[0].Changes.Select(change => change.Cause));
    }

    // 110 mm/s at 1 ms, ramp of 10 mm/s a millisecond from 3 ms on (delay 2 ms), tolerance 5 mm/s.
    [Theory]
    [InlineData(2, 115, false)]
    [InlineData(2, 115.1, true)]
    [InlineData(3, 115, false)]
    [InlineData(3, -115.1, true)]
    [InlineData(4, 105, false)]
    [InlineData(4, 105.1, true)]
    [InlineData(9, 55, false)]
    [InlineData(9, 55.00000001, true)]
    public void By_ramp_the_speed_may_lie_above_it_by_the_tolerance(int sample, double speed, bool trips)
    {
        double[] v = [0, 110, 110, 110, 100, 90, 80, 70, 60, 50, 40, 30, 20, 10, 0, 0];
        v[sample] = speed;
        var result = StopBench.Replayed(""" "SS1": { "variant": "r", "deceleration": "10 m/s²", "delay": "2 ms", "tolerance": "5 mm/s" } """, [("v", v)]);
        Assert.Equal(trips ? [(sample, "SS1", "ramp")] : [], result.StopTrips());
        Assert.Equal([(1, AxisState.StoppingToOff), (trips ? sample : 14, AxisState.TorqueOff)], result.Changes());
    }

    [Fact]
    public void A_ramp_is_not_compared_at_standstill_and_ends_when_that_has_settled()
    {
        const string stops = """ "SS1": { "variant": "r", "deceleration": "1 m/s²", "tolerance": "0 mm/s", "settle": "2 ms" } """;
        Assert.Equal([(1, AxisState.StoppingToOff), (4, AxisState.TorqueOff)], StopBench.Replayed(stops, [("v", [0, 110, 0, 1, 0, 0.5, 0, 0])]).Changes());
        Assert.Equal([(1, AxisState.StoppingToOff), (7, AxisState.TorqueOff)], StopBench.Replayed(stops, [("v", [0, 110, 1, 1, 1.1, -1, 1, 1])]).Changes());
    }

    // The stop begins at 1 ms; with a limit of 3 ms it has to have ended before 5 ms, the first cycle that is later than 4 ms.
    [Theory]
    [InlineData(4, "3 ms", false)]
    [InlineData(5, "3 ms", true)]
    [InlineData(5, "3.999999 ms", true)]
    [InlineData(5, "4 ms", false)]
    public void A_stop_may_be_limited_in_time(int standing, string limit, bool trips)
    {
        var v = Enumerable.Range(0, 9).Select(k => k == 0 || k >= standing ? 0.0 : 110).ToArray();
        var result = StopBench.Replayed($$""" "SS1": { "variant": "r", "deceleration": "1 mm/s²", "tolerance": "1 mm/s", "timeLimit": "{{limit}}" } """, [("v", v)]);
        Assert.Equal(trips ? [(5, "SS1", "timeLimit")] : [], result.StopTrips());
        Assert.Equal((standing, AxisState.TorqueOff), result.Changes()[^1]);
    }

    // From 1 ms; checked from 3 ms on (delay 2 ms) for at least 5 m/s².
    [Theory]
    [InlineData(2, 50, 0, "0 ms", null)]
    [InlineData(3, 50, -5000, "0 ms", null)]
    [InlineData(3, 50, -4999.9, "0 ms", 3)]
    [InlineData(3, -50, 5000, "0 ms", null)]
    [InlineData(3, -50, 4999.9, "0 ms", 3)]
    [InlineData(3, 50, 5000, "0 ms", 3)]
    [InlineData(3, 50, -4999.9, "1 ms", null)]
    public void By_deceleration_it_has_to_be_reached(int sample, double speed, double acceleration, string filter, int? time)
    {
        double[] v = [0, 110, 90, 60, 40, 20, 0, 0], a = [0, -9000, -9000, -9000, -9000, -9000, 0, 0];
        (v[sample], a[sample]) = (speed, acceleration);
        if (speed < 0) (v, a) = ([.. v.Select(x => -Math.Abs(x))], [.. a.Select((x, k) => k == sample ? x : -x)]);
        var result = StopBench.Replayed($$""" "SS1": { "variant": "d", "deceleration": "5 m/s²", "delay": "2 ms", "filter": "{{filter}}" } """, [("v", v), ("a", a)]);
        Assert.Equal(time is { } t ? [(t, "SS1", "deceleration")] : [], result.StopTrips());
        if (time is null) return;
        var trip = result.Trips.Single(trip => trip.Monitor == "SS1");

        // Shown as the deceleration reached against the one demanded.
        Assert.Equal(5, trip.Limit);
        Assert.Equal(Math.Sign(speed) * -acceleration / 1000, trip.Value!.Value, 1e-12);
        Assert.False(trip.AvoidedBy.Exact);
    }

    [Theory]
    [InlineData(10.5, false)]
    [InlineData(10.51, true)]
    [InlineData(10.09, true)]
    public void A_stop_to_hold_watches_its_window_from_where_it_ends(double p, bool leaves)
    {
        var result = StopBench.Replayed(""" "SS2": { "variant": "t", "time": "2 ms" }, "SOS": { "window": "0.2 mm" } """,
            [("p", [0, 0, 5, 10.3, p, 10.3, 10.3]), ("v", [0, 101, 0, 0, 0, 0, 0])], "stop 2");
        Assert.Equal(leaves ? [(1, AxisState.StoppingToHold), (3, AxisState.Holding), (4, AxisState.TorqueOff)] : [(1, AxisState.StoppingToHold), (3, AxisState.Holding)], result.Changes());
        Assert.Equal(leaves ? [(4, "SOS", "window")] : [], result.StopTrips());
    }

    [Theory]
    [InlineData(4, 9, false)]
    [InlineData(5, 0.6, false)]
    [InlineData(5, -0.61, true)]
    public void Torque_that_is_left_after_the_grace_is_reported(int sample, double q, bool trips)
    {
        double[] force = [9, 9, 9, 0, 0, 0, 0];
        force[sample] = q;
        var result = StopBench.Replayed(""" "STO": { "residual": "0.6 N", "grace": "3 ms" } """, [("v", [0, 0, 101, 0, 0, 0, 0]), ("q", force)], "stop 0");
        Assert.Equal([(2, AxisState.TorqueOff)], result.Changes());
        Assert.Equal(trips ? [(sample, "STO", "upper")] : [], result.StopTrips());
        if (trips) Assert.Equal(Reaction.None, result.Trips.Single(trip => trip.Monitor == "STO").Reaction);
    }

    [Fact]
    public void The_brake_is_commanded_where_a_stop_would_end_and_torque_goes_when_it_holds()
    {
        const string stops = """ "SS1": { "variant": "t", "time": "2 ms" }, "SBC": { "apply": "3 ms", "window": "0.5 mm" } """;
        double[] v = [0, 101, 0, 0, 0, 0, 0, 0, 0, 0];
        var result = StopBench.Replayed(stops, [("p", [0, 0, 1, 2, 3, 4, 5, 5.5, 4.5, 5.51]), ("v", v)]);
        Assert.Equal([(1, AxisState.StoppingToOff), (6, AxisState.TorqueOff)], result.Changes());
        Assert.Equal([(0.003m, true)], result.Outputs.Single(output => output.Monitor == "SBC").Edges.Select(edge => (edge.Time, edge.On)));
        Assert.Equal([(9, "SBC", "window")], result.StopTrips());

        // Torque off at once commands it at once; the reference is taken when it holds, 3 ms later.
        result = StopBench.Replayed(stops, [("p", [0, 0, 1, 2, 3, 3.5, 3.51, 3, 3, 3]), ("v", v)], "stop 0");
        Assert.Equal([(1, AxisState.TorqueOff)], result.Changes());
        Assert.Equal([(0.001m, true)], result.Outputs.Single(output => output.Monitor == "SBC").Edges.Select(edge => (edge.Time, edge.On)));
        Assert.Equal([(6, "SBC", "window")], result.StopTrips());
    }
}
