using MonitorSim.Tests.Replays;

namespace MonitorSim.Tests.Monitors;

/// <summary>What is particular to single functions, at its boundaries.</summary>
public class FunctionTests
{
    private static decimal[] Trips(string columns, string monitor, string side, params double[][] values) =>
        Replay.Run(Bench.Linear(columns, monitor), Bench.Milliseconds([.. columns.Select((c, i) => (c.ToString(), values[i]))])).TripsOf("m", side);

    [Fact]
    public void Direction_is_measured_from_the_furthest_position_or_from_the_start()
    {
        double[] p = [0, 0.1, 0.2, 0.3, 0.2, 0.1, 0, -0.1, -0.2, -0.3];
        Assert.Equal([6m], Trips("p", """ "function": "SDI", "allow": "positive", "tolerance": "0.2 mm" """, "upper", p));
        Assert.Equal([9m], Trips("p", """ "function": "SDI", "allow": "positive", "tolerance": "0.2 mm", "reference": "start" """, "upper", p));
        double[] mirrored = [.. p.Select(x => -x)];
        Assert.Equal([6m], Trips("p", """ "function": "SDI", "allow": "negative", "tolerance": "0.2 mm" """, "upper", mirrored));
        Assert.Equal([9m], Trips("p", """ "function": "SDI", "allow": "negative", "tolerance": "0.2 mm", "reference": "start" """, "upper", mirrored));
        Assert.Empty(Trips("p", """ "function": "SDI", "allow": "negative", "tolerance": "0.3 mm" """, "upper", p));
    }

    // Speeding up (a and v of one sign, or v = 0) and slowing down have limits of their own.
    [Theory]
    [InlineData(5, 100, "")]
    [InlineData(5, 100.1, "upper")]
    [InlineData(-5, -100.1, "upper")]
    [InlineData(5, -200, "")]
    [InlineData(5, -200.1, "deceleration")]
    [InlineData(-5, 200.1, "deceleration")]
    [InlineData(0, -100.1, "upper")]
    [InlineData(-5, 150, "")]
    public void Acceleration_is_compared_in_its_own_quadrant(double v, double a, string side)
    {
        var result = Replay.Run(Bench.Linear("va", """ "function": "SLA", "limit": "100 mm/s²", "deceleration": "200 mm/s²" """),
            Bench.Milliseconds(("v", [v, v, v]), ("a", [0, a, 0])));
        Assert.Equal(side.Length == 0 ? [] : [side], result.Trips.Select(trip => trip.Side));
    }

    // moveTime 4 ms: the move is compared at 0..3 ms; at 4 ms the position becomes the reference for what follows.
    [Theory]
    [InlineData(new[] { 0, 0.5, 1, 1, 9, 9.2, 9, 8.8 }, "", 0)]
    [InlineData(new[] { 0, 0.5, 1, 1.1, 9, 9.2, 9, 8.8 }, "increment", 3)]
    [InlineData(new[] { 0, 0.5, 1, 1, 9, 9.3, 9, 9 }, "window", 5)]
    [InlineData(new[] { 0, -0.5, -1, -1, 9, 9, 9, 8.7 }, "window", 7)]
    public void An_increment_then_standstill(double[] p, string side, int time)
    {
        var result = Replay.Run(Bench.Linear("p", """ "function": "SLI", "increment": "1 mm", "moveTime": "4 ms", "window": "0.2 mm" """), Bench.Milliseconds(("p", p)));
        Assert.Equal(side.Length == 0 ? [] : [(side, time / 1000m)], result.Trips.Select(trip => (trip.Side, trip.Time)));
        Assert.Empty(Trips("p", """ "function": "SLI", "increment": "9.3 mm", "moveTime": "4 ms" """, "window", p));
    }

    [Fact]
    public void An_operating_stop_may_limit_speed_too()
    {
        Assert.Equal([2m], Trips("pv", """ "function": "SOS", "window": "1 mm", "speed": "3 mm/s" """, "speed", [0, 0, 0], [0, -3, -3.1]));

        // Derived: 0.003 mm a millisecond is 3 mm/s.
        Assert.Equal([3m], Trips("p", """ "function": "SOS", "window": "1 mm", "speed": "3 mm/s" """, "speed", [0, 0.003, 0, 0.0031]));
    }

    // The window 350..10 deg wraps; beyond its upper end the representative nearest to its middle (0 deg) counts, and of two the lower.
    [Theory]
    [InlineData(10.0, "")]
    [InlineData(10.1, "upper")]
    [InlineData(350.0, "")]
    [InlineData(349.9, "lower")]
    [InlineData(-10.0, "")]
    [InlineData(729.9, "")]
    [InlineData(179.9, "upper")]
    [InlineData(180.0, "lower")]
    [InlineData(-180.0, "lower")]
    public void A_window_of_positions_may_wrap(double p, string side)
    {
        var plan = Bench.Plan("""
            "motion": "rotary", "modulo": "360 deg", "channels": { "position": { "column": "p", "unit": "deg" } }, "stops": { "STO": {} },
            "monitors": [ { "name": "m", "function": "SLP", "lower": "350 deg", "upper": "10 deg", "reaction": "none" } ]
            """);
        var result = Replay.Run(plan, Bench.Milliseconds(("p", [0, p])));
        Assert.Equal(side.Length == 0 ? [] : [side], result.Trips.Select(trip => trip.Side));
    }

    [Fact]
    public void Levels_count_at_once_when_laxer_and_after_the_delay_when_stricter()
    {
        // 100 mm/s while fast (until 10 ms and from 30 ms), else 20 mm/s; delay 5 ms.
        const string head = """ "signals": { "fast": { "windows": [["0 ms", "10 ms"], ["30 ms", "99 ms"]] } }, """;
        const string monitor = """ "function": "SLS", "delay": "5 ms", "levels": [ { "when": "fast", "limit": "100 mm/s" }, { "when": "always", "limit": "20 mm/s" } ] """;
        decimal[] At(int sample, double speed) => Replay.Run(Bench.Linear("v", monitor, head),
            Bench.Milliseconds(("v", [.. Enumerable.Range(0, 40).Select(k => k == sample ? speed : 0)]))).TripsOf("m", "upper");
        Assert.Empty(At(4, 101));
        Assert.Equal([5m], At(5, 100.1));
        Assert.Empty(At(14, 100));
        Assert.Equal([14m], At(14, 100.1));
        Assert.Equal([15m], At(15, 20.1));
        Assert.Empty(At(15, 20));
        Assert.Equal([29m], At(29, 20.1));
        Assert.Empty(At(30, 100));
    }

    [Fact]
    public void The_way_down_to_a_limit_is_compared_while_arming()
    {
        // From 100 mm/s with 10 mm/s per ms; asked for at 2 ms, in force from 12 ms; tolerance 1 mm/s.
        const string head = """ "signals": { "slow": { "windows": [["2 ms", "99 ms"]] } }, """;
        const string monitor = """ "function": "SLS", "request": "slow", "delay": "10 ms", "limit": "20 mm/s", "approach": { "deceleration": "10 m/s²", "tolerance": "1 mm/s" } """;
        ReplayResult With(params (int Sample, double Speed)[] changes)
        {
            double[] v = [100, 100, 100, 90, 80, 70, 60, 50, 40, 30, 20, 10, 0, 0];
            foreach (var (sample, speed) in changes) v[sample] = speed;
            return Replay.Run(Bench.Linear("v", monitor, head), Bench.Milliseconds(("v", v)));
        }

        Assert.Empty(With((5, 71), (0, 500)).Trips);
        var trip = Assert.Single(With((5, -71.1)).Trips);
        Assert.Equal(("approach", 0.005m, (decimal?)null), (trip.Side, trip.Time, trip.WatchingAt));
        Assert.Equal(0.0011, trip.Value!.Value, 1e-15);

        // Not above the limit to come it is not compared, however far above the ramp.
        Assert.Empty(With((11, 20), (12, 20)).Trips);
        // Above it is; the limit itself, exceeded a cycle later, is not reported before an acknowledgement.
        Assert.Equal([("approach", 0.011m)], With((11, 20.1), (12, 20.1)).Trips.Select(t => (t.Side, t.Time)));
    }
}
