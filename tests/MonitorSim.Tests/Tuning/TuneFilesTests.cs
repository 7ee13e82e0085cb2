using MonitorSim.Tuning;

namespace MonitorSim.Tests.Tuning;

public sealed class TuneFilesTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("monitorsim").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    /// <summary>More files than are joined at a time, by one worker and by many, forwards and backwards: the same bytes as all of them in memory.</summary>
    [Fact]
    public void NeitherWorkersNorOrderChangeAByte()
    {
        var files = Enumerable.Range(0, 150).Select(k => Write($"run{k:000}.csv", [.. Enumerable.Range(0, 12).Select(n => (byte)((k * 37 + n * n * 11) % 256))])).ToList();
        var one = TuneFiles.Run(TuneBench.Plan, files, workers: 1);
        var done = new Steps();
        var many = TuneFiles.Run(TuneBench.Plan, files, done, workers: 8);
        Assert.Empty(one.Problems);
        Assert.Equal(150, done.Count);
        Assert.Equal(TuneBench.Json(one.Result!), TuneBench.Json(many.Result!));
        Assert.Equal(TuneBench.Json(one.Result!), TuneBench.Json(TuneFiles.Run(TuneBench.Plan, [.. files.AsEnumerable().Reverse()]).Result!));
        Assert.Equal(TuneBench.Json(one.Result!), TuneBench.Json(Tune.Join([TuneFiles.Run(TuneBench.Plan, [.. files.Take(70)]).Result!, TuneFiles.Run(TuneBench.Plan, [.. files.Skip(70)]).Result!])));
        Assert.Equal(150, one.Result!.Monitors[0].Runs.Count);
    }

    [Fact]
    public void ABadFileIsReportedAndTheOthersFinished()
    {
        var (good, copy) = (Write("good.csv", [0x41, 0x42]), Path.Combine(_folder, "copy.csv"));
        File.Copy(good, copy);
        var bad = Path.Combine(_folder, "bad.csv");
        File.WriteAllText(bad, "t [ms],v\n0,1\n");
        var tuned = TuneFiles.Run(TuneBench.Plan, [bad, good, Path.Combine(_folder, "none.csv"), copy]);
        Assert.Equal(good, Assert.Single(tuned.Result!.Recordings).Trace);
        Assert.Equal([bad, bad, Path.Combine(_folder, "none.csv"), copy], tuned.Problems.Select(problem => problem.Place));
        Assert.Equal($"{copy}: this recording has the same content as {good}; count each recording once: a copy is no further run", tuned.Problems[^1].ToString());
        Assert.Null(TuneFiles.Run(TuneBench.Plan, [bad]).Result);
    }

    /// <summary>The frontier of each recording is kept only where that was asked.</summary>
    [Fact]
    public void FrontiersOfSingleRecordings()
    {
        string[] files = [Write("a.csv", [0x41, 0x47, 0x45]), Write("b.csv", [0x43, 0x42, 0x46])];
        Assert.All(TuneFiles.Run(TuneBench.Plan, files).Result!.Monitors.SelectMany(limit => limit.Runs), run => Assert.Empty(run.Frontier));
        var kept = TuneFiles.Run(TuneBench.Plan, files, frontiers: true).Result!;
        Assert.All(kept.Monitors.Single(limit => limit is { Monitor: "steps", Level: 0 }).Runs, run => Assert.Equal(run.Trace, Assert.Single(run.Frontier.Select(step => step.Trace).Distinct())));
    }

    [Fact]
    public void PhasesNeedACycle()
    {
        var file = Write("a.csv", [0x41, 0x47, 0x45]);
        Assert.Throws<InputException>(() => TuneFiles.Run(TuneBench.Plan, [file], phases: true));
        Assert.Equal(file, TuneFiles.Run(TuneBench.Plan with { Cycle = "2 ms" }, [file], phases: true).Result!.Phases.Select(phases => phases.Trace).Distinct().Single());
    }

    private string Write(string name, byte[] cells)
    {
        var path = Path.Combine(_folder, name);
        File.WriteAllLines(path, cells.Select((c, k) => FormattableString.Invariant($"{k},{c & 7},{c >> 3 & 7},{(c < 64 ? 0 : 1)}")).Prepend("t [ms],v,p,r"));
        return path;
    }

    private sealed class Steps : IProgress<int>
    {
        private int _count;

        public int Count => _count;

        public void Report(int value) => Interlocked.Increment(ref _count);
    }
}
