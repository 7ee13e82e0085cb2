using FsCheck.Xunit;
using MonitorSim.Channels;
using MonitorSim.Replays;

namespace MonitorSim.Tests.Replays;

/// <summary>Which cycles there are and what they see, against the page's own words.</summary>
public class CycleTests
{
    [Property]
    public bool Cycles_exist_where_there_is_a_sample_to_see(byte[] steps, byte period, byte phaseSeed, byte inputDelay)
    {
        long[] times = [0, .. steps.Select(step => (long)step % 7 + 1)];
        for (var k = 1; k < times.Length; k++) times[k] += times[k - 1];
        long cycle = period % 9 + 1, phase = phaseSeed % cycle, delay = inputDelay % 25;
        var clock = new CycleClock(new SampleTimes(times), cycle, phase, delay);

        // c_n = phase + n·T, for every n at which c_n - inputDelay lies within the samples.
        var expected = Enumerable.Range(0, 1000).Select(n => phase + n * cycle).Where(c => c - delay >= 0 && c - delay <= times[^1])
            .Select(c => (c, times.ToList().FindLastIndex(t => t <= c - delay))).ToArray();
        return clock.Between(0, clock.Count).Select(found => (found.Time, found.Sample)).SequenceEqual(expected);
    }

    [Fact]
    public void A_recording_that_ends_before_the_first_cycle_has_none()
    {
        var result = Replay.Run(Bench.Linear("v", """ "function": "SLS", "limit": "1 mm/s" """, """ "cycle": "4 ms", "phase": "2 ms", """), Bench.Milliseconds(("v", [9, 9])));
        Assert.Empty(result.Trips);
        Assert.Equal((0, 0m), (result.Coverage.Single().Requests, result.Coverage.Single().Watched));
    }

    // Samples every millisecond: a violation at 5 ms is seen by the cycle at or after 5 ms + inputDelay.
    [Theory]
    [InlineData("\"cycle\": \"trace\", \"inputDelay\": \"2.5 ms\",", 5, 7.5)]
    [InlineData("\"cycle\": \"5 ms\",", 5, 5.0)]
    [InlineData("\"cycle\": \"5 ms\", \"phase\": \"4 ms\",", null, null)]
    [InlineData("\"cycle\": \"5 ms\", \"phase\": \"0.999999 ms\",", 5, 5.999999)]
    [InlineData("\"cycle\": \"5 ms\", \"phase\": \"1 ms\",", null, null)]
    [InlineData("\"cycle\": \"5 ms\", \"phase\": \"2 ms\", \"inputDelay\": \"2 ms\",", 5, 7.0)]
    [InlineData("\"cycle\": \"0.5 ms\",", 5, 5.0)]
    public void A_cycle_sees_the_newest_sample_that_is_old_enough(string head, int? sample, double? time)
    {
        var result = Replay.Run(Bench.Linear("v", """ "function": "SLS", "limit": "1 mm/s" """, head), Bench.Milliseconds(("v", [.. Enumerable.Range(0, 12).Select(k => k == 5 ? 9.0 : 0)])));
        Assert.Equal(sample is null ? [] : [(sample.Value, (decimal)time!.Value)], result.Trips.Select(trip => (trip.Sample, trip.Time * 1000)));
    }

    // One violating sample, cycles of 4 ms: a filter counts cycles' times, not samples'.
    [Theory]
    [InlineData(4, 8, "4 ms", 8)]
    [InlineData(4, 7, "4 ms", null)]
    [InlineData(3, 10, "4 ms", 8)]
    [InlineData(4, 12, "4.1 ms", 12)]
    public void The_filter_counts_on_cycles(int from, int last, string filter, int? time)
    {
        var result = Replay.Run(Bench.Linear("v", $""" "function": "SLS", "limit": "1 mm/s", "filter": "{filter}" """, """ "cycle": "4 ms", """),
            Bench.Milliseconds(("v", [.. Enumerable.Range(0, 20).Select(k => k >= from && k <= last ? 9.0 : 0)])));
        Assert.Equal(time is { } t ? [t] : [], result.TripsOf("m", "upper"));
    }
}
