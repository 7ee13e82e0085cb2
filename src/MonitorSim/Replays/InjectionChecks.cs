using MonitorSim.Motion;
using MonitorSim.Motion.Faults;
using MonitorSim.Plans;

namespace MonitorSim.Replays;

/// <summary>Whether the faults of a replay fit its plan.</summary>
internal static class InjectionChecks
{
    public static void Require(Plan plan, IReadOnlyList<Injection> faults)
    {
        var problems = faults.SelectMany(fault => Of(plan, fault, $"fault \"{fault.Text}\"") is { } problem ? [problem] : Members(plan, fault)).ToList();
        if (problems.Count > 0) throw new InputException(problems);
    }

    private static Problem? Of(Plan plan, Injection fault, string place) => fault switch
    {
        MachineInjection machine when Unknown(plan, machine.Axis, place) is { } unknown => unknown,
        ChannelInjection channel when Unknown(plan, channel.Axis, place) is { } unknown => unknown,
        MachineInjection when plan.Motion != MotionSource.Simulated =>
            new(place, "a fault of drive or brake needs simulated motion", "set \"motion\": \"simulated\" in the plan and describe the plant"),
        ChannelInjection channel when !IsRecorded(plan.Axes[channel.Axis].Channels, channel) =>
            new(place, $"axis '{channel.Axis}' has no recorded {channel.Channel.ToString().ToLowerInvariant()}{(channel.IsSecond ? " (second)" : "")}", "spoil a channel that has a column"),
        ChannelInjection { Fault: DropOutFault } when plan.Missing == MissingPolicy.Reject =>
            new(place, "a drop-out leaves cells empty, which the plan rejects", "set \"missing\" to \"hold\" or \"trip\""),
        LateAcknowledgement when plan.Acknowledge is null => new(place, "the plan has no acknowledgement", "give it one: \"acknowledge\": { \"signal\": … }"),
        _ => null,
    };

    // Units and ranges, as those of a plan's or a scenario's members.
    private static IEnumerable<Problem> Members(Plan plan, Injection fault)
    {
        var findings = new List<Finding>();
        var checks = new MemberChecks(null, findings);
        if (fault is MachineInjection machine) checks.Check(machine.Fault, PlanPath.Root, IsRotary(plan, machine.Axis), null);
        if (fault is ChannelInjection channel)
        {
            checks.Check(channel.Fault, PlanPath.Root, IsRotary(plan, channel.Axis), channel.Channel);
            if (findings.Count == 0 && channel.Fault is { Until: { } until } && until.Exact <= (channel.Fault.From?.Exact ?? 0))
                findings.Add(new(PlanPath.Root.Member("until"), $"until: '{until}' is not after its beginning", "write a later time"));
        }

        return findings.Select(finding => finding.At($"fault \"{fault.Text}\""));
    }

    private static bool IsRotary(Plan plan, string axis) => plan.Axes[axis].Motion == AxisMotion.Rotary;

    private static Problem? Unknown(Plan plan, string axis, string place) =>
        plan.Axes.ContainsKey(axis) ? null : new(place, $"there is no axis '{axis}'", ClosestName.Advice(axis, [.. plan.Axes.Keys], "axis"));

    private static bool IsRecorded(ChannelsPlan channels, ChannelInjection fault)
    {
        var channel = fault.Channel switch
        {
            Kind.Position => channels.Position,
            Kind.Velocity => channels.Velocity,
            Kind.Acceleration => channels.Acceleration,
            Kind.Torque => channels.Torque,
            Kind.Temperature => channels.Temperature,
            _ => null,
        };
        return fault.IsSecond ? channel?.Second is not null : channel?.Column is not null;
    }
}
