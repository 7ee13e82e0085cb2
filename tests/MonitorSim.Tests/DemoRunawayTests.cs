using MonitorSim.Motion.Envelopes;
using MonitorSim.Motion.Faults;
using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.Tests;

/// <summary>What <c>stop</c> says of the lift whose drive runs away, as the docs tell it.</summary>
public sealed class DemoRunawayTests
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "traces", "lift-runaway");

    /// <summary>140.1 mm, 125.5 mm of that after torque off. Derived without viscous friction, which takes less than 1 % off: at (6000 + 2354 - 180)/240 m/s² to 250 mm/s, then 22 ms of filter,
    /// cycle and reaction; 60 ms at (2354 - 180)/240 m/s²; to rest at (7000 + 180 - 2354)/240 m/s².</summary>
    [Fact]
    public void TheHeadFalls()
    {
        var fall = Worst(Envelope("60 ms"), "fall");
        var (driven, falling, braked) = ((6000 + 2354 - 180) / 240.0, (2354 - 180) / 240.0, (7000 + 180 - 2354) / 240.0);
        var off = 0.25 + 0.022 * driven;
        var closed = off + 0.06 * falling;
        var derived = off * off / (2 * driven) + (off + closed) / 2 * 0.06 + closed * closed / (2 * braked);
        Assert.InRange(fall, 0.97 * derived, derived);
        Assert.Equal(0.1401, fall, 5e-5);
        Assert.Equal(0.1255, Worst(Envelope("60 ms"), "drop"), 5e-5);
    }

    [Theory]
    [InlineData(0.0109, "60 ms", "8 ms", 2)]
    [InlineData(0.0385, "60 ms", "0 ms", 1)]
    [InlineData(0.0722, "20 ms", "8 ms", 1)]
    public void WhatEachLeverSaves(double saved, string apply, string filter, int share) =>
        Assert.Equal(saved, Worst(Envelope("60 ms"), "fall") - Worst(Envelope(apply, filter, share), "fall"), 1e-4);

    /// <summary>With the gate open the limit is stricter; the worst lies elsewhere.</summary>
    [Fact]
    public void TheOpenGateIsTheSaferTime()
    {
        var result = Envelope("60 ms");
        Assert.Equal(0.1125, result.Points.Where(point => point.At is > 4m and < 8m).Max(point => point.Fall!.Value), 5e-5);
        Assert.False(result.Worst.First(worst => worst.Figure == "fall").Point.At is >= 3.6m and < 8.6m);
        Assert.Equal((0, 0), (result.Undetected, result.NotStopped));
    }

    private static double Worst(EnvelopeResult result, string figure) => result.Worst.First(worst => worst.Figure == figure).Value;

    private static EnvelopeResult Envelope(string apply, string filter = "8 ms", int share = 1)
    {
        var text = File.ReadAllText(Path.Combine(Folder, "plan.json")).Replace("60 ms", apply, StringComparison.Ordinal).Replace("8 ms", filter, StringComparison.Ordinal);
        if (share == 2) text = text.Replace("250 mm/s", "125 mm/s", StringComparison.Ordinal).Replace("60 mm/s", "30 mm/s", StringComparison.Ordinal);
        var plan = PlanReader.Parse(text);
        return global::MonitorSim.Motion.Envelopes.Envelope.Of(new()
        {
            Plan = plan, Axis = "lift", Faults = [new RunawayFault { Direction = RunawayDirection.Negative }],
            Trace = PlannedTrace.Read(plan, Path.Combine(Folder, "trace.csv")),
        });
    }
}
