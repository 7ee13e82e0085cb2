using MonitorSim.Motion.Envelopes;
using MonitorSim.Motion.Faults;
using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.Tests;

/// <summary>What <c>stop</c> says of the lift whose drive runs away, as the docs tell it.</summary>
public sealed class DemoRunawayTests
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "traces", "lift-runaway");

    private static readonly Lazy<EnvelopeResult> AsPlanned = new(() => Envelope("60 ms"));

    private const double Mass = 240, Viscous = 200;

    /// <summary>140.1 mm, 125.5 mm of that after torque off, in three legs, each in closed form (dv/dt = g - k·v): 6000 + 2354 - 180 N to 250 mm/s and for 22 ms of filter, cycle and reaction more;
    /// 2354 - 180 N for 60 ms; 7000 + 180 - 2354 N to rest. From rest; the encoder's noise makes the worst moment a little worse (derived).</summary>
    [Fact]
    public void TheHeadFalls()
    {
        var result = AsPlanned.Value;
        var driven = Leg(0, 6000 + 2354 - 180, TimeTo(0.25, 0, 6000 + 2354 - 180) + 0.022);
        var falling = Leg(driven.Velocity, 2354 - 180, 0.06);
        var braked = Leg(falling.Velocity, 2354 - 180 - 7000, TimeTo(0, falling.Velocity, 2354 - 180 - 7000));
        Assert.InRange(Worst(result, "fall") - (driven.Distance + falling.Distance + braked.Distance), -1e-9, 1e-5);
        Assert.Equal(0.1401, Worst(result, "fall"), 5e-5);
        Assert.Equal(0.1255, Worst(result, "drop"), 5e-5);
    }

    private static (double Distance, double Velocity) Leg(double velocity, double force, double time)
    {
        var (k, steady) = (Viscous / Mass, force / Viscous);
        var after = steady + (velocity - steady) * Math.Exp(-k * time);
        return (steady * time + (velocity - after) / k, after);
    }

    private static double TimeTo(double speed, double velocity, double force) => -Math.Log((speed - force / Viscous) / (velocity - force / Viscous)) * Mass / Viscous;

    [Theory]
    [InlineData(0.0109, "60 ms", "8 ms", 2)]
    [InlineData(0.0385, "60 ms", "0 ms", 1)]
    [InlineData(0.0722, "20 ms", "8 ms", 1)]
    public void WhatEachLeverSaves(double saved, string apply, string filter, int share) =>
        Assert.Equal(saved, Worst(AsPlanned.Value, "fall") - Worst(Envelope(apply, filter, share), "fall"), 1e-4);

    /// <summary>With the gate open the limit is stricter; the worst lies elsewhere.</summary>
    [Fact]
    public void TheOpenGateIsTheSaferTime()
    {
        var result = AsPlanned.Value;
        Assert.Equal(0.1126, result.Points.Where(point => point.At is > 4m and < 8m).Max(point => point.Fall!.Value), 5e-5);
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
