using MonitorSim.Demo;
using MonitorSim.Explain;
using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.Tests;

/// <summary>What <c>explain</c> says of the slab saw: the few facts by which a trainer would tell the story.</summary>
public sealed class DemoStoryTests
{
    private static readonly Dictionary<string, string[]> Facts = new()
    {
        ["blade-brake-fades"] = ["At 1.976 s blade, SS1 trips, side deceleration", "below the demanded deceleration of 300 rpm/s", "a filter above 100 ms", "derived from velocity by savitzkyGolay", "its request, stopButton"],
        ["blade-brake-quick"] = ["At 1.88 s blade, nut (SLA) trips, side deceleration", "above the limit of 400 rpm/s", "a limit of 451.501 rpm/s", "blade, nut (SLA), upper", "where the limit is 700 rpm/s: room of", "once for a single cycle"],
        ["blade-motor-warm"] = ["nothing tripped", "its output was on from 0 s to 45.1 s, from 79.7 s on", "room of 1.9 °C"],
        ["blade-off-turning"] = ["the time of the stop being up, standing or not", "At 2.302 s blade, stands by then (SLS) trips", "319.4 rpm, above the limit of 20 rpm", "not exact"],
        ["blade-overspeed"] = ["At 1.012 s blade, blade cap (SLS) trips", "above the limit of 1500 rpm", "for 8 ms without a break", "a filter above 8 ms"],
        ["blade-standing"] = ["its output came on 11 times", "for 2 ms at the shortest", "standing, steady (SSM): its output was on from 1.89 s on"],
        ["bridge-approach"] = ["At 0.74 s bridge, set-up speed (SLS) trips, side approach", "limit of 33 mm/s (level 0, when not enabling) was asked for at 0.7 s", "(500 mm/s²) was 20.06 mm/s", "a tolerance of 40.35 mm/s", "(level 0, when not enabling): watched for"],
        ["bridge-blind-window"] = ["nothing tripped", "never watching", "delay of 400 ms", "348 ms at most", "proves nothing"],
        ["bridge-cable"] = ["At 0.9 s bridge, set-up speed (SLS) trips, side invalid input", "missing", "no limit or filter of its own would"],
        ["bridge-drive-fault"] = ["At 0.892 s bridge, set-up speed (SLS) trips", "above the limit of 40 mm/s", "a filter above 54 ms", "1 trip and 1 edge agree"],
        ["bridge-feed-range"] = ["At 1.284 s bridge, feed range (SSR) trips, side lower", "below the limit of 20 mm/s", "a limit of 12.26 mm/s", "feed range (SSR), upper"],
        ["bridge-gate-speed"] = ["At 0.908 s bridge, set-up speed (SLS) trips", "its delay of 400 ms", "above the limit of 33 mm/s", "a delay above 566 ms", "At 1.408 s bridge has its torque off"],
        ["bridge-hold"] = ["At 1.698 s bridge, SOS trips, side window", "above the window of 0.2 mm", "will hold (SS2, stop category 2), as its request, hold, asks", "bridge, SS2, ramp: watched for"],
        ["bridge-simulated"] = ["At 0.908 s bridge, set-up speed (SLS) trips", "bridge, left to its plant at 0.928 s, stands from 1.346 s on, 418 ms and 44 mm later", "it reached 200", "simulated, not recorded", "end of travel (SLP), upper: watched for"],
        ["bridge-slow-cycle"] = ["At 1.02 s bridge, set-up speed (SLS) trips", "a filter above 24 ms", "signal edgeSwitch: no cycle sees the pulse at 0.506 s"],
        ["bridge-stop-bad"] = ["At 0.766 s bridge, SS1 trips, side ramp", "(400 mm/s² after 40 ms)", "above the tolerance of 10 mm/s", "a tolerance of 10.13 mm/s", "SS1, timeLimit"],
        ["bridge-stop-good"] = ["nothing tripped", "at 1.046 s it has its torque off (STO, stop category 0), having reached standstill", "where the tolerance is 10 mm/s: room of 9.94 mm/s", "room of 254 ms"],
        ["bridge-two-encoders"] = ["At 1.164 s bridge, position two channels trips", "above the tolerance of 0.3 mm", "at least the time of 40 ms", "a tolerance of 0.452 mm"],
        ["lift-brake-slip"] = ["At 0.778 s lift, SBC trips, side window, and is reported only", "The brake was commanded at 0.5 s", "above the window of 0.5 mm", "an apply time above 374 ms"],
        ["lift-breakaway"] = ["At 0.526 s lift, jammed screw (SLT) trips", "above the limit of 18 N·m", "a filter above 30 ms"],
        ["lift-inching"] = ["At 1.602 s lift, inching (SLI) trips, side window", "above the window of 0.3 mm", "where the increment is 5 mm: room of 0.4 mm"],
        ["lift-residual"] = ["At 0.6 s lift, STO trips", "above the residual of 0.6 N·m", "a grace above 228 ms"],
        ["lift-runaway"] = ["nothing tripped", "lift, lowest position (SLP), lower: watched for", "where the limit is 30 mm: room of 130 mm"],
        ["lift-short-circuit"] = ["nothing tripped", "as its request, emergencyStop, asks", "where the limit is 310 mm/s"],
        ["lift-slack"] = ["At 1.002 s lift, weight on the screw (STR) trips, side lower", "below the limit of 4 N·m", "a limit of 1.64 N·m"],
        ["lift-standstill"] = ["At 2.486 s lift, stand still (SOS) trips, side window", "above the window of 0.5 mm", "a window of 0.81 mm", "stand still (SOS), speed: watched for", "lift, SBC, window: watched for"],
        ["saw-group"] = ["At 0.6 s bridge, set-up speed (SLS) trips", "An acknowledgement at 1.1 s is ignored", "The one that counts comes at 2.5 s", "because of bridge.set-up speed, which is of its group", "released by an acknowledgement"],
        ["turntable-cam"] = ["At 2.456 s bridge, crossing (SLS) trips", "Its request, not turntable.square, came at 0.332 s", "turntable, square (SCA): its output was on from 0 s to 0.33 s", "not exact"],
        ["turntable-direction"] = ["At 0.992 s turntable, forwards only (SDI) trips", "from the furthest position reached", "above the tolerance of 0.5 deg", "a tolerance of 6 deg"],
        ["turntable-noise"] = ["At 0.078 s turntable, slab must not slide (SAR) trips", "(derived from velocity by difference)", "above the limit of 80 deg/s²", "white noise times 707.107 1/s", "turntable smoothed, slab must not slide (SAR), upper", "room of 38.2654 deg/s²"],
        ["turntable-window"] = ["At 2.552 s turntable, loading window (SLP) trips, side upper", "above the limit of 15 deg", "where the limit is 350 deg: room of 2 deg"],
    };

    public static TheoryData<string> Cases => [.. DemoCases.All.Select(demo => demo.Name)];

    [Theory]
    [MemberData(nameof(Cases))]
    public void TheStoryHasItsFacts(string name)
    {
        var folder = Path.Combine(AppContext.BaseDirectory, "traces", name);
        var plan = PlanReader.Read(Path.Combine(folder, "plan.json"));
        var story = string.Join('\n', Explanation.Lines(Replay.Run(plan, PlannedTrace.Read(plan, Path.Combine(folder, "trace.csv")))));
        Assert.All(Facts[name], fact => Assert.Contains(fact, story, StringComparison.Ordinal));
    }
}
