using System.Globalization;
using MonitorSim.Plans;
using MonitorSim.Synthesis.Vectors;

namespace MonitorSim.Tests.Synthesis.Vectors;

/// <summary>Plans that nobody wrote with vectors in mind: no vector comes out otherwise than meant, and what is missed says why.</summary>
/// <remarks>Of the worked cases, basic and full, every twentieth from the thirteenth on; all of them where MONITORSIM_EVERY_CASE is set.</remarks>
public sealed class CaseVectorTests
{
    private const int First = 13, Step = 20;

    public static TheoryData<string> Cases
    {
        get
        {
            var cases = new TheoryData<string>();
            if (SharedFolder.Cases is not { } shared) return ["absent"];
            var all = Environment.GetEnvironmentVariable("MONITORSIM_EVERY_CASE") is { Length: > 0 };
            foreach (var set in new[] { "basic", "full" })
            {
                foreach (var folder in Directory.EnumerateDirectories(Path.Combine(shared, set)).Order(StringComparer.Ordinal))
                {
                    var name = Path.GetFileName(folder);
                    var number = int.Parse(name.Split('-')[^1], CultureInfo.InvariantCulture);
                    if (!File.Exists(Path.Combine(folder, "refused.txt")) && (all || number % Step == First)) cases.Add($"{set}/{name}");
                }
            }

            return cases;
        }
    }

    [SkippableTheory]
    [MemberData(nameof(Cases))]
    public void NoVectorFails(string name)
    {
        Skip.If(SharedFolder.Cases is null, "the worked cases are not beside the repository (../shared/cases)");
        var set = BoundaryVectors.Of(PlanReader.Read(Path.Combine(SharedFolder.Cases!, name, "plan.json")));
        Assert.Empty(set.Failed);
        Assert.NotEmpty(set.Vectors);
        Assert.All(set.Missed, miss => Assert.NotEmpty(miss.Why));
        foreach (var vector in set.Vectors)
        {
            var again = VectorPlans.Replayed(vector, PlanReader.Parse(PlanWriter.Write(vector.Plan), vector.Name));
            Assert.All(again.Expect, line => Assert.True(line.Holds, $"{vector.Name}: {line.Because}"));
            Assert.Empty(vector.Differences(again));
        }
    }
}
