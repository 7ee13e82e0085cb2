using Fractions;
using FsCheck.Xunit;
using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Quantities;
using MonitorSim.Traces;
using MonitorSim.Tuning;

namespace MonitorSim.Tests.Tuning;

/// <summary>Spec §7, for every function and side, by whole replays: at the critical limit nothing trips, at the next double on the other side of it something does.</summary>
public sealed class CriticalReplayTests
{
    private static readonly Quantity Huge = "1000000 m/s", HugeWay = "1000000 m", HugeRate = "1000000 m/s²";

    /// <summary>Each side of each function: its limit's unit, and the monitor with that limit, all else out of the way.</summary>
    private static readonly Dictionary<string, (string Unit, Func<Quantity, MonitorPlan> Monitor)> Sides = new()
    {
        ["SLS upper"] = ("m/s", limit => new Sls { Name = "m", Limit = limit }),
        ["SLS signed upper"] = ("m/s", limit => new Sls { Name = "m", Limit = limit, Signed = true }),
        ["SLS approach"] = ("m/s", limit => new Sls { Name = "m", Limit = "1 m/s", Approach = new() { Deceleration = "1 m/s²", Tolerance = limit } }),
        ["SLS level 0 upper"] = ("m/s", limit => new Sls { Name = "m", Levels = [new() { When = "strict", Limit = limit }, new() { When = "always", Limit = "4 m/s" }] }),
        ["SLS level 1 upper"] = ("m/s", limit => new Sls { Name = "m", Levels = [new() { When = "strict", Limit = "2 m/s" }, new() { When = "always", Limit = limit }] }),
        ["SSR upper"] = ("m/s", limit => new Ssr { Name = "m", Upper = limit }),
        ["SSR lower"] = ("m/s", limit => new Ssr { Name = "m", Lower = limit }),
        ["SSR signed lower"] = ("m/s", limit => new Ssr { Name = "m", Lower = limit, Signed = true }),
        ["SDI upper"] = ("m", limit => new Sdi { Name = "m", Allow = Direction.Positive, Tolerance = limit }),
        ["SDI negative upper"] = ("m", limit => new Sdi { Name = "m", Allow = Direction.Negative, Tolerance = limit }),
        ["SDI start upper"] = ("m", limit => new Sdi { Name = "m", Allow = Direction.Positive, Tolerance = limit, Reference = DirectionReference.Start }),
        ["SLA upper"] = ("m/s²", limit => new Sla { Name = "m", Limit = limit }),
        ["SLA quadrant upper"] = ("m/s²", limit => new Sla { Name = "m", Limit = limit, Deceleration = HugeRate }),
        ["SLA deceleration"] = ("m/s²", limit => new Sla { Name = "m", Limit = HugeRate, Deceleration = limit }),
        ["SAR upper"] = ("m/s²", limit => new Sar { Name = "m", Upper = limit }),
        ["SAR lower"] = ("m/s²", limit => new Sar { Name = "m", Lower = limit }),
        ["SLT upper"] = ("N", limit => new Slt { Name = "m", Limit = limit }),
        ["STR upper"] = ("N", limit => new Str { Name = "m", Upper = limit }),
        ["STR lower"] = ("N", limit => new Str { Name = "m", Lower = limit }),
        ["SLP upper"] = ("m", limit => new Slp { Name = "m", Upper = limit }),
        ["SLP lower"] = ("m", limit => new Slp { Name = "m", Lower = limit }),
        ["SLI increment"] = ("m", limit => new Sli { Name = "m", Increment = limit, MoveTime = "3 s", Window = HugeWay }),
        ["SLI window"] = ("m", limit => new Sli { Name = "m", Increment = HugeWay, MoveTime = "2 s", Window = limit }),
        ["SOS window"] = ("m", limit => new Sos { Name = "m", Window = limit, Speed = Huge }),
        ["SOS speed"] = ("m/s", limit => new Sos { Name = "m", Window = HugeWay, Speed = limit }),
        ["SMT upper"] = ("°C", limit => new Smt { Name = "m", Limit = limit, Reaction = Reaction.Stop0 }),
    };

    public static TheoryData<string> Names => [.. Sides.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void TripsIfAndOnlyIfTheLimitIsBelowTheCriticalOne(string name)
    {
        var random = new Random(name.Sum(letter => letter));
        var tried = 0;
        for (var k = 0; k < 60; k++)
        {
            // With a delay, which level is in force depends on how lax the others are: another limit, another question.
            var trace = Recording(random, isAskedOnce: name == "SLS approach");
            if (Holds(name, trace, name.Contains("level", StringComparison.Ordinal) ? 0 : random.Next(4), random.Next(3))) tried++;
        }

        Assert.True(tried >= 8, $"only {tried} recordings challenged it");
    }

    /// <summary>Filter and delay by trying them: with the longest filter that trips it trips, a nanosecond longer it does not; and of all delays of whole samples, the longest that trips.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void TheLongestFilterAndTheLongestDelayThatTrip(string name)
    {
        var random = new Random(name.Sum(letter => letter) + 1);
        var (filters, delays) = (0, 0);
        var isApproach = name == "SLS approach";
        for (var k = 0; k < (isApproach ? 240 : 40); k++)
        {
            var trace = Recording(random, isAskedOnce: isApproach);
            var (unit, monitor) = Sides[name];
            var (side, level, limit) = (name.Split(' ')[^1], LevelOf(name), (name == "SMT upper" ? 22 : 1) + random.Next(4));
            var (delay, filter) = (Seconds(random.Next(3)), Seconds(random.Next(3)));
            Plan With(Quantity lasting, Quantity waiting) => Of(monitor($"{limit} {unit}") with { Request = "on", Delay = waiting, Filter = lasting, Reaction = name == "SMT upper" ? Reaction.Stop0 : Reaction.None });
            bool Trips(Quantity lasting, Quantity waiting) => Replay.Run(With(lasting, waiting), trace).Trips.Any(trip => trip.Side == side);
            var tuned = Tune.Run(With(filter, delay), [trace]).Monitors.Single(m => m.Side == side && m.Level == level);
            Assert.Equal(tuned.FilterAbove is not null, Trips("0 s", delay));
            if (tuned.FilterAbove is { } above)
            {
                filters++;
                Assert.True(Trips(Seconds(above), delay), $"{above} s");
                Assert.False(Trips(Seconds(above + 0.000000001m), delay), $"more than {above} s");
            }

            // An approach is compared while the delay runs, so that one beyond the end of the recording is a question of its own.
            var longest = Enumerable.Range(0, trace.Count - FirstAsked(trace)).Where(waiting => Trips(filter, Seconds(waiting))).Select(waiting => (decimal?)waiting).LastOrDefault();
            if (tuned.NoDelayHelps) Assert.NotNull(longest);
            else Assert.Equal(longest, tuned.DelayAbove);
            if (tuned.DelayAbove is not null) delays++;
        }

        // What is compared while the delay runs only grows with it: its longest delay is the last one or none.
        Assert.True(filters >= 8 && (delays >= 3 || isApproach), $"only {filters} recordings exceeded it, and {delays} delays mattered");

        static int FirstAsked(MonitorSim.Trace trace) => ((NumberColumn)trace.Find("r")!).Values.IndexOf(1) is >= 0 and var first ? first : 0;

        static Quantity Seconds(decimal seconds) => FormattableString.Invariant($"{seconds} s");
    }

    /// <summary>Two recordings of one quantity: the tolerance is tuned like any other limit.</summary>
    [Property(MaxTest = 60)]
    public void TwoChannels(int seed)
    {
        var random = new Random(seed);
        var trace = Recording(random, isAskedOnce: false);
        Plan With(Quantity tolerance) => Of(new Sls { Name = "m", Limit = Huge, Reaction = Reaction.None }, new SecondChannelPlan { Column = "q", Tolerance = tolerance, Time = $"{seed & 1} s", Unit = "m/s" });
        var limit = Tune.Run(With("0 m/s"), [trace]).Monitors.Single(m => m.Function == "two channels");
        if (limit.Critical is not { } critical) return;
        bool Trips(double tolerance) => Replay.Run(With(Exactly(tolerance, "m/s")), trace).Trips.Any(trip => trip.Monitor == limit.Monitor);
        Assert.False(Trips(critical));
        if (critical > 0) Assert.True(Trips(Math.BitDecrement(critical)));
    }

    /// <returns>Whether the recording challenged the side.</returns>
    private static bool Holds(string name, MonitorSim.Trace trace, int delay, int filter)
    {
        var (unit, monitor) = Sides[name];
        Plan With(Quantity limit) => Of(monitor(limit) with { Request = "on", Delay = $"{delay} s", Filter = $"{filter} s", Reaction = name == "SMT upper" ? Reaction.Stop0 : Reaction.None });
        var (side, level) = (name.Split(' ')[^1], LevelOf(name));
        int Trips(Quantity limit) => Replay.Run(With(limit), trace).Trips.Count(trip => trip.Side == side);
        var tuned = Tune.Run(With($"1 {unit}"), [trace]).Monitors.Single(m => m.Side == side && m.Level == level);
        var far = new Quantity(tuned.IsLower ? -1_000_000 : 1_000_000, Unit.Parse(unit));
        var isSigned = name.Contains("signed", StringComparison.Ordinal) || name is "STR upper" or "STR lower" or "SLP upper" or "SLP lower" or "SMT upper";
        if (tuned.Critical is not { } critical)
        {
            if (name != "SLA deceleration" && (isSigned || !tuned.IsLower)) Assert.Equal(Trips(isSigned ? far : Exactly(0, unit)), Trips(Exactly(0, unit)));
            return false;
        }

        // A magnitude's limit cannot be less than 0, and only an approach can need less.
        if (!isSigned && (critical < 0 || (critical == 0 && name == "SLA deceleration"))) return false;
        Assert.Equal(tuned.IsLower && !isSigned ? 0 : Trips(far), Trips(Exactly(critical, unit)));
        if (critical == 0 && !isSigned && !tuned.IsLower) return false;
        Assert.True(Trips(Exactly(tuned.IsLower ? Math.BitIncrement(critical) : Math.BitDecrement(critical), unit)) > 0,
            $"{name}, delay {delay} s, filter {filter} s: critical {critical}");
        return true;
    }

    private static int? LevelOf(string name) => name.Contains("level", StringComparison.Ordinal) ? name[10] - '0' : null;

    private static Quantity Exactly(double si, string unit) => new(Fraction.FromDouble(si), Unit.Parse(unit));

    private static MonitorSim.Trace Recording(Random random, bool isAskedOnce)
    {
        var count = 8 + random.Next(16);
        var from = random.Next(3);
        NumberColumn Column(string name, Func<int, int> value) => new(name, null, [.. Enumerable.Range(0, count).Select(k => (double)value(k))]);
        return new("random", [.. Enumerable.Range(0, count).Select(k => k * 1_000_000_000L)],
            [Column("p", _ => random.Next(-9, 10)), Column("v", _ => random.Next(-6, 7)), Column("a", _ => random.Next(-6, 7)), Column("q", _ => random.Next(-6, 7)),
             Column("T", _ => random.Next(20, 30)), Column("s", _ => random.Next(2)), Column("r", k => isAskedOnce ? k >= from ? 1 : 0 : random.Next(8) == 0 ? 0 : 1)]);
    }

    private static Plan Of(MonitorPlan monitor, SecondChannelPlan? second = null) => new()
    {
        Signals = new Dictionary<string, SignalPlan> { ["on"] = new() { Column = "r" }, ["strict"] = new() { Column = "s" } },
        Axes = new Dictionary<string, AxisPlan>
        {
            ["x"] = new()
            {
                Channels = new()
                {
                    Position = new() { Column = "p", Unit = "m" },
                    Velocity = new() { Column = "v", Unit = "m/s", Second = second },
                    Acceleration = new() { Column = "a", Unit = "m/s²" },
                    Torque = new() { Column = "q", Unit = "N" },
                    Temperature = new() { Column = "T", Unit = "°C" },
                },
                Stops = new() { Sto = new() },
                Monitors = [monitor],
            },
        },
    };
}
