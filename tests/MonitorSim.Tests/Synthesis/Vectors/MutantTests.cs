using MonitorSim.Plans;
using MonitorSim.Synthesis.Vectors;

namespace MonitorSim.Tests.Synthesis.Vectors;

/// <summary>Every wrong rule fails at least one vector of every plan that it could show on.</summary>
public sealed class MutantTests
{
    private static readonly IReadOnlyList<Mutant> Mutants = [.. ChainMutants.All, .. StopMutants.All];

    public static TheoryData<string> Names => [.. Mutants.Select(mutant => mutant.Name)];

    /// <summary>A mutant is killed where an <c>expect</c> line of a vector does not hold, or where the outcome is not that of the manifest, which holds
    /// what no <c>expect</c> line can say: sides, outputs, and that a state does not come too early.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void IsKilledByEveryPlanItShowsOn(string name)
    {
        var mutant = Mutants.First(one => one.Name == name);
        var shown = 0;
        foreach (var plan in VectorPlans.Demo.Append("slab-saw.json"))
        {
            var set = VectorPlans.Of(plan).Set;
            if (set.Vectors.Count == 0) continue;
            foreach (var (what, _) in mutant.Changes(set.Vectors[0].Plan, set.Period))
            {
                shown++;
                Assert.True(set.Vectors.Any(vector => Fails(vector, mutant.Changes(vector.Plan, set.Period).First(change => change.What == what).Plan)), $"{plan}: no vector fails when {name} ({what})");
            }
        }

        Assert.NotEqual(0, shown);
    }

    private static bool Fails(BoundaryVector vector, Plan mutated)
    {
        var result = VectorPlans.Replayed(vector, mutated);
        return result.Expect.Any(line => !line.Holds) || vector.Differences(result).Any();
    }
}
