using MonitorSim.Tests.Replays;

namespace MonitorSim.Tests.Monitors;

/// <summary>Every function at its limit, its delay and its filter: just allowed, and just tripping.</summary>
public class BoundaryTests
{
    public static TheoryData<int, string> Rows(bool withReference)
    {
        var rows = new TheoryData<int, string>();
        for (var i = 0; i < Boundary.All.Length; i++)
            if (Boundary.All[i].HasReference == withReference) rows.Add(i, Boundary.All[i].ToString());
        return rows;
    }

    public static TheoryData<int, string> EveryRow()
    {
        var rows = new TheoryData<int, string>();
        for (var i = 0; i < Boundary.All.Length; i++) rows.Add(i, Boundary.All[i].ToString());
        return rows;
    }

    [Theory]
    [MemberData(nameof(EveryRow))]
    public void At_the_limit_is_allowed_and_the_next_digit_is_not(int row, string name)
    {
        var side = Boundary.All[row];
        var allowed = side.Replayed([side.Rest, side.At, side.Rest, side.At]);
        Assert.True(allowed.Trips.Count == 0 && allowed.Excursions.Count == 0, name);
        Assert.Equal(0, allowed.Headroom.Single(h => h.Side == side.Side).Room);

        var result = side.Replayed([side.Rest, side.At, side.Above, side.At]);
        var trip = Assert.Single(result.Trips);
        Assert.Equal((side.Side, 2, 0.002m, 0m, 0m, 0.002m), (trip.Side, trip.Sample, trip.Time, trip.RequestedAt, trip.WatchingAt, trip.ExceededAt));
        Assert.Equal((trip.Value, trip.Value, 0m), (trip.Peak, trip.AvoidedBy.Limit, trip.AvoidedBy.FilterAbove));
        Assert.True(trip.AvoidedBy.Exact);
        Assert.True(result.Headroom.Single(h => h.Side == side.Side).Room < 0);
        Assert.Equal((side.Side, 0.002m, 0m, true), Assert.Single(result.Excursions) is var e ? (e.Side, e.From, e.Duration, e.Trips) : default);
    }

    // Requested from 10 ms until 20 ms, with a delay of 5 ms: watching from 15 to 19.
    [Theory]
    [MemberData(nameof(Rows), false)]
    public void The_delay_decides_from_when_on_is_compared(int row, string name)
    {
        var side = Boundary.All[row];
        foreach (var (at, trips) in new[] { (9, false), (10, false), (14, false), (15, true), (16, true), (19, true), (20, false) })
        {
            var result = side.Replayed(side.RestBut(25, k => k == at), """ "request": "on", "delay": "5 ms" """, """ "signals": { "on": { "windows": [["10 ms", "20 ms"]] } }, """);
            Assert.True(result.Trips.Count == (trips ? 1 : 0), $"{name} at {at} ms");
            if (!trips) continue;
            var trip = result.Trips[0];
            Assert.Equal((at / 1000m, 0.010m, 0.015m), (trip.Time, trip.RequestedAt, trip.WatchingAt));

            // The longest delay that still trips is the one that starts watching at that very cycle.
            Assert.Equal(at == 19 ? null : (at - 10) / 1000m, trip.AvoidedBy.DelayAbove);
        }
    }

    [Theory]
    [MemberData(nameof(Rows), true)]
    public void A_reference_is_where_watching_began(int row, string name)
    {
        var side = Boundary.All[row];
        foreach (var (at, trips) in new[] { (9, false), (14, false), (15, false), (16, true), (19, true), (20, false) })
        {
            var result = side.Replayed(side.RestBut(25, k => k >= at), """ "request": "on", "delay": "5 ms" """, """ "signals": { "on": { "windows": [["10 ms", "20 ms"]] } }, """);
            Assert.True(result.Trips.Count == (trips ? 1 : 0), $"{name} at {at} ms");
            if (trips) Assert.Equal((at / 1000m, 0.015m), (result.Trips[0].Time, result.Trips[0].WatchingAt));
        }
    }

    [Theory]
    [MemberData(nameof(EveryRow))]
    public void The_filter_is_the_time_from_the_first_exceeding_cycle(int row, string name)
    {
        var side = Boundary.All[row];
        foreach (var (filter, last, time) in new[] { ("4 ms", 8, (int?)null), ("4 ms", 9, 9), ("4 ms", 12, 9), ("3.000001 ms", 9, 9), ("3 ms", 9, 8), ("0 ms", 5, 5) })
        {
            var result = side.Replayed(side.RestBut(20, k => k >= 5 && k <= last), $""" "filter": "{filter}" """);
            Assert.True(result.TripsOf("m", side.Side).SequenceEqual(time is { } t ? [t] : []), $"{name}, filter {filter}, until {last} ms");
            Assert.Equal((0.005m, last / 1000m, time is not null), Assert.Single(result.Excursions) is var e ? (e.From, e.Until, e.Trips) : default);
            if (time is null) continue;
            Assert.Equal((0.005m, (last - 5) / 1000m), (result.Trips[0].ExceededAt, result.Trips[0].AvoidedBy.FilterAbove));
        }
    }

    [Theory]
    [MemberData(nameof(EveryRow))]
    public void One_cycle_within_the_limit_breaks_a_run(int row, string name)
    {
        var side = Boundary.All[row];
        var result = side.Replayed(side.RestBut(30, k => k >= 5 && k <= 15 && k != 9), """ "filter": "4 ms" """);
        Assert.True(result.TripsOf("m", side.Side).SequenceEqual([14m]), name);
        Assert.Equal([0.003m, 0.005m], result.Excursions.Select(e => e.Duration));
    }

    [Theory]
    [MemberData(nameof(EveryRow))]
    public void A_trip_stays_until_acknowledged_and_watching_begins_anew(int row, string name)
    {
        var side = Boundary.All[row];
        const string head = """ "signals": { "reset": { "windows": [["10 ms", "12 ms"]] } }, "acknowledge": { "signal": "reset" }, """;
        var result = side.Replayed(side.RestBut(40, k => k is 5 or 8 or 15 or 25), """ "delay": "4 ms" """, head);

        // Released at 12 ms: watching again from 16 ms; what happens at 15 ms is seen by no one.
        Assert.True(result.TripsOf("m", side.Side).SequenceEqual([5m, 25m]), name);
        Assert.Equal((0.012m, 0.016m), (result.Trips[1].RequestedAt, result.Trips[1].WatchingAt));
        Assert.Equal([0.005m, 0.008m, 0.025m], result.Excursions.Select(e => e.From));
        Assert.Equal(2, result.Coverage.Single().Trips);
    }
}
