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
        Assert.Equal(0.03125, new StoppingChain { Limit = 0.25, Stopping = new ConstantDeceleration(1) }.Travel, 1e-12);
        var spindle = new StoppingChain { Limit = 900 / 60.0, Stopping = new ConstantDeceleration(5 / 60.0) };
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
        var chain = new StoppingChain { Limit = 0, ReactionDelay = seconds, Stopping = new ConstantDeceleration(1) };
        Assert.Equal(inches, Math.Round(chain.SeparationDistance(63 * Inch) / Inch * 2) / 2);
        Assert.Equal(63 * seconds + 4, chain.SeparationDistance(63 * Inch, 4 * Inch) / Inch, 1e-9);
    }

    /// <summary>By hand: 100 mm/s, fault 1 m/s², 12 ms of filter are 3 cycles of 4 ms, one more until it is seen, 2 and 22 ms of delays: 40 ms, 140 mm/s, 4.8 mm; then
    /// 70 ms and 4.9 mm at 2 m/s².</summary>
    [Fact]
    public void EveryLinkCounts()
    {
        var chain = new StoppingChain { Limit = 0.1, Filter = 0.012, Cycle = 0.004, InputDelay = 0.002, ReactionDelay = 0.022, FaultAcceleration = 1, Stopping = new ConstantDeceleration(2) };
        Assert.Equal(0.040, chain.ResponseTime, 1e-12);
        Assert.Equal(0.140, chain.PeakSpeed, 1e-12);
        Assert.Equal(0.110, chain.TotalTime, 1e-12);
        Assert.Equal(0.0048 + 0.0049, chain.Travel, 1e-12);
        Assert.Equal(180 * 0.14 * 0.14 / 2, chain.Energy(180), 1e-9);
    }

    /// <summary>A filter of 10 ms is known at the third cycle of 4 ms after the first exceedance; one of 12 ms too, and one of 12.1 ms at the fourth.</summary>
    [Theory]
    [InlineData(0.010, 0.004, 0.012)]
    [InlineData(0.012, 0.004, 0.012)]
    [InlineData(0.0121, 0.004, 0.016)]
    [InlineData(1.1, 0.1, 1.1)]
    [InlineData(0, 0.004, 0)]
    [InlineData(0.01, 0, 0.01)]
    public void AFilterEndsAtACycle(double filter, double cycle, double expected) =>
        Assert.Equal(expected, new StoppingChain { Limit = 0, Filter = filter, Cycle = cycle, Stopping = new ConstantDeceleration(1) }.FilterInCycles, 1e-12);

    /// <summary>travel(v) = v²/(2d) + v·T·(1 + a/d) + a·T²/2·(1 + a/d) is a parabola: its root is the largest limit, and the next double is too much.</summary>
    [Property]
    public void LargestLimitUsesTheTravelUp(PositiveInt filter, PositiveInt delay, PositiveInt fault, PositiveInt deceleration, PositiveInt travel)
    {
        var (t, a, d, allowed) = (filter.Get / 1e3 + delay.Get / 1e3, fault.Get / 10.0, deceleration.Get / 10.0, travel.Get / 10.0);
        var chain = new StoppingChain { Limit = 0, Filter = filter.Get / 1e3, ReactionDelay = delay.Get / 1e3, FaultAcceleration = a, Stopping = new ConstantDeceleration(d) };
        var linear = t * (1 + a / d);
        var constant = a * t / 2 * linear - allowed;
        if (chain.LargestLimit(c => c.Travel, allowed) is { } limit)
        {
            Assert.Equal(-2 * constant / (linear + Math.Sqrt(linear * linear - 2 * constant / d)), limit, 1e-9 * (1 + limit));
            Assert.True((chain with { Limit = limit }).Travel <= allowed);
            Assert.True((chain with { Limit = Math.BitIncrement(limit) }).Travel > allowed);
        }
        else Assert.True(chain.Travel > allowed);
    }
}
