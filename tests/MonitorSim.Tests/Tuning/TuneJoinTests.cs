using FsCheck.Xunit;
using MonitorSim.Tuning;

namespace MonitorSim.Tests.Tuning;

public sealed class TuneJoinTests
{
    /// <summary>However recordings are split into parts, whatever the order, and however the parts are grouped: the same bytes as one run over all.</summary>
    [Property(MaxTest = 60)]
    public void AnyPartitionAndOrderGivesTheSameBytes(byte[][] cells, int seed)
    {
        var traces = cells.Select((row, k) => TuneBench.Trace($"run {k}", row ?? [])).DefaultIfEmpty(TuneBench.Trace("run", [1, 2, 3])).ToList();
        var whole = TuneBench.Json(Tune.Run(TuneBench.Plan, traces));
        var random = new Random(seed);
        var parts = traces.GroupBy(_ => random.Next(3)).Select(group => Written(Tune.Run(TuneBench.Plan, [.. group.OrderBy(_ => random.Next())]))).ToList();
        while (parts.Count > 1)
        {
            var (a, b) = (random.Next(parts.Count), random.Next(parts.Count - 1));
            var one = parts[a];
            parts.RemoveAt(a);
            parts[b] = Written(Tune.Join([parts[b], one]));
        }

        Assert.Equal(whole, TuneBench.Json(parts[0]));
    }

    /// <summary>Where one part never trips and even the last start trips in the other, no delay helps: null of one kind is not null of the other.</summary>
    [Fact]
    public void NoDelayIsTheWorstDelay()
    {
        var (late, early, quiet) = (TuneBench.Trace("late", [0x40, 0x40, 0x47]), TuneBench.Trace("early", [0x47, 0x47, 0x40]), TuneBench.Trace("quiet", [0x40]));
        Assert.Equal((null, true), Delay(late));
        Assert.Equal((0.001m, false), Delay(early));
        Assert.Equal((null, false), Delay(quiet));
        Assert.Equal((null, true), Delay(early, late, quiet));
        Assert.Equal((0.001m, false), Delay(quiet, early));

        static (decimal?, bool) Delay(params MonitorSim.Trace[] traces)
        {
            var limit = Tune.Join([.. traces.Select(trace => Tune.Run(TuneBench.Plan, [trace]))]).Monitors.Single(m => m.Monitor == "steps" && m.Level == 0);
            return (limit.DelayAbove, limit.NoDelayHelps);
        }
    }

    /// <summary>The filter and the delay that all recordings together trip are the longest of those that one trips.</summary>
    [Property(MaxTest = 60)]
    public void TheLongestOfAllIsTheLongestOfAny(byte[][] cells)
    {
        var parts = cells.Select((row, k) => Tune.Run(TuneBench.Plan, [TuneBench.Trace($"run {k}", row ?? [])])).DefaultIfEmpty(Tune.Run(TuneBench.Plan, [TuneBench.Trace("run", [0x47])])).ToList();
        var joined = Tune.Join(parts);
        foreach (var limit in joined.Monitors)
        {
            var single = parts.SelectMany(part => part.Monitors).Where(other => other.Key == limit.Key).ToList();
            Assert.Equal(single.Select(other => other.FilterAbove).OfType<decimal>().Select(above => (decimal?)above).DefaultIfEmpty().Max(), limit.FilterAbove);
            if (!limit.NoDelayHelps) Assert.Equal(single.Select(other => other.DelayAbove).OfType<decimal>().Select(above => (decimal?)above).DefaultIfEmpty().Max(), limit.DelayAbove);
        }
    }

    /// <summary>Recordings, runs and phases are in the order of their names, and of two recordings that need the same the first by name decides.</summary>
    [Fact]
    public void TheOrderIsThatOfTheNames()
    {
        TuneResult Part(string name) => Tune.Run(TuneBench.Plan, [TuneBench.Trace(name, [0x41, 0x47, 0x42])]) with { Phases = [new(name, new("x", "range", null, null, null, null, 0))] };
        var joined = Tune.Join([Part("b"), Part("c"), Part("a")]);
        Assert.Equal(["a", "b", "c"], joined.Recordings.Select(recording => recording.Trace));
        Assert.Equal(["a", "b", "c"], joined.Phases.Select(phases => phases.Trace));
        Assert.All(joined.Monitors.Where(limit => limit.Critical is not null), limit => Assert.Equal(["a", "b", "c"], limit.Runs.Select(run => run.Trace)));
        Assert.All(joined.Monitors.SelectMany(limit => limit.Frontier), step => Assert.Equal("a", step.Trace));
        Assert.Equal(joined.Monitors.OrderBy(limit => limit.Monitor, StringComparer.Ordinal).ThenBy(limit => limit.Side, StringComparer.Ordinal).ThenBy(limit => limit.Level), joined.Monitors);
    }

    [Fact]
    public void PartsOfAnotherPlanAreRefused()
    {
        var trace = TuneBench.Trace("run", [1, 2, 3]);
        var other = TuneBench.Plan with { Sha256 = new('a', 64), Title = "another" };
        var wrong = Assert.Throws<InputException>(() => Tune.Join([Tune.Run(TuneBench.Plan, [trace]), Tune.Run(other, [trace])], ["a.json", "b.json"]));
        Assert.Equal("b.json: this part was tuned with another plan than a.json: 'another' (aaaaaaaa…), not 'bench'; tune all parts with the same plan file",
            Assert.Single(wrong.Problems).ToString());
    }

    [Fact]
    public void PartsWithOtherLimitsAreRefused()
    {
        var part = Tune.Run(TuneBench.Plan, [TuneBench.Trace("run", [1, 2, 3])]);
        var changed = part with { Monitors = [.. part.Monitors.Skip(1).Select((limit, k) => k == 0 ? limit with { Limit = 7, Written = "7 m/s" } : limit)] };
        var said = Assert.Throws<InputException>(() => Tune.Join([part, changed], ["a.json", "b.json"])).Problems.Select(problem => problem.ToString()).ToList();
        Assert.Equal(2, said.Count);
        Assert.StartsWith("b.json: x.range, side upper has the limit 7 m/s and the filter 0.002 s, in a.json 5 mm/s and 0.002 s;", said[0]);
        Assert.StartsWith("b.json: this part has no x.range, side lower, a.json has;", said[1]);
    }

    /// <summary>The worst phase of some recordings is not that of all.</summary>
    [Fact]
    public void PartsWithAndWithoutPhasesDoNotJoin()
    {
        var (a, b) = (Tune.Run(TuneBench.Plan, [TuneBench.Trace("a", [1])]), Tune.Run(TuneBench.Plan, [TuneBench.Trace("b", [2])]));
        var studied = b with { Phases = [new("b", new("x", "range", null, null, null, null, 0))] };
        foreach (TuneResult[] parts in new[] { new[] { a, studied }, [studied, a] })
        {
            var names = parts.Select(part => part.Recordings[0].Trace + ".json").ToArray();
            Assert.StartsWith($"{names[1]}: b.json was tuned with --phases, a.json was not", Assert.Throws<InputException>(() => Tune.Join(parts, names)).Message);
        }
    }

    [Fact]
    public void ACopyOfARecordingIsNoFurtherRun()
    {
        var (times, columns) = (new long[] { 0 }, TuneBench.Trace("run", [1]).Columns);
        var parts = new[] { "a", "b" }.Select(name => Tune.Run(TuneBench.Plan, [new MonitorSim.Trace(name, times, columns, "same bytes")])).ToList();
        Assert.StartsWith("b.json: the recording b has the same content as a of a.json;", Assert.Throws<InputException>(() => Tune.Join(parts, ["a.json", "b.json"])).Message);
    }

    // By way of the file: what is written and read again is what was there.
    private static TuneResult Written(TuneResult part)
    {
        var text = TuneBench.Json(part);
        var read = TuneReader.Parse(text);
        Assert.Equal(text, TuneBench.Json(read));
        return read;
    }
}
