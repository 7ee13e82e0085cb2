using System.Collections.Concurrent;
using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.Tuning;

/// <summary>Tunes many files without holding many of them: each worker reads one, tunes it and forgets it. What comes out depends neither on the number of
/// workers nor on which of them is faster.</summary>
public static class TuneFiles
{
    // So many parts wait until they are joined; a joined part is no larger than the largest staircase of its recordings.
    private const int Batch = 64;

    /// <summary>Tunes a plan's limits over files. A file that cannot be used is reported, and the others are finished.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="paths">The recordings, each a run; <c>-</c> is standard input.</param>
    /// <param name="progress">Told how many files are done, now and then.</param>
    /// <param name="workers">How many files are read at a time; 0: as many as there are processors. Memory allows fewer where files are large.</param>
    /// <param name="phases">Whether to study all phases of the plan's cycle too.</param>
    /// <param name="frontiers">Whether to keep the frontier of each recording beside the joined one, as pictures of single runs want.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="InputException">The plan is wrong, or has no cycle of its own whose phases could be studied.</exception>
    public static TunedFiles Run(Plan plan, IReadOnlyList<string> paths, IProgress<int>? progress = null, int workers = 0, bool phases = false, bool frontiers = false, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(paths);
        PlanChecks.Require(plan);
        if (phases) PhaseStudy.Require(plan);
        var budget = new MemoryBudget(GC.GetGCMemoryInfo().TotalAvailableMemoryBytes / 2);
        var done = 0;
        var outcomes = Partitioner.Create(paths, EnumerablePartitionerOptions.NoBuffering).AsParallel().AsOrdered()
            .WithDegreeOfParallelism(Math.Min(workers > 0 ? workers : Environment.ProcessorCount, 512)).WithMergeOptions(ParallelMergeOptions.NotBuffered).WithCancellation(cancel)
            .Select(path =>
            {
                var outcome = Of(plan, path, budget, phases, cancel);
                progress?.Report(Interlocked.Increment(ref done));
                return outcome;
            });

        var (problems, parts, seen) = (new List<Problem>(), new List<TuneResult>(), new Dictionary<string, string>(StringComparer.Ordinal));
        foreach (var (part, wrong) in outcomes)
        {
            problems.AddRange(wrong);
            if (part is null) continue;
            var recording = part.Recordings[0];
            if (recording.Sha256 is { } hash && !seen.TryAdd(hash, recording.Trace))
            {
                problems.Add(new(recording.Trace, $"this recording has the same content as {seen[hash]}", "count each recording once: a copy is no further run"));
                continue;
            }

            parts.Add(frontiers ? part : WithoutFrontiers(part));
            if (parts.Count == Batch) parts = [TuneJoin.Merge(parts)];
        }

        return new(parts.Count == 0 ? null : TuneJoin.Merge(parts).WithBounds(), problems);
    }

    private static (TuneResult? Part, IReadOnlyList<Problem> Problems) Of(Plan plan, string path, MemoryBudget budget, bool phases, CancellationToken cancel)
    {
        try
        {
            using var share = budget.Take(Size(path), cancel);
            var trace = PlannedTrace.Read(plan, path, cancel);
            var part = Tune.Part(plan, trace, path, cancel);
            return (phases ? part with { Phases = [.. PhaseStudy.Of(plan, trace, cancel).Select(outcome => new RunPhases(path, outcome))] } : part, []);
        }
        catch (InputException wrong)
        {
            return (null, wrong.Problems);
        }
    }

    private static TuneResult WithoutFrontiers(TuneResult part) => part with
    {
        Monitors = [.. part.Monitors.Select(limit => limit with { Runs = [.. limit.Runs.Select(run => run with { Frontier = [] })] })],
    };

    // Numbers as doubles, their exact texts where doubles do not hold them, and buffers: about three times the text.
    private static long Size(string path)
    {
        var file = new FileInfo(path);
        return file.Exists ? 3 * file.Length : 0;
    }
}

/// <summary>What came of tuning many files.</summary>
/// <param name="Result">What the usable ones say; null where there is none.</param>
/// <param name="Problems">What was wrong with the others, in the order of the files.</param>
public sealed record TunedFiles(TuneResult? Result, IReadOnlyList<Problem> Problems);
