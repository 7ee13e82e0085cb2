using MonitorSim.Motion;
using MonitorSim.Motion.Faults;
using MonitorSim.Plans;

namespace MonitorSim.Tests.Motion;

/// <summary>Faults of a replay in words.</summary>
public sealed class InjectionTextTests
{
    public static TheoryData<string, Injection> Texts => new()
    {
        { "lift openBrake", new MachineInjection("lift", new OpenBrakeFault()) },
        { "lift rampIgnored from 1 s", new MachineInjection("lift", new IgnoredRampFault { From = "1 s" }) },
        { "lift runaway from 1.2 s direction negative", new MachineInjection("lift", new RunawayFault { From = "1.2 s", Direction = RunawayDirection.Negative }) },
        { "lift torqueLoss", new MachineInjection("lift", new TorqueLossFault()) },
        { "lift.velocity stuck from 2 s until 2.1 s", new ChannelInjection("lift", Kind.Velocity, new StuckFault { From = "2 s", Until = "2.1 s" }) },
        { "lift.torque reversed", new ChannelInjection("lift", Kind.Torque, new ReversedFault()) },
        { "lift.velocity scaled factor 1.5", new ChannelInjection("lift", Kind.Velocity, new ScaledFault { Factor = new(3, 2) }) },
        { "turn table.position.second step by 5 deg", new ChannelInjection("turn table", Kind.Position, new StepFault { By = "5 deg" }, IsSecond: true) },
        { "lift.position drift from 1 s by -5 mm over 1 min", new ChannelInjection("lift", Kind.Position, new DriftFault { From = "1 s", By = "-5 mm", Over = "1 min" }) },
        { "lift.temperature dropOut from 1 s", new ChannelInjection("lift", Kind.Temperature, new DropOutFault { From = "1 s" }) },
        { "acknowledgement late by 250 ms", new LateAcknowledgement("250 ms") },
    };

    [Theory]
    [MemberData(nameof(Texts))]
    public void EveryFaultIsReadAndSaid(string text, Injection injection) => InCulture.Each(() =>
    {
        Assert.Equal(injection, Injection.Parse(text));
        Assert.Equal(text, injection.Text);
    });

    [Fact]
    public void NoFaultIsForgotten()
    {
        var tested = Texts.Select(row => ((object[])row)[1]).Select(injection => injection switch { MachineInjection machine => machine.Fault.GetType(), ChannelInjection channel => channel.Fault.GetType(), _ => injection.GetType() });
        Assert.Empty(typeof(Injection).Assembly.GetTypes().Where(type => type is { IsPublic: true, IsAbstract: false } && (type.IsSubclassOf(typeof(ChannelFault)) || type.IsSubclassOf(typeof(MachineFault)))).Except(tested));
    }

    [Theory]
    [InlineData("runaway", "this names no axis and fault; write one such as \"lift runaway from 1.2 s\"")]
    [InlineData("runaway lift", "this begins with the fault")]
    [InlineData("lift runway", "there is no fault 'runway'; did you mean 'runaway'?")]
    [InlineData("lift stuck", "stuck concerns a channel, and 'lift' names none; name it, such as \"lift.velocity stuck\"")]
    [InlineData("lift.velocity runaway", "runaway concerns the axis, not a channel of it")]
    [InlineData("lift.velocity stuck form 2 s", "'form' is nothing that a fault has; did you mean 'from'?")]
    [InlineData("lift.velocity stuck from 2", "from: '2' has no unit; would do: \"2 ms\"")]
    [InlineData("lift.velocity scaled factor x", "factor: expected a number")]
    [InlineData("lift.velocity step", "'by' is missing")]
    [InlineData("lift.velocity stuck by 3 mm/s", "unknown key 'by'; keys are: from, until")]
    [InlineData("lift runaway direction sideways", "unknown word 'sideways'")]
    [InlineData("acknowledgement late by 3 mm", "an acknowledgement is late by a time of 0 or more")]
    [InlineData("lift late by 3 ms", "an acknowledgement is late by a time of 0 or more")]
    public void WhatIsWrongIsSaid(string text, string message)
    {
        var wrong = Assert.Throws<InputException>(() => Injection.Parse(text));
        Assert.Contains($"fault \"{text}\": ", wrong.Message, StringComparison.Ordinal);
        Assert.Contains(message, wrong.Message, StringComparison.Ordinal);
    }
}
