namespace MonitorSim.Plans;

/// <summary>Each stop takes the parameters of its variant, all that it needs and no others, and needs channels to compare.</summary>
internal static class StopChecks
{
    public static void Check(PlanPath axisPath, AxisPlan axis, List<Finding> findings)
    {
        var path = axisPath.Member("stops");
        var stops = axis.Stops;
        if (stops.Sto is null) findings.Add(new(path.Member("STO"), $"{axisPath.Name}: STO is not defined", "add \"STO\": {} to its stops"));
        if (stops.Ss2 is not null && stops.Sos is null)
            findings.Add(new(path.Member("SOS"), $"{axisPath.Name}: SS2 ends in SOS, which is not defined", "add SOS with a window to its stops"));
        if (stops.Sto is { Grace: not null, Residual: null })
            findings.Add(new(path.Member("STO").Member("grace"), "grace: without residual nothing is checked after it", "add residual, or leave grace out") { Concerns = [path.Member("STO").Member("residual")] });
        if (stops.Sos is { Window: null })
            findings.Add(new(path.Member("SOS").Member("window"), "SOS: window is missing", "add \"window\""));

        Ramp(path.Member("SS1"), axisPath, axis, stops.Ss1, findings);
        Ramp(path.Member("SS2"), axisPath, axis, stops.Ss2, findings);
        foreach (var stop in new object?[] { stops.Sto, stops.Sos, stops.Sbc })
        {
            if (stop is null) continue;
            var name = stop switch { StoPlan => "STO", SosPlan => "SOS", _ => "SBC" };
            foreach (var member in PlanType.Of(stop.GetType()).Members.Where(member => member.Get(stop) is not null))
            {
                foreach (var kind in member.Needs)
                    ChannelChecks.Need(axisPath, axis, kind, path.Member(name).Member(member.Name), $"{member.Name}: {name}", findings);
            }
        }
    }

    private static void Ramp(PlanPath path, PlanPath axisPath, AxisPlan axis, RampStopPlan? stop, List<Finding> findings)
    {
        if (stop is null) return;
        var variant = Choice.Name(stop.Variant);
        var (needed, optional) = Parameters(stop.Variant);
        foreach (var member in PlanType.Of(typeof(RampStopPlan)).Members)
        {
            if (member.Name is "request" or "variant") continue;
            var isSet = member.Get(stop) is not null;
            var place = path.Member(member.Name);
            if (isSet && !needed.Contains(member.Name) && !optional.Contains(member.Name))
                findings.Add(new(place, $"{member.Name}: {path.Name} of variant {variant} takes none", $"variant {variant} takes: {string.Join(", ", needed.Concat(optional))}") { Concerns = [path.Member("variant")] });
            if (!isSet && needed.Contains(member.Name))
                findings.Add(new(place, $"{path.Name}: variant {variant} needs {member.Name}", $"add \"{member.Name}\"") { Concerns = [path.Member("variant")] });
        }

        if (stop.Variant == StopVariant.Time) return;
        ChannelChecks.Need(axisPath, axis, Kind.Velocity, path, $"{path.Name} of variant {variant}", findings);
        if (stop.Variant == StopVariant.Deceleration && ChannelChecks.IsThere(axis, Kind.Velocity))
            ChannelChecks.Need(axisPath, axis, Kind.Acceleration, path, $"{path.Name} of variant {variant}", findings);
    }

    private static (string[] Needed, string[] Optional) Parameters(StopVariant variant) => variant switch
    {
        StopVariant.Time => (["time"], []),
        StopVariant.Ramp => (["deceleration", "tolerance"], ["delay", "settle", "timeLimit"]),
        _ => (["deceleration"], ["delay", "filter", "settle", "timeLimit"]),
    };
}
