using System.Globalization;
using MonitorSim.Explain;
using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Explain;

/// <summary>Every worked case has a story, with every trip's time in it.</summary>
public class CaseSentencesTests
{
    [SkippableTheory]
    [InlineData("basic")]
    [InlineData("full")]
    public void Every_case_is_told(string set)
    {
        Skip.If(SharedFolder.Cases is null, "the worked cases are not beside the repository (../shared/cases)");
        var told = 0;
        foreach (var folder in Directory.EnumerateDirectories(Path.Combine(SharedFolder.Cases!, set)).Order(StringComparer.Ordinal))
        {
            if (File.Exists(Path.Combine(folder, "refused.txt"))) continue;
            var plan = PlanReader.Read(Path.Combine(folder, "plan.json"));
            var result = Replay.Run(plan, PlannedTrace.Read(plan, Path.Combine(folder, "trace.csv")));
            var lines = Explanation.Lines(result);
            var heads = lines.Where(line => line.StartsWith("At ", StringComparison.Ordinal)).ToList();
            Assert.Equal(Math.Min(20, result.Trips.Count), heads.Count);
            foreach (var (trip, head) in result.Trips.Zip(heads))
                Assert.StartsWith($"At {trip.Time.ToString("0.#########", CultureInfo.InvariantCulture)} s {trip.Axis}, {trip.Monitor}", head, StringComparison.Ordinal);
            if (result.Trips.Count > 20) Assert.Contains(lines, line => line.StartsWith($"And {result.Trips.Count - 20} more trip", StringComparison.Ordinal));

            // Whatever was watched is spoken of: as a trip, as room, or as not challenged.
            foreach (var coverage in result.Coverage.Where(c => c.Trips == 0))
                Assert.Contains(lines, line => line.StartsWith($"{coverage.Axis}, {coverage.Monitor}", StringComparison.Ordinal));
            Assert.All(lines, line => Assert.DoesNotContain("  ", line.TrimStart(), StringComparison.Ordinal));
            Assert.All(lines, line => Assert.DoesNotContain("the measure", line, StringComparison.Ordinal));
            told++;
        }

        Assert.True(told > 20, $"only {told} cases in '{set}'");
    }
}
