using Fractions;
using MonitorSim.Plans;
using MonitorSim.Quantities;
using MonitorSim.Synthesis.Steps;

namespace MonitorSim.Synthesis;

/// <summary>Everything that makes a scenario an error, whether it was read or built in C#.</summary>
public static class ScenarioChecks
{
    /// <summary>All problems of a scenario; empty where it can be sampled. The place is the path of a member, such as <c>axes.bridge.steps[0]</c>.</summary>
    public static IReadOnlyList<Problem> Check(Scenario scenario)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        return [.. Findings(scenario).Select(finding => finding.At(finding.Path.Text.Length == 0 ? "scenario" : finding.Path.Text))];
    }

    /// <summary>All findings. A scenario that was read with errors may lack required members: they are passed over.</summary>
    internal static IReadOnlyList<Finding> Findings(Scenario scenario)
    {
        var findings = new List<Finding>();
        new MemberChecks(null, findings).Check(scenario);
        Head(scenario, findings);
        var names = new Dictionary<string, PlanPath>(StringComparer.Ordinal) { [scenario.Trace?.Time?.Column ?? "time"] = PlanPath.Root.Member("trace") };
        foreach (var (name, axis) in scenario.Axes ?? new Dictionary<string, ScenarioAxis>())
        {
            if (axis is null) continue;
            var path = PlanPath.Root.Member("axes").Member(name);
            if (axis.Plant is { } plant) AxisChecks.Plant(path.Member("plant"), plant, axis.Motion == AxisMotion.Rotary, findings);
            foreach (var (column, _) in ScenarioSampler.ColumnsOf(scenario, name)) Name(names, column, axis.Columns.Count == 0 ? path : path.Member("columns").Member(column), findings);
            Columns(path, axis, findings);
            foreach (var (step, index) in axis.Steps.Select((step, index) => (step as SignalStep, index)))
                if (step?.Name is { } signal && !axis.Steps.Take(index).Any(before => (before as SignalStep)?.Name == signal)) Name(names, signal, path.Member("steps").Item(index).Member("name"), findings);
            Steps(path, scenario, axis, findings);
        }

        foreach (var (name, signal) in scenario.Signals)
        {
            var path = PlanPath.Root.Member("signals").Member(name);
            Name(names, name, path, findings);
            Windows(path.Member("windows"), signal?.Windows, findings);
        }

        return findings;
    }

    private static void Head(Scenario scenario, List<Finding> findings)
    {
        var root = PlanPath.Root;
        if (scenario.Version != 1) findings.Add(new(root.Member("scenario"), $"scenario: version {scenario.Version} is not known", "write 1"));
        if (scenario.Axes?.Count == 0) findings.Add(new(root.Member("axes"), "axes: there is no axis", "give at least one"));
        if (scenario.Seed < 0) findings.Add(new(root.Member("seed"), $"seed: {scenario.Seed} is below 0", "write 0 or more"));
        PlanHeadChecks.Format(scenario.Trace, root.Member("trace"), findings);
        if (scenario.Trace?.Rate is not null) findings.Add(new(root.Member("trace").Member("rate"), "rate: a synthetic recording has a time column", "leave it out"));
        Windows(root.Member("missingRows"), scenario.MissingRows, findings);
        for (var i = 0; i < scenario.MissingRows?.Count; i++)
        {
            if (scenario.MissingRows[i] is [{ } from, { } until] && IsTime(from) && IsTime(until) && from.Exact <= 0 && until.Exact > 0)
                findings.Add(new(root.Member("missingRows").Item(i), "missingRows: the first row cannot be missing, times count from it", "begin later"));
        }

        if (scenario.Rate is not { Number.IsPositive: true } rate || rate.Unit.Dimension != Dimension.Hertz) return;
        if (rate.Exact > 1_000_000_000) findings.Add(new(root.Member("rate"), $"rate: '{rate}' is more than 1 GHz", "time has a resolution of 1 ns"));
        else if (scenario.Jitter is { } jitter && IsTime(jitter) && jitter.Exact * rate.Exact * 2 >= 1)
            findings.Add(new(root.Member("jitter"), $"jitter: '{jitter}' is not below half a sampling period at {rate}", "samples keep their order with less") { Concerns = [root.Member("rate")] });
    }

    private static void Columns(PlanPath path, ScenarioAxis axis, List<Finding> findings)
    {
        foreach (var (name, column) in axis.Columns)
        {
            if (column is null) continue;
            var place = path.Member("columns").Member(name);
            if (column.Of == ScenarioQuantity.Torque && axis.Plant is null)
                findings.Add(new(place.Member("of"), "of: torque needs a plant", "describe the axis's plant") { Concerns = [path.Member("plant")] });
            for (var i = 0; i < column.Faults.Count; i++)
            {
                if (column.Faults[i] is { Until: { } until } fault && IsTime(until) && (fault.From is null || IsTime(fault.From)) && until.Exact <= (fault.From?.Exact ?? Fraction.Zero))
                    findings.Add(new(place.Member("faults").Item(i).Member("until"), $"until: '{until}' is not after its beginning", "write a later time"));
            }
        }
    }

    /// <summary>Plays the steps: some of them depend on those before.</summary>
    private static void Steps(PlanPath path, Scenario scenario, ScenarioAxis axis, List<Finding> findings)
    {
        if (scenario.Rate is null || findings.Exists(finding => finding.Path.Touches(PlanPath.Root.Member("rate")) || finding.Path.Touches(path.Member("from")))) return;
        var profile = ScenarioSampler.ProfileOf(scenario.Rate, axis with { Steps = [] });
        for (var i = 0; i < axis.Steps.Count; i++)
        {
            var place = path.Member("steps").Item(i);

            // What follows a step that cannot be read is not known either.
            if (axis.Steps[i] is null or UnknownStep || findings.Exists(finding => finding.Path.Touches(place))) return;
            if (PlanType.Of(axis.Steps[i].GetType()).Members.Any(member => member.IsRequired && member.Get(axis.Steps[i]) is null)) return;
            try
            {
                profile = axis.Steps[i].AppendTo(profile);
            }
            catch (InputException wrong)
            {
                findings.Add(new(place, $"steps[{i}]: {wrong.Problems[0].What}", wrong.Problems[0].Fix));
                return;
            }
        }
    }

    private static void Windows(PlanPath path, IReadOnlyList<IReadOnlyList<Quantity>>? windows, List<Finding> findings)
    {
        for (var i = 0; i < windows?.Count; i++) PlanHeadChecks.Pair(path.Item(i), windows[i], "from and until", findings);
    }

    private static void Name(Dictionary<string, PlanPath> names, string name, PlanPath path, List<Finding> findings)
    {
        if (name.Length == 0) findings.Add(new(path, "a column has no name", "give it one"));
        else if (!names.TryAdd(name, path)) findings.Add(new(path, $"{path.Name}: there is a column '{name}' already", "name each column once"));
    }

    private static bool IsTime(Quantity quantity) => quantity.Unit.Dimension == Dimension.Second;
}
