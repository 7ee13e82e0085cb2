using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>What every monitoring function shares: the chain of request, delay, filter and reaction.</summary>
public abstract record MonitorPlan
{
    /// <summary>Its name on the axis.</summary>
    public required string Name { get; init; }
    /// <summary>When it is asked for; null: always.</summary>
    public Condition? Request { get; init; }
    /// <summary>From the request to the first watching cycle; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? Delay { get; init; }
    /// <summary>How long an exceedance must last to trip; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? Filter { get; init; }
    /// <summary>What a trip does; null: stop 1 (SMT: none).</summary>
    public Reaction? Reaction { get; init; }
    /// <summary>The abbreviation of IEC 61800-5-2.</summary>
    public abstract string Function { get; }

    /// <summary>The reaction where the plan does not say one.</summary>
    internal virtual Reaction DefaultReaction => Plans.Reaction.Stop1;

    /// <summary>Whether it can trip at all with that reaction.</summary>
    internal virtual bool CanTrip(Reaction reaction) => true;

    /// <summary>What this function measures on an axis.</summary>
    internal abstract Measures Measure(AxisChannels axis);
}
