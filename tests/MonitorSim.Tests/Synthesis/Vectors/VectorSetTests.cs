using MonitorSim.Plans;
using MonitorSim.Synthesis.Vectors;

namespace MonitorSim.Tests.Synthesis.Vectors;

public sealed class VectorSetTests
{
    public static TheoryData<string> Plans => [.. VectorPlans.Demo, .. VectorPlans.Written];

    /// <summary>What the generator meant is what every replay gives; a vector that does not come out as meant is never kept.</summary>
    [Theory]
    [MemberData(nameof(Plans))]
    public void EveryVectorComesOutAsMeant(string name)
    {
        var (plan, set) = VectorPlans.Of(name);
        Assert.Empty(set.Failed);
        if (plan.Axes.Values.Any(axis => axis.Monitors.Count > 0)) Assert.NotEmpty(set.Vectors);
        Assert.All(set.Vectors, vector => Assert.NotEmpty(vector.Meets));
        Assert.All(set.Missed, miss => Assert.NotEmpty(miss.Why));
        Assert.Equal(set.Vectors.Count, set.Vectors.Select(vector => vector.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count());
    }

    /// <summary><c>check</c> on the written plan and recording passes, and finds what the manifest says.</summary>
    [Theory]
    [MemberData(nameof(Plans))]
    public void CheckPassesOnEveryVector(string name)
    {
        foreach (var vector in VectorPlans.Of(name).Set.Vectors)
        {
            var result = VectorPlans.Replayed(vector, PlanReader.Parse(PlanWriter.Write(vector.Plan), vector.Name));
            Assert.NotEmpty(result.Expect);
            Assert.All(result.Expect, line => Assert.True(line.Holds, $"{vector.Name}: {line.Because}"));
            Assert.Empty(vector.Differences(result));
        }
    }

    /// <summary>The demo has nothing that could not be met.</summary>
    [Fact]
    public void EveryBranchOfTheDemoIsMet() =>
        Assert.All(VectorPlans.Demo, name => Assert.Empty(VectorPlans.Of(name).Set.Missed));

    /// <summary>At the limit is the limit itself where a decimal can write it; past it is the next step of the grid.</summary>
    [Fact]
    public void LimitsAreMetExactlyAndByOneStep()
    {
        var tripping = VectorPlans.Of("bridge-gate-speed").Set.Vectors.First(vector => vector.Meets.Any(branch => branch is { Rule: "limit", From: "just past" }));
        var trip = Assert.Single(tripping.Expected.Trips);
        Assert.Equal((0.033, 0.033001), (trip.Limit, trip.Value));
        var allowed = VectorPlans.Of("bridge-gate-speed").Set.Vectors.First(vector => vector.Meets.Any(branch => branch is { Rule: "limit", From: "just allowed" }));
        Assert.Contains(";33;1\n", allowed.Csv);
    }

    /// <summary>The same bytes at every run.</summary>
    [Fact]
    public void VectorsAreTheSameEveryTime()
    {
        var (plan, set) = VectorPlans.Of("bridge-gate-speed");
        var again = BoundaryVectors.Of(plan);
        Assert.Equal(set.Vectors.Select(vector => vector.Csv + PlanWriter.Write(vector.Plan)), again.Vectors.Select(vector => vector.Csv + PlanWriter.Write(vector.Plan)));
    }
}
