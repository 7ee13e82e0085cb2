using FsCheck.Xunit;

namespace MonitorSim.Tests.Replays;

/// <summary>Random recordings through the chain, against a literal model and against replays with other limits, filters and delays.</summary>
public class ChainProperties
{
    /// <summary>A random recording: speed in mm/s, request and reset, at uneven times.</summary>
    private sealed record Run(int[] Times, int[] Speed, bool[] Request, bool[] Reset, int Delay, int Filter, int Limit)
    {
        public static Run Of(byte[] cells, byte delay, byte filter, byte limit)
        {
            cells = [.. cells.DefaultIfEmpty((byte)0)];
            var times = new int[cells.Length];
            for (var k = 1; k < times.Length; k++) times[k] = times[k - 1] + 1 + (cells[k] + k) % 3;
            return new(times, [.. cells.Select(c => c & 7)], [.. cells.Select(c => (c & 0x38) != 0)], [.. cells.Select(c => c > 200)], delay % 6, filter % 6, limit % 7);
        }

        public bool[] Acknowledged => [.. Reset.Select((now, k) => k > 0 && Reset[k - 1] && !now)];

        public ChainModel Model(bool acknowledged = true) => new(Times, Request, acknowledged ? Acknowledged : new bool[Times.Length], Speed, Delay, Filter);

        public ReplayResult Replayed(bool acknowledged = true, string? limit = null, string? filter = null, string? delay = null)
        {
            static double[] Numbers(bool[] values) => [.. values.Select(v => v ? 1.0 : 0)];
            var plan = Bench.Linear("v", $$""" "function": "SLS", "request": "on", "limit": "{{limit ?? Limit + " mm/s"}}", "delay": "{{delay ?? Delay + " ms"}}", "filter": "{{filter ?? Filter + " ms"}}" """,
                """ "gap": "1 s", "signals": { "on": { "column": "r" }, "reset": { "column": "k" } }, """ + (acknowledged ? """ "acknowledge": { "signal": "reset" }, """ : ""));
            return Replay.Run(plan, Bench.At([.. Times.Select(t => t * 1_000_000L)], ("v", [.. Speed.Select(v => (double)v)]), ("r", Numbers(Request)), ("k", Numbers(Reset))));
        }
    }

    [Property(MaxTest = 400)]
    public void Trips_are_those_of_the_literal_model(byte[] cells, byte delay, byte filter, byte limit)
    {
        var run = Run.Of(cells, delay, filter, limit);
        var found = run.Replayed().Trips.Select(t => (Ms(t.Time), Ms(t.RequestedAt), Ms(t.WatchingAt!.Value), Ms(t.ExceededAt), (int)Math.Round(t.Peak!.Value * 1000)));
        Assert.Equal(run.Model().Trips(run.Limit), found);
    }

    [Property(MaxTest = 300)]
    public void The_critical_limit_is_the_smallest_that_does_not_trip(byte[] cells, byte delay, byte filter, byte limit)
    {
        var run = Run.Of(cells, delay, filter, limit);
        var headroom = run.Replayed().Headroom.Single();
        var critical = run.Model().Critical();
        Assert.Equal(critical / 1000.0, headroom.Critical);
        if (critical is null) return;
        Assert.Equal(run.Limit - critical.Value, headroom.Room!.Value * 1000, 1e-9);
        Assert.False(run.Replayed(limit: $"{critical} mm/s").IsTripped);
        if (critical > 0) Assert.Equal((decimal?)headroom.Time, run.Replayed(acknowledged: false, limit: $"{critical - 1}.999999999999999 mm/s").Trips.Single().Time);
    }

    // Without acknowledgements and with one request there is one trip, and what would have avoided it can be tried.
    [Property(MaxTest = 300)]
    public void What_would_have_avoided_a_trip_does_and_a_little_less_does_not(byte[] cells, byte delay, byte filter, byte limit)
    {
        var run = Run.Of([.. cells.Select(c => (byte)(c | 8))], delay, filter, limit);
        if (run.Replayed(acknowledged: false).Trips.SingleOrDefault() is not { AvoidedBy: var avoided }) return;
        Assert.True(avoided.Exact);
        var smallest = (int)Math.Round(avoided.Limit!.Value * 1000);
        Assert.False(run.Replayed(false, limit: $"{smallest} mm/s").IsTripped);
        Assert.True(run.Replayed(false, limit: $"{smallest - 1}.999 mm/s").IsTripped);
        Assert.True(run.Replayed(false, filter: $"{Ms(avoided.FilterAbove!.Value)} ms").IsTripped);
        Assert.False(run.Replayed(false, filter: $"{Ms(avoided.FilterAbove!.Value)}.000001 ms").IsTripped);
        if (avoided.DelayAbove is { } longest)
        {
            Assert.True(run.Replayed(false, delay: $"{Ms(longest)} ms").IsTripped);
            Assert.False(run.Replayed(false, delay: $"{Ms(longest)}.000001 ms").IsTripped);
        }
        else Assert.True(run.Replayed(false, delay: $"{run.Times[^1]} ms").IsTripped);
    }

    private static int Ms(decimal seconds) => (int)(seconds * 1000);
}
