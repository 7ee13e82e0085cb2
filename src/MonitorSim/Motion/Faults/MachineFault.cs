using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Motion.Faults;

/// <summary>Something wrong with drive or brake, so that the machine itself moves otherwise, from a moment on.</summary>
public abstract record MachineFault
{
    /// <summary>The word that command lines have for it.</summary>
    public abstract string Fault { get; }
    /// <summary>When it begins, from the first sample of a recording or from the beginning of a simulated stop; default 0.</summary>
    [Kind(Kind.Time)] public Quantity? From { get; init; }
}
