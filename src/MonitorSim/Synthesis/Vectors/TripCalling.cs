using Fractions;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>By the trip of a monitor, whose reaction it is.</summary>
internal sealed class TripCalling(Subject by, Lever lever) : Calling
{
    public override string? Unreachable => by.Unreachable(lever);

    public override bool CanBeAbsent => true;

    public override bool CanBeLost => false;

    public override (string Axis, string Monitor)? By => (by.Axis, by.Monitor);

    public override Kind? Moves(string axis) => axis == by.Axis ? lever.Moves : null;

    public override Target? Calls(string axis, Fraction speed, Kind root) =>
        axis != by.Axis || lever.Moves != root || (lever is ChannelLever { Kind: Kind.Velocity } channel && channel.IsPast(speed)) ? new(speed) : null;

    public override void Leave(Script script) => lever.Rest(script);

    public override int Call(Script script)
    {
        lever.Prepare(script, by.Delay + by.Filter + lever.LeadIn + 20);
        by.Calling.Call(script);
        lever.Rest(script);
        script.Run(by.Delay + lever.LeadIn + Math.Max(1, 1 + lever.Order - script.Count));
        lever.Approach(script);
        lever.Exceed(script);
        script.Run(by.Filter);

        // A second recording has done its part then, and would only disturb what is compared with the larger one.
        if (lever.Moves is null) script.Afterwards(() => lever.Rest(script));
        return script.Count;
    }
}
