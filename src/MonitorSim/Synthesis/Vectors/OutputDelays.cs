using MonitorSim.Monitors;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>The delays of a monitor with an output, in cycles.</summary>
/// <param name="Request">From its request to its watching.</param>
/// <param name="On">From where its condition holds to where it comes on.</param>
/// <param name="Off">From where its condition fails to where it goes off.</param>
internal readonly record struct OutputDelays(int Request, int On, int Off)
{
    public static OutputDelays Of(Bench bench, MonitorPlan monitor)
    {
        var (on, off) = monitor switch
        {
            Sca sca => (sca.OnDelay, sca.OffDelay),
            Ssm ssm => (ssm.OnDelay, ssm.OffDelay),
            Smt smt => (smt.OnDelay, smt.OffDelay),
            _ => (null, null),
        };
        return new(bench.Clock.Cycles(monitor.Delay), bench.Clock.Cycles(on), bench.Clock.Cycles(off));
    }
}
