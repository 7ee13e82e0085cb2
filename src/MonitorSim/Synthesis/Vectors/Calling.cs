using Fractions;
using MonitorSim.Plans;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>How a monitor or a stop is called for, and how that ends.</summary>
internal abstract class Calling
{
    /// <summary>What cannot be and why; null where it can be called for.</summary>
    public virtual string? Unreachable => null;

    /// <summary>Whether there is a time before it is called for.</summary>
    public abstract bool CanBeAbsent { get; }

    /// <summary>Whether it can end and come again.</summary>
    public virtual bool CanBeLost => CanBeAbsent;

    /// <summary>The trip that calls; null where none does.</summary>
    public virtual (string Axis, string Monitor)? By => null;

    /// <summary>The recorded quantity of an axis that calling moves; null: none.</summary>
    public virtual Kind? Moves(string axis) => null;

    /// <summary>A speed of an axis at which it still calls; the present one where only that will do.</summary>
    public virtual Target? Calls(string axis, Fraction speed) => new(speed);

    /// <summary>From the next cycle on it is not called for.</summary>
    public abstract void Leave(Script script);

    /// <summary>Runs up to the cycle before the one at which it is called for, or further where nothing but standing is seen then.</summary>
    /// <returns>The cycle at which it is called for.</returns>
    public abstract int Call(Script script);
}

/// <summary>By a setting of the signals.</summary>
internal sealed class SignalCalling(Asking asking, bool canBeLost = true) : Calling
{
    public override string? Unreachable => asking.Yes is null ? asking.Why : null;

    public override bool CanBeAbsent => asking.No is not null;

    public override bool CanBeLost => canBeLost && CanBeAbsent;

    public Setting Yes => asking.Yes!;

    public override void Leave(Script script)
    {
        script.Assumption ??= asking.Assumption;
        script.Ask(asking.No!);
    }

    public override int Call(Script script)
    {
        script.Assumption ??= asking.Assumption;
        script.Ask(asking.Yes!);
        return script.Count;
    }
}

/// <summary>By the trip of a monitor, whose reaction it is.</summary>
internal sealed class TripCalling(Subject by, Lever lever) : Calling
{
    public override string? Unreachable => by.Unreachable(lever);

    public override bool CanBeAbsent => true;

    public override bool CanBeLost => false;

    public override (string Axis, string Monitor)? By => (by.Axis, by.Monitor);

    public override Kind? Moves(string axis) => axis == by.Axis ? lever.Moves : null;

    public override Target? Calls(string axis, Fraction speed) =>
        axis != by.Axis || lever is not ChannelLever { Kind: Kind.Velocity } channel ? new(speed)
        : channel.IsPast(speed) ? new(speed) : null;

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
