using MonitorSim.Tests.Replays;

namespace MonitorSim.Tests.Monitors;

/// <summary>Manual reduced speed of a robot's tool centre point: not more than 250 mm/s (ISO 10218-1, quoted from memory).</summary>
public class ReducedSpeedTests
{
    [Theory]
    [InlineData("250 mm/s", 250.0, false)]
    [InlineData("250 mm/s", 250.0000000000001, true)]
    [InlineData("250 mm/s", -250.0, false)]
    [InlineData("250 mm/s", -250.1, true)]
    [InlineData("0.25 m/s", 250.0, false)]
    [InlineData("15 m/min", 250.0, false)]
    [InlineData("0.9 km/h", 250.0, false)]
    [InlineData("0.9 km/h", 250.01, true)]
    public void Recorded_speed(string limit, double speed, bool trips)
    {
        var result = Replay.Run(Bench.Linear("v", $""" "function": "SLS", "limit": "{limit}" """), Bench.Milliseconds(("v", [0, speed, 0])));
        Assert.Equal(trips ? [1m] : [], result.TripsOf("m", "upper"));
    }

    // 1 mm in 4 ms is 250 mm/s, wherever the axis stands; the next digit is more.
    [Theory]
    [InlineData(0, false)]
    [InlineData(0.1, false)]
    [InlineData(1234.7, false)]
    [InlineData(-77.7, false)]
    [InlineData(0.1, true)]
    [InlineData(1234.7, true)]
    public void Speed_from_positions(double start, bool more)
    {
        var end = (double)((decimal)start + 1 + (more ? 0.0000000001m : 0));
        var result = Replay.Run(Bench.Linear("p", """ "function": "SLS", "limit": "250 mm/s" """), Bench.Every(4, ("p", [start, end, end])));
        Assert.Equal(more ? [4m] : [], result.TripsOf("m", "upper"));
    }
}
