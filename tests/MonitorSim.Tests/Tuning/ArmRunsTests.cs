using System.Globalization;
using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Quantities;
using MonitorSim.Traces;
using MonitorSim.Tuning;

namespace MonitorSim.Tests.Tuning;

/// <summary>Twenty recordings of one programme of a six-joint arm (open data arm6: S. Liu, M. Althoff, "Reachset conformance of forward dynamic models for the formal analysis of
/// robots", IROS 2018; CC0 1.0): what a person with a plan and twenty recordings is told, and each number confirmed by replaying.</summary>
public sealed class ArmRunsTests
{
    private const int Runs = 20;

    private static readonly Plan Guiding = PlanReader.Parse("""
        { "plan": 1, "title": "Arm: hand guiding", "signals": { "guide": { "windows": [["0.5 s", "3.2 s"]] }, "end": { "windows": [["3.4 s", "9 s"]] } },
          "axes": { "shoulder": { "motion": "rotary", "stops": { "STO": {} },
            "channels": { "position": { "column": "q2_rad", "unit": "rad" }, "velocity": { "column": "qd2_rad_s", "unit": "rad/s" } },
            "monitors": [
              { "name": "guided speed", "function": "SLS", "request": "guide", "delay": "100 ms", "limit": "0.3 rad/s", "filter": "24 ms", "reaction": "none" },
              { "name": "guided range", "function": "SLP", "request": "guide", "lower": "-1.2 rad", "upper": "-0.2 rad", "reaction": "none" },
              { "name": "still moving", "function": "SSR", "request": "guide", "lower": "0.01 rad/s", "upper": "2 rad/s", "reaction": "none" },
              { "name": "no way back", "function": "SDI", "request": "guide", "allow": "positive", "tolerance": "0 rad", "reaction": "none" },
              { "name": "parked", "function": "SOS", "request": "end", "window": "0.001 rad", "speed": "0.1 rad/s", "filter": "16 ms", "reaction": "none" } ] } } }
        """);

    private static readonly Lazy<(List<Trace> Traces, TuneResult Result)> Tuned = new(() =>
    {
        var traces = Enumerable.Range(1, Runs).Select(run => PlannedTrace.Read(Guiding, SharedFolder.Recording(string.Create(CultureInfo.InvariantCulture, $"arm6/run_{run:000}.csv")))).ToList();
        return (traces, Tune.Run(Guiding, traces));
    });

    /// <summary>The definition, on the columns themselves: over all windows of 24 ms (7 samples at 250 Hz) of the watched part, the largest of the smallest |v|.</summary>
    [SkippableFact]
    public void TheNeededSpeedIsThatOfTheColumns()
    {
        var (traces, result) = Recordings();
        var limit = result.Monitors.Single(m => m.Monitor == "guided speed");
        var needed = traces.Select(trace =>
        {
            var speeds = ((NumberColumn)trace.Find("qd2_rad_s")!).Values.ToArray();
            var watched = Enumerable.Range(0, trace.Count).Where(k => trace.Times[k] is >= 600_000_000 and < 3_200_000_000).Select(k => Math.Abs(speeds[k])).ToArray();
            return Enumerable.Range(0, watched.Length - 6).Max(k => watched[k..(k + 7)].Min());
        }).ToList();
        Assert.Equal(needed, limit.Runs.Select(run => run.Critical!.Value));
        Assert.Equal(needed.Max(), limit.Critical);
        Assert.Equal(traces[needed.IndexOf(needed.Max())].Name, limit.Deciding!.Trace);
    }

    /// <summary>Twenty runs: the largest of them covers 95 % with a confidence of 1 - 0.95^20 = 64 %, and 59 would be needed; the normal bound is mean + 2.3960 s (published table of
    /// one-sided 95/95 factors, n = 20).</summary>
    [SkippableFact]
    public void HowSureThatIsForTheNextRun()
    {
        var limit = Recordings().Result.Monitors.Single(m => m.Monitor == "guided speed");
        Assert.Equal((59, null), (limit.Bounds.RunsNeeded, limit.Bounds.DistributionFree));
        Assert.Equal(1 - Math.Pow(0.95, 20), limit.Bounds.Reached, 1e-12);
        var values = limit.Runs.Select(run => run.Critical!.Value).ToList();
        var deviation = Math.Sqrt(values.Sum(v => (v - values.Average()) * (v - values.Average())) / (Runs - 1));
        Assert.Equal(values.Average() + 2.3960 * deviation, limit.Bounds.Normal!.Value, 5e-5 * deviation);
    }

    /// <summary>At the limit that is needed no recording trips; at the next double on the other side the deciding one does, where it was said.</summary>
    [SkippableTheory]
    [InlineData("guided speed", "upper")]
    [InlineData("guided range", "lower")]
    [InlineData("guided range", "upper")]
    [InlineData("still moving", "lower")]
    [InlineData("still moving", "upper")]
    [InlineData("parked", "window")]
    [InlineData("parked", "speed")]
    public void ReplayingConfirmsTheLimit(string monitor, string side)
    {
        var (traces, result) = Recordings();
        var limit = result.Monitors.Single(m => m.Monitor == monitor && m.Side == side);
        var critical = limit.Critical!.Value;
        Assert.All(traces, trace => Assert.DoesNotContain(Replay.Run(With(limit, critical), trace).Trips, trip => IsOf(trip, limit)));
        var beyond = With(limit, limit.IsLower ? Math.BitIncrement(critical) : Math.BitDecrement(critical));
        var deciding = traces.Single(trace => trace.Name == limit.Deciding!.Trace);
        var trip = Replay.Run(beyond, deciding).Trips.First(trip => IsOf(trip, limit));
        Assert.InRange(trip.Time, limit.Deciding!.From + limit.Filter, limit.Deciding.Until);
    }

    /// <summary>Any filter longer than the one named keeps the present limit in all recordings; that one itself does not in one of them.</summary>
    [SkippableTheory]
    [InlineData("guided speed", "upper")]
    [InlineData("parked", "window")]
    public void ReplayingConfirmsTheFilter(string monitor, string side)
    {
        var (traces, result) = Recordings();
        var limit = result.Monitors.Single(m => m.Monitor == monitor && m.Side == side);
        var above = (long)(limit.FilterAbove!.Value * 1_000_000_000);
        bool Trips(long filter) => traces.Any(trace => Replay.Run(Changed(monitor, m => m with { Filter = $"{filter} ns" }), trace).Trips.Any(trip => IsOf(trip, limit)));
        Assert.True(Trips(above));
        Assert.False(Trips(above + 1));
    }

    private static (List<Trace> Traces, TuneResult Result) Recordings()
    {
        SharedFolder.Recording("arm6/run_020.csv");
        return Tuned.Value;
    }

    private static bool IsOf(Trip trip, TunedLimit limit) => trip.Monitor == limit.Monitor && trip.Side == limit.Side;

    // The number as JSON has it, a decimal: comparing is exact, and the double itself may lie a hair below the sample's text.
    private static Plan With(TunedLimit limit, double si)
    {
        var value = Quantity.Parse(string.Create(CultureInfo.InvariantCulture, $"{si:R} {limit.Unit}"));
        return Changed(limit.Monitor, monitor => (monitor, limit.Side) switch
        {
            (Sls sls, _) => sls with { Limit = value },
            (Slp slp, "lower") => slp with { Lower = value },
            (Slp slp, _) => slp with { Upper = value },
            (Ssr ssr, "lower") => ssr with { Lower = value },
            (Ssr ssr, _) => ssr with { Upper = value },
            (Sos sos, "speed") => sos with { Speed = value },
            (Sos sos, _) => sos with { Window = value },
            _ => throw new InvalidOperationException(limit.Side),
        });
    }

    private static Plan Changed(string name, Func<MonitorPlan, MonitorPlan> change)
    {
        var axis = Guiding.Axes["shoulder"];
        return Guiding with { Axes = new Dictionary<string, AxisPlan> { ["shoulder"] = axis with { Monitors = [.. axis.Monitors.Select(monitor => monitor.Name == name ? change(monitor) : monitor)] } } };
    }
}
