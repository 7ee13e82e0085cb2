using MonitorSim.Motion.Faults;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Motion;

/// <summary>A fault that a replay is to have, and where.</summary>
public abstract record Injection
{
    private protected Injection() { }

    /// <summary>As <see cref="Parse"/> reads it.</summary>
    public string Text => InjectionText.Of(this);

    /// <summary>Reads a fault from words: what it concerns, what goes wrong, and how.</summary>
    /// <param name="text">Such as <c>lift runaway from 1.2 s direction negative</c>, <c>lift.velocity stuck from 2 s until 2.1 s</c>,
    /// <c>table.position.second step by 5 deg</c> (the second recording of a quantity), <c>acknowledgement late by 250 ms</c>.</param>
    /// <exception cref="InputException">No such fault, or a member that it does not have: all errors.</exception>
    public static Injection Parse(string text) => InjectionText.Parse(text);
}

/// <summary>A fault of an axis's drive or brake. It needs <c>"motion": "simulated"</c>; the axis leaves its recording when drive or motion are concerned.</summary>
/// <param name="Axis">The axis.</param>
/// <param name="Fault">What goes wrong.</param>
public sealed record MachineInjection(string Axis, MachineFault Fault) : Injection;

/// <summary>A fault of a recorded channel, with the motion recorded or simulated. What is derived from the channel is spoiled with it.</summary>
/// <param name="Axis">The axis.</param>
/// <param name="Channel">Which quantity: position, velocity, acceleration, torque or temperature.</param>
/// <param name="Fault">What goes wrong.</param>
/// <param name="IsSecond">Whether it concerns the second recording of the quantity.</param>
public sealed record ChannelInjection(string Axis, Kind Channel, ChannelFault Fault, bool IsSecond = false) : Injection;

/// <summary>Who acknowledges does so later than recorded.</summary>
/// <param name="Delay">By how much, >= 0; every change of the signal comes that much later.</param>
public sealed record LateAcknowledgement(Quantity Delay) : Injection;
