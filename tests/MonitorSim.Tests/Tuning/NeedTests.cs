using MonitorSim.Plans;
using MonitorSim.Tuning;

namespace MonitorSim.Tests.Tuning;

public sealed class NeedTests
{
    /// <summary>By hand: 10 % of 80 mm/s and 5 mm/s more are 93 mm/s from below, 67 mm/s from above; an amount in another unit is none.</summary>
    [Theory]
    [InlineData("upper", "m/s", 0.093)]
    [InlineData("lower", "m/s", 0.067)]
    [InlineData("upper", "rad/s", 0.088)]
    [InlineData("lower", null, 0.072)]
    public void AMarginLiesOnTheQuietSide(string side, string? unit, double expected)
    {
        var need = new Need { Share = 0.1, Amount = 0.005, Unit = unit };
        Assert.Equal(expected, need.Of(Limit(side))!.Value, 1e-12);
        Assert.Equal(expected, need.At(0.030m, Limit(side))!.Value, 1e-12);
    }

    /// <summary>A bound lies 40 mm/s beyond the critical limit at the present filter, so it does at any other.</summary>
    [Fact]
    public void ABoundMovesWithTheCriticalLimit()
    {
        var need = new Need { Basis = NeedBasis.Normal };
        var limit = Limit("upper") with { Bounds = new(0.95, 0.95, null, 0.12, 59, 0.1) };
        Assert.Equal(0.12, need.Of(limit));
        Assert.Equal(0.16, need.At(0.008m, limit)!.Value, 1e-12);
        Assert.Equal(0.06, need.At(0.060m, limit)!.Value, 1e-12);
        Assert.Null(need.At(0.061m, limit));
        Assert.Null(new Need { Basis = NeedBasis.DistributionFree }.At(0.008m, limit));
    }

    private static TunedLimit Limit(string side) => new()
    {
        Axis = "bridge", Monitor = "speed", Function = "SSR", Side = side, Unit = "m/s", Written = "100 mm/s", Limit = 0.1, Filter = 0.016m, Reaction = Reaction.Stop1,
        Critical = 0.08, Runs = [new("run", 0.08)], Bounds = LimitBounds.Of([0.08]),
        Frontier = [new(0.008m, 0.12, 1, 1.008m, "run"), new(0.030m, 0.08, 1, 1.03m, "run"), new(0.060m, 0.02, 1, 1.06m, "run")],
    };
}
