using MonitorSim.Channels;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Monitors;

/// <summary>What every monitoring function shares: the chain of request, delay, filter and reaction.</summary>
/// <remarks>
/// <para>Equation: requested since cycle t_a, it watches at cycles c_n with c_n - t_a at or above <see cref="Delay"/>; only while watching is the measure x_n compared
/// with the limit, and it is exceeded where x_n is more than the limit, never at the limit. It trips at the first cycle with c_n - c_j at or above <see cref="Filter"/>,
/// c_j being the first cycle of the present uninterrupted row of exceeding cycles; with filter 0 that is c_j itself.</para>
/// <para>Initial condition: t_a is the cycle of the request's rising edge, or the first cycle where the request is true from the start. References (p_w) latch at the
/// first watching cycle that has a value, and are forgotten when the request goes.</para>
/// <para>Start-up: a value that is missing, or a derived rate at the first sample, is not compared; a cycle without a comparison breaks the row of exceeding cycles.</para>
/// <para>Pitfall: a trip stays until it is acknowledged, whatever becomes of the request; the acknowledging cycle is a new t_a, so that the delay runs again.</para>
/// <para>Standard: the functions bear the abbreviations of IEC 61800-5-2; request, delay, filter and reaction are the project's own terms.</para>
/// <para>A quantity is written in any unit of its kind; the SI unit is the one named with it here and the one in results.</para>
/// </remarks>
public abstract record MonitorPlan
{
    /// <summary>Its name; no other monitor of the axis has it.</summary>
    public required string Name { get; init; }
    /// <summary>When it is asked for; default always.</summary>
    public Condition? Request { get; init; }
    /// <summary>How long the request must have held before anything is compared, s, 0 or more; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? Delay { get; init; }
    /// <summary>How long an exceedance must last to trip, from its first cycle to the tripping one, s, 0 or more; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? Filter { get; init; }
    /// <summary>What a trip does; default stop 1 (SCA, SSM and SMT: none).</summary>
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
