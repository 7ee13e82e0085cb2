using FsCheck;
using FsCheck.Xunit;
using MonitorSim.Tuning;

namespace MonitorSim.Tests.Tuning;

public sealed class StoppingChainTests
{
    /// <summary>v²/2a (kinematics): 0.25 m/s at 1 m/s² is 31.25 mm; 900 rpm at 5 rpm/s takes 180 s and 1350 rev.</summary>
    [Fact]
    public void ConstantDeceleration()
    {
        Assert.Equal(0.03125, new StoppingChain { Limit = 0.25, Deceleration = 1 }.Travel, 1e-12);
        var spindle = new StoppingChain { Limit = 900 / 60.0, Deceleration = 5 / 60.0 };
        Assert.Equal(180, spindle.TotalTime, 1e-9);
        Assert.Equal(1350, spindle.Travel, 1e-9);
    }

    /// <summary>29 CFR 1910.217(c)(3)(iii)(e), 63 in/s; the OSHA chart rounds 0.380 s to 24 in and 0.150 s to 9 1/2 in.</summary>
    [Theory]
    [InlineData(0.380, 24)]
    [InlineData(0.150, 9.5)]
    public void SeparationDistance(double seconds, double inches)
    {
        const double Inch = 0.0254;
        var chain = new StoppingChain { Limit = 0, ReactionDelay = seconds, Deceleration = 1 };
        Assert.Equal(inches, Math.Round(chain.SeparationDistance(63 * Inch) / Inch * 2) / 2);
    }

    /// <summary>At the largest limit the travel is the allowed one.</summary>
    [Property]
    public void LargestLimitUsesTheTravelUp(PositiveInt filter, PositiveInt delay, PositiveInt fault, PositiveInt deceleration, PositiveInt travel)
    {
        var chain = new StoppingChain
        {
            Limit = 0, Filter = filter.Get / 1e3, ReactionDelay = delay.Get / 1e3, FaultAcceleration = fault.Get / 10.0, Deceleration = deceleration.Get / 10.0,
        };
        var allowed = travel.Get / 10.0;
        if (chain.LargestLimit(allowed) is { } limit) Assert.Equal(allowed, (chain with { Limit = limit }).Travel, allowed * 1e-9);
        else Assert.True(chain.Travel > allowed);
    }

    [Fact]
    public void EveryLeverHelps()
    {
        var levers = new StoppingChain { Limit = 0, Filter = 0.02, Cycle = 0.004, InputDelay = 0.002, ReactionDelay = 0.03, FaultAcceleration = 2, Deceleration = 1.5 }.Levers(0.05);
        Assert.All(levers.Skip(1), lever => Assert.True(lever.LargestLimit > levers[0].LargestLimit, lever.Change));
    }
}
