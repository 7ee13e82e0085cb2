namespace MonitorSim.Plans;

/// <summary>Name, modulo, feed and plant of an axis.</summary>
internal static class AxisChecks
{
    public static void Check(PlanPath path, AxisPlan axis, Plan plan, List<Finding> findings)
    {
        var rotary = axis.Motion == AxisMotion.Rotary;
        if (path.Name is "" or "always" or "never") findings.Add(new(path, $"{path.Name}: the name '{path.Name}' is reserved", "give the axis another name"));
        if (axis.Modulo is not null && !rotary)
            findings.Add(new(path.Member("modulo"), "modulo: a linear position does not begin again", "leave it out, or make the axis rotary") { Concerns = [path.Member("motion")] });
        if (axis.Feed is not null && rotary)
            findings.Add(new(path.Member("feed"), "feed: a rotary axis has no travel per revolution", "leave it out, or make the axis linear") { Concerns = [path.Member("motion")] });
        if (plan.Motion == MotionSource.Simulated && axis.Plant is null)
            findings.Add(new(path.Member("plant"), $"{path.Name}: simulated motion needs a plant", "describe the plant, or set \"motion\": \"recorded\" in the plan"));
        if (axis.Plant is { } plant) Plant(path.Member("plant"), plant, rotary, findings);
    }

    public static void Plant(PlanPath path, PlantPlan plant, bool rotary, List<Finding> findings)
    {
        var (wanted, other) = rotary ? ("inertia", "mass") : ("mass", "inertia");
        var axis = rotary ? "rotary" : "linear";
        if ((rotary ? plant.Inertia : plant.Mass) is null)
            findings.Add(new(path.Member(wanted), $"plant: a {axis} axis needs its {wanted}", $"would do: {(rotary ? "0.4 kg·m²" : "180 kg")}"));
        if ((rotary ? plant.Mass : plant.Inertia) is not null)
            findings.Add(new(path.Member(other), $"{other}: a {axis} axis has none", $"give its {wanted}"));
        if (plant.ShortCircuit is not { } circuit) return;

        path = path.Member("shortCircuit");
        var constants = new object?[] { circuit.Resistance, circuit.Inductance, circuit.Flux, circuit.PolePairs };
        if (circuit.Table is null ? constants.Contains(null) : constants.Any(constant => constant is not null))
        {
            findings.Add(new(path, "shortCircuit: the braking torque is not determined", "give resistance, inductance, flux and polePairs, or a table instead")
            { Concerns = [path] });
        }

        if (circuit.PolePairs < 1) findings.Add(new(path.Member("polePairs"), $"polePairs: {circuit.PolePairs} is below 1", "write 1 or more"));
        if (circuit.Table is not { } table) return;
        if (table.Count < 2) findings.Add(new(path.Member("table"), $"table: {table.Count} points do not make a curve", "give at least two"));
        for (var i = 1; i < table.Count; i++)
        {
            if (table[i - 1]?.Speed is { } before && table[i]?.Speed is { } speed && before.Unit.Dimension == speed.Unit.Dimension && speed.Exact <= before.Exact)
                findings.Add(new(path.Member("table").Item(i).Member("speed"), $"speed: '{speed}' does not lie above '{before}'", "write the points in rising order of speed"));
        }
    }
}
