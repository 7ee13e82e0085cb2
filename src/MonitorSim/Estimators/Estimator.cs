using MonitorSim.Channels;
using MonitorSim.Plans;

namespace MonitorSim.Estimators;

/// <summary>The estimators by name.</summary>
internal static class Estimator
{
    /// <summary>A rate of <paramref name="source"/>; a plain backward difference where the plan says nothing.</summary>
    public static Channel Of(EstimatorPlan plan, Channel source, SampleTimes times) => plan.Name switch
    {
        EstimatorName.Difference => new Difference(source, times, plan.Samples ?? 1),
        EstimatorName.MovingAverage => new MovingAverage(source, times, plan.Samples ?? 1),
        EstimatorName.SavitzkyGolay => new SavitzkyGolay(source, times, plan.Samples!.Value, plan.Degree!.Value),
        EstimatorName.LowPass => new LowPass(source, times, plan.Time!.Si),
        EstimatorName.AlphaBeta => new AlphaBeta(source, times, plan.Alpha!.Value, plan.Beta!.Value),
        _ => throw new ArgumentOutOfRangeException(nameof(plan), plan.Name, "an unknown estimator"),
    };
}
