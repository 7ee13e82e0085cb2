namespace MonitorSim.Plans;

/// <summary>Each estimator takes its own parameters, all that it needs and no others.</summary>
internal static class EstimatorChecks
{
    public static void Check(PlanPath path, EstimatorPlan estimator, List<Finding> findings)
    {
        var name = Choice.Name(estimator.Name);
        var (needed, optional) = Parameters(estimator.Name);
        foreach (var member in PlanType.Of(typeof(EstimatorPlan)).Members)
        {
            if (member.Name == "name") continue;
            var isSet = member.Get(estimator) is not null;
            var place = path.Member(member.Name);
            if (isSet && !needed.Contains(member.Name) && !optional.Contains(member.Name))
                findings.Add(new(place, $"{member.Name}: {name} takes no {member.Name}", $"it takes: {string.Join(", ", needed.Concat(optional))}") { Concerns = [path.Member("name")] });
            if (!isSet && needed.Contains(member.Name))
                findings.Add(new(place, $"estimator: {name} needs {member.Name}", $"add {member.Name}") { Concerns = [path.Member("name")] });
        }

        if (estimator.Samples < 1) findings.Add(new(path.Member("samples"), $"samples: {estimator.Samples} is below 1", "write 1 or more"));
        else if (estimator.Degree < 1) findings.Add(new(path.Member("degree"), $"degree: {estimator.Degree} has no slope", "write 1 or more"));
        else if (estimator is { Samples: { } samples, Degree: { } degree } && degree >= samples)
            findings.Add(new(path.Member("degree"), $"degree: {degree} needs more than {samples} samples", "write a degree below the number of samples"));
        if (estimator.Alpha is { } alpha && alpha is not (> 0 and < 1))
            findings.Add(new(path.Member("alpha"), FormattableString.Invariant($"alpha: {alpha} lets the filter diverge"), "write a number above 0 and below 1"));
        else if (estimator is { Alpha: { } a, Beta: { } beta } && !(beta > 0 && beta < 4 - 2 * a))
            findings.Add(new(path.Member("beta"), FormattableString.Invariant($"beta: {beta} lets the filter diverge"), FormattableString.Invariant($"write a number above 0 and below 4 - 2·alpha = {4 - 2 * a}")));
    }

    private static (string[] Needed, string[] Optional) Parameters(EstimatorName name) => name switch
    {
        EstimatorName.Difference => ([], ["samples"]),
        EstimatorName.MovingAverage => (["samples"], []),
        EstimatorName.SavitzkyGolay => (["samples", "degree"], []),
        EstimatorName.LowPass => (["time"], []),
        EstimatorName.AlphaBeta => (["alpha", "beta"], []),
        _ => ([], []),
    };
}
