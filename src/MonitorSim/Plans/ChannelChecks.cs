using Fractions;
using MonitorSim.Quantities;

namespace MonitorSim.Plans;

/// <summary>Where an axis's quantities come from: recorded or derived, unit, side, second recording, estimator.</summary>
internal static class ChannelChecks
{
    /// <summary>The channels of an axis by kind.</summary>
    public static IEnumerable<(Kind Kind, ChannelPlan? Plan)> Of(AxisPlan axis) =>
    [
        (Kind.Position, axis.Channels.Position), (Kind.Velocity, axis.Channels.Velocity), (Kind.Acceleration, axis.Channels.Acceleration),
        (Kind.Torque, axis.Channels.Torque), (Kind.Temperature, axis.Channels.Temperature),
    ];

    /// <summary>The channel that a rate is derived from; null for what cannot be derived.</summary>
    public static Kind? Source(Kind kind) => kind switch { Kind.Velocity => Kind.Position, Kind.Acceleration => Kind.Velocity, _ => null };

    /// <summary>Whether a channel is recorded or can be derived. One that is described wrongly is there: its own error is enough.</summary>
    public static bool IsThere(AxisPlan axis, Kind kind) =>
        Of(axis).First(channel => channel.Kind == kind).Plan is not null || (Source(kind) is { } source && IsThere(axis, source));

    /// <summary>Reports that something needs a channel that is neither recorded nor derivable.</summary>
    public static void Need(PlanPath axisPath, AxisPlan axis, Kind kind, PlanPath path, string what, List<Finding> findings)
    {
        if (IsThere(axis, kind)) return;
        var channels = axisPath.Member("channels");
        var kinds = new List<string>();
        for (Kind? k = kind; k is { } one; k = Source(one)) kinds.Add(Choice.Name(one));
        findings.Add(new(path, $"{what} needs the axis's {kinds[0]}, which is neither recorded nor derivable", $"add {string.Join(" or ", kinds.Select(name => channels.Member(name).Text))}")
        { Concerns = [channels] });
    }

    public static void Check(PlanPath axisPath, AxisPlan axis, List<Finding> findings)
    {
        foreach (var (kind, channel) in Of(axis))
        {
            if (channel is null) continue;
            var path = axisPath.Member("channels").Member(Choice.Name(kind));
            if (channel.Column is null) Derived(path, axisPath, axis, kind, channel, findings);
            else Recorded(path, axisPath, axis, kind, channel, findings);
        }
    }

    private static void Recorded(PlanPath path, PlanPath axisPath, AxisPlan axis, Kind kind, ChannelPlan channel, List<Finding> findings)
    {
        if (channel.From is not null || channel.Estimator is not null)
            findings.Add(new(path.Member(channel.From is null ? "estimator" : "from"), $"{path.Name}: it cannot be both recorded and derived", "keep either column, or from and estimator"));
        var first = RecordedQuantity.First(kind, channel);
        Quantity(path, path, axisPath, axis, first, findings);
        if (channel.Second is not { } plan) return;

        var second = RecordedQuantity.Second(kind, channel, plan);
        var rotary = axis.Motion == AxisMotion.Rotary;
        // What the second takes from a wrong first is reported there once.
        var own = plan.Unit is not null || plan.Side is not null || plan.Scale is not null || plan.Offset is not null;
        if (own) Quantity(path.Member("second"), path, axisPath, axis, second, findings);
        var (atLoad, secondAtLoad) = (first.AtLoad(rotary), second.AtLoad(rotary));
        if (atLoad is null || secondAtLoad is null) return;
        if (atLoad.Dimensions[0] != secondAtLoad.Dimensions[0])
            findings.Add(new(path.Member("second"), $"{path.Name}: the two recordings are of different kinds: {atLoad.Noun} and {secondAtLoad.Noun}", "give both a unit of one kind"));
        if (plan.Tolerance is { } tolerance && !atLoad.Dimensions.Contains(tolerance.Unit.Dimension))
            findings.Add(new(path.Member("second").Member("tolerance"), $"tolerance: unit '{tolerance.Unit}' is no {atLoad.Noun}", atLoad.WouldDo));
    }

    private static void Quantity(PlanPath path, PlanPath firstPath, PlanPath axisPath, AxisPlan axis, RecordedQuantity recorded, List<Finding> findings)
    {
        var rotary = axis.Motion == AxisMotion.Rotary;
        var allowed = recorded.Allowed(rotary);
        if (recorded.Unit is { } unit)
        {
            if (!allowed.Dimensions.Contains(unit.Dimension))
                findings.Add(new(path.Member("unit"), $"unit: unit '{unit}' is no {allowed.Noun}", allowed.WouldDo + AtTheMotor(recorded)) { Concerns = [axisPath.Member("motion"), path.Member("side"), firstPath.Member("side")] });
            else if (recorded.Kind == Kind.Torque)
                allowed = KindUnits.Of(Kind.Torque, unit.Dimension == Dimension.NewtonMetre);
        }

        if (recorded.Offset is { } offset && !allowed.Dimensions.Contains(offset.Unit.Dimension))
            findings.Add(new(path.Member("offset"), $"offset: unit '{offset.Unit}' is no {allowed.Noun}", allowed.WouldDo) { Concerns = [axisPath.Member("motion"), path.Member("unit"), firstPath.Member("unit")] });
        if (recorded.Scale == Fraction.Zero)
            findings.Add(new(path.Member("scale"), "scale: 0 leaves nothing of the recording", "write the value of one raw unit"));
        if (recorded.NeedsFeed(rotary) && axis.Feed is null)
            findings.Add(new(axisPath.Member("feed"), $"{firstPath.Name}: recorded at the motor of a linear axis, it needs the axis's feed", "add a feed, such as 20 mm/rev"));
    }

    private static string AtTheMotor(RecordedQuantity recorded) =>
        recorded.Side == RecordedSide.Motor && recorded.Kind != Kind.Temperature ? "; the motor turns: what moves like the axis is of the load side" : "";

    private static void Derived(PlanPath path, PlanPath axisPath, AxisPlan axis, Kind kind, ChannelPlan channel, List<Finding> findings)
    {
        if (Source(kind) is not { } source)
        {
            findings.Add(new(path, $"{path.Name}: no column, and it cannot be derived", "give a column") { Concerns = [path.Member("column")] });
            return;
        }

        var sourceName = Choice.Name(source);
        if (channel.From is null && channel.Estimator is null)
            findings.Add(new(path, $"{path.Name}: neither recorded nor derived", $"give a column, or \"from\": \"{sourceName}\" and an estimator") { Concerns = [path.Member("column"), path.Member("from"), path.Member("estimator")] });
        if (channel.From is not null && channel.From != sourceName)
            findings.Add(new(path.Member("from"), $"from: {path.Name} cannot be derived from '{channel.From}'", $"write \"{sourceName}\""));
        else if (channel.From is not null && !IsThere(axis, source))
            Need(axisPath, axis, source, path.Member("from"), "from: the derivation", findings);
        foreach (var name in new[] { "unit", "side", "scale", "invert", "offset", "second" })
        {
            var value = PlanType.Of(typeof(ChannelPlan)).Find(name)!.Get(channel);
            if (value is not (null or false or RecordedSide.Load))
                findings.Add(new(path.Member(name), $"{name}: a derived channel has none", $"leave it out; it follows {sourceName}"));
        }

        if (channel.Estimator is { } estimator) EstimatorChecks.Check(path.Member("estimator"), estimator, findings);
    }
}
