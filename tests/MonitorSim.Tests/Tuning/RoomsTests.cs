using FsCheck.Xunit;
using MonitorSim.Explain;
using MonitorSim.Plans;
using MonitorSim.Tuning;

namespace MonitorSim.Tests.Tuning;

public sealed class RoomsTests
{
    private static readonly Hazard Way = new() { Unit = "m/s", Stopping = new ConstantDeceleration(1), Overrun = 0.01 };

    /// <summary>By hand: 40 ms of response at v and v²/2 of stopping may be 10 mm: v = -0.04 + sqrt(0.0016 + 0.02) = 106.97 mm/s; 80 mm/s and 10 % are 88 mm/s.</summary>
    [Fact]
    public void FromProductionToHazard()
    {
        var room = Rooms.Of(Result(filter: 0.016m), new() { Share = 0.1 }, Way).Monitors[0].Room;
        Assert.Equal(0.088, room.From!.Value, 1e-12);
        Assert.Equal(-0.04 + Math.Sqrt(0.0016 + 0.02), room.To!.Value, 1e-12);
        Assert.Equal(("overrun", true), (room.DecidedBy, room.IsThere));
        Assert.Equal(0.04, room.Chain!.ResponseTime, 1e-12);
    }

    /// <summary>The strictest condition decides: S = K·T + C with 2 m/s·(0.04 + v) + 0.1 may be 0.3 m: v = 60 mm/s; 1 J of 200 kg is 100 mm/s.</summary>
    [Fact]
    public void TheStrictestConditionDecides()
    {
        var hazard = Way with { Distance = 0.3, ApproachSpeed = 2, Intrusion = 0.1, Energy = 1, Inertia = 200 };
        var room = Rooms.Of(Result(filter: 0.016m), new(), hazard).Monitors[0].Room;
        Assert.Equal(0.06, room.To!.Value, 1e-12);
        Assert.Equal("separation distance", room.DecidedBy);

        // At the present 100 mm/s: 2 m/s for the 0.04 s of response and the 0.1 s of stopping, and 0.1 m.
        Assert.Equal(0.38, room.SeparationDistance!.Value, 1e-12);
        room = Rooms.Of(Result(filter: 0.016m), new(), hazard with { Distance = null }).Monitors[0].Room;
        Assert.Equal(0.1, room.To!.Value, 1e-12);
        Assert.Equal("energy", room.DecidedBy);
    }

    [Fact]
    public void AHazardThatAllowsNothingSaysSo()
    {
        var room = Rooms.Of(Result(filter: 0.016m), new(), Way with { FaultAcceleration = 100 }).Monitors[0].Room;
        Assert.Equal((null, "overrun", false), (room.To, room.DecidedBy, room.IsThere));
        Assert.Contains("no limit at all", string.Join('\n', LimitRoomStory.Lines(Rooms.Of(Result(0.016m), new(), Way with { FaultAcceleration = 100 }))), StringComparison.Ordinal);
    }

    /// <summary>A share is one of what is needed at the filter that is asked about: 80 mm/s at 16 ms and 10 % are 88, 120 mm/s at 0 ms are 132.</summary>
    [Fact]
    public void AMarginGoesWithTheFilter() =>
        Assert.Equal(0.132, Rooms.Of(Result(filter: 0.016m), new() { Share = 0.1 }, Way).Monitors[0].Room.Levers.Single(lever => lever.Name == "filter").From!.Value, 1e-12);

    [Fact]
    public void OnlyLimitsThatStopTheAxisAreConcerned()
    {
        var limit = Result(filter: 0).Monitors[0];
        Assert.True(Way.Concerns(limit));
        Assert.True((Way with { For = "bridge" }).Concerns(limit));
        Assert.True((Way with { For = "bridge.speed" }).Concerns(limit));
        Assert.False((Way with { For = "blade" }).Concerns(limit));
        Assert.False((Way with { Unit = "rad/s" }).Concerns(limit));
        Assert.False(Way.Concerns(limit with { Reaction = Reaction.None }));
        Assert.False(Way.Concerns(limit with { Side = "lower" }));
        Assert.True(Way.Concerns(limit with { Function = "SSR" }));
        Assert.False(Way.Concerns(limit with { Function = "SLI" }));
    }

    [Fact]
    public void ABoundOfTooFewRunsIsOpen()
    {
        var room = Rooms.Of(Result(0), new() { Basis = NeedBasis.DistributionFree }, Way).Monitors[0].Room;
        Assert.Equal((null, null, "overrun"), (room.From, room.IsThere, room.DecidedBy));
        Assert.Empty(room.Levers);
    }

    [Fact]
    public void WithoutAHazardNothingIsSaidOfRoom()
    {
        var room = Rooms.Of(Result(0), new()).Monitors[0].Room;
        Assert.Equal((0.12, null, null), (room.From, room.IsThere, room.DecidedBy));
        Assert.Empty(room.Levers);
    }

    [Fact]
    public void AStopTwiceAsStrongDeceleratesTwiceAsMuch() => Assert.Equal(new ConstantDeceleration(6), new ConstantDeceleration(3).Times(2));

    /// <summary>What a lever says is tried: with that value there is room, and with the next worse one there is none.</summary>
    [Property(MaxTest = 60)]
    public void LeversKeepTheirWord(byte filter, byte cycle, byte delay, byte fault, byte overrun)
    {
        var result = Result(filter % 60 / 1000m, (1 + cycle % 10) / 1000m, delay % 50 / 1000m);
        var hazard = Way with { FaultAcceleration = fault % 20 / 10.0, Overrun = 0.001 + overrun % 40 / 1000.0 };
        var room = Rooms.Of(result, new(), hazard).Monitors[0].Room;
        foreach (var lever in room.Levers.Where(lever => lever is { Enough: not null, Name: not "filter" }))
        {
            var enough = lever.Enough!.Value;
            var worse = lever.Name == "deceleration" ? Math.BitDecrement(enough) : Math.BitIncrement(enough);
            Assert.True(HasRoom(With(room.Chain!, lever.Name, enough)), lever.ToString());
            if (lever.Name != "deceleration") Assert.False(HasRoom(With(room.Chain!, lever.Name, worse)), lever.ToString());
        }

        Assert.All(room.Levers.Where(lever => lever is { Enough: null, Name: not "filter" }), lever => Assert.False(HasRoom(With(room.Chain!, lever.Name, lever.Extreme)), lever.ToString()));

        bool HasRoom(StoppingChain chain) => hazard.Allows(chain).Limit >= room.From;
    }

    /// <summary>A filter counts in whole cycles, so that room comes and goes as cycles get longer; against cycles of whole and half milliseconds up to two seconds, and those that divide the filter.</summary>
    [Property(MaxTest = 20)]
    public void NoLongerCycleThanTheLeverSaysHasRoom(byte filter, byte delay, byte overrun)
    {
        var hazard = Way with { Overrun = 0.001 + overrun % 30 / 1000.0 };
        var room = Rooms.Of(Result(filter % 60 / 1000m, 0.001m, delay % 50 / 1000m), new(), hazard).Monitors[0].Room;
        var enough = room.Levers.Single(lever => lever.Name == "cycle").Enough ?? -1;
        var cycles = Enumerable.Range(0, 4000).Select(half => half / 2000.0).Concat(Enumerable.Range(1, 100).Select(count => room.Chain!.Filter / count)).Order();
        var longest = cycles.LastOrDefault(cycle => hazard.Allows(room.Chain! with { Cycle = cycle }).Limit >= room.From, -1);
        Assert.InRange(enough, longest, longest < 0 ? -1 : longest + 0.0005);
    }

    /// <summary>By hand: 2 mm less 0.2 mm of stopping are 90 ms at 20 mm/s, 31 ms of them reaction. 44 ms of filter and a cycle are 58.8 ms with cycles of 14.7 ms, 72.5 ms with 14.5 ms, 57.5 ms with 11.5 ms.</summary>
    [Fact]
    public void RoomComesAndGoesWithTheCycle()
    {
        var room = Rooms.Of(Result(0.044m, 0.001m, 0.031m), new(), Way with { Overrun = 0.002 }).Monitors[0].Room;
        bool HasRoom(double cycle) => (Way with { Overrun = 0.002 }).Allows(room.Chain! with { Cycle = cycle }).Limit >= room.From;
        Assert.Equal([true, false, true, false], new[] { 0.0115, 0.0145, 0.0147, 0.0148 }.Select(HasRoom));
        Assert.InRange(room.Levers.Single(lever => lever.Name == "cycle").Enough!.Value, 0.0147, 0.0148);
    }

    /// <summary>Where hazard and production meet exactly there is room, by way of the lever too: 80 mm/s for 10 ms and 3.2 mm of stopping are the 4 mm allowed.</summary>
    [Fact]
    public void ALeverThatMeetsTheNeedExactlyIsEnough() => TheFiltersLeverAgreesWithTryingThemAll(5, 1, 3);

    /// <summary>A filter works on both ends; against every filter of whole milliseconds, and the shortest ones of each step.</summary>
    [Property(MaxTest = 60)]
    public void TheFiltersLeverAgreesWithTryingThemAll(byte filter, byte delay, byte overrun)
    {
        var result = Result(filter % 60 / 1000m, 0.001m, delay % 50 / 1000m);
        var hazard = Way with { Overrun = 0.001 + overrun % 30 / 1000.0 };
        var room = Rooms.Of(result, new(), hazard).Monitors[0].Room;
        var lever = room.Levers.Single(l => l.Name == "filter");
        var withRoom = Enumerable.Range(0, 61).Where(ms => hazard.Allows(room.Chain! with { Filter = ms / 1000.0 }).Limit >= result.Monitors[0].At(ms / 1000m)!.Limit).ToList();
        if (lever.Enough is not { } enough)
        {
            Assert.Empty(withRoom);
            return;
        }

        var millisecond = (int)Math.Floor(enough * 1000 + 1e-9);
        if (room.IsThere == true) Assert.Equal(withRoom.Max(), millisecond);
        else Assert.All(withRoom, ms => Assert.True(Math.Abs(ms - filter % 60) >= Math.Abs(enough * 1000 - filter % 60) - 1e-6));
    }

    /// <summary>The sentences carry the numbers, rounded to the safe side.</summary>
    [Fact]
    public void Sentences()
    {
        var lines = LimitRoomStory.Lines(Rooms.Of(Result(filter: 0.016m), new() { Share = 0.1 }, Way)).ToList();
        Assert.Equal("bridge.speed, upper: production needs 88 mm/s (what the recordings needed and a margin of 8 mm/s); the hazard allows up to 106.969 mm/s, as its overrun decides. "
            + "ROOM of 18.9694 mm/s, and the present limit of 100 mm/s lies within.", lines[0]);
        Assert.Equal("  From passing 100 mm/s to standstill: filter 16 ms + cycle 4 ms + input delay 0 ms + reaction delay 20 ms + stopping 100 ms = 140 ms; "
            + "100 mm/s when the drive acts; overrun 9 mm.", lines[1]);
        Assert.StartsWith("  filter (now 16 ms): the longest with room is ", lines[2], StringComparison.Ordinal);
        Assert.StartsWith("  cycle (now 4 ms): the longest with room is ", lines[3], StringComparison.Ordinal);
        Assert.EndsWith("; not every shorter one need have room.", lines[3], StringComparison.Ordinal);
        Assert.Equal("  reaction delay (now 20 ms): room is left up to 49.6363 ms.", lines[5]);
        // By hand: -0.04 + sqrt(0.0016 + 0.012) = 76.619 mm/s.
        var none = LimitRoomStory.Lines(Rooms.Of(Result(filter: 0.016m), new() { Share = 0.1 }, Way with { Overrun = 0.006 })).ToList();
        Assert.EndsWith("NO ROOM: 11.381 mm/s are missing. By 23.381 mm/s the present limit of 100 mm/s is more than the hazard allows.", none[0]);
        Assert.Contains(none, line => line.EndsWith("alone would make room.", StringComparison.Ordinal));
    }

    private static StoppingChain With(StoppingChain chain, string lever, double value) => lever switch
    {
        "cycle" => chain with { Cycle = value },
        "inputDelay" => chain with { InputDelay = value },
        "reactionDelay" => chain with { ReactionDelay = value },
        _ => chain with { Stopping = new ConstantDeceleration(value) },
    };

    /// <summary>One speed limit of 100 mm/s; the recordings need 120 mm/s up to a filter of 8 ms, 80 mm/s up to 30 ms, 20 mm/s up to 60 ms.</summary>
    private static TuneResult Result(decimal filter, decimal cycle = 0.004m, decimal reaction = 0.02m)
    {
        FrontierStep[] frontier = [new(0.008m, 0.12, 1, 1.008m, "run"), new(0.030m, 0.08, 1, 1.03m, "run"), new(0.060m, 0.02, 1, 1.06m, "run")];
        var critical = frontier.First(step => filter <= step.Filter).Limit;
        return new()
        {
            Plan = new("saw", null, cycle, 0, reaction),
            Recordings = [new("run", null, 1000, 1, 0.001m)],
            Monitors = [new()
            {
                Axis = "bridge", Monitor = "speed", Function = "SLS", Side = "upper", Unit = "m/s", Written = "100 mm/s", Limit = 0.1, Filter = filter, Reaction = Reaction.Stop1,
                Critical = critical, Frontier = frontier, Runs = [new("run", critical)], Bounds = LimitBounds.Of([critical]),
            }],
        };
    }
}
