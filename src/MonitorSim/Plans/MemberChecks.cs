using System.Collections;
using MonitorSim.Quantities;
using MonitorSim.Synthesis;

namespace MonitorSim.Plans;

/// <summary>Walks all members of a plan or scenario: kinds and ranges of quantities by their attributes, members that exclude one another, expressions.</summary>
/// <param name="names">What expressions can refer to; null where there are none.</param>
/// <param name="findings">Where to say what is wrong.</param>
internal sealed class MemberChecks(PlanNames? names, List<Finding> findings)
{
    // Nanoseconds in 64 bits reach 292 years.
    private const long LongestSeconds = 9_000_000_000;

    /// <summary>What the kinds of an axis's quantities depend on.</summary>
    private sealed record Surroundings(bool Rotary, KindUnits Torque, bool Signed, PlanPath? AxisMotion, Kind? Channel = null);

    public void Check(object root) => Record(root, PlanPath.Root, new(false, KindUnits.TorqueOrForce, false, null));

    /// <summary>A record by itself: what is around it is said.</summary>
    public void Check(object record, PlanPath path, bool rotary, Kind? channel) => Record(record, path, new(rotary, KindUnits.TorqueOrForce, false, null, channel));

    private void Record(object record, PlanPath path, Surroundings around)
    {
        var type = PlanType.Of(record.GetType());
        if (record is AxisPlan axis)
        {
            var rotary = axis.Motion == AxisMotion.Rotary;
            var torque = axis.Channels.Torque is { Column: not null } channel ? RecordedQuantity.First(Kind.Torque, channel).AtLoad(rotary) : null;
            around = new(rotary, torque ?? KindUnits.TorqueOrForce, false, path.Member("motion"));
        }

        if (record is ScenarioAxis synthetic) around = new(synthetic.Motion == AxisMotion.Rotary, KindUnits.TorqueOrForce, false, path.Member("motion"));
        if (record is ScenarioColumn column) around = around with { Channel = column.Kind };
        if (type.Find("signed")?.Get(record) is true) around = around with { Signed = true };
        Alternatives(type, record, path);
        foreach (var member in type.Members)
        {
            if (member.Get(record) is { } value) Value(value, member.Shape, member, path.Member(member.Name), around);
        }
    }

    private void Value(object value, Shape shape, PlanMember member, PlanPath path, Surroundings around)
    {
        switch (shape.Kind)
        {
            case ShapeKind.Record or ShapeKind.Variant: Record(value, path, around); break;
            case ShapeKind.Unit when around.Channel is { } channel: Unit((Unit)value, KindUnits.Of(channel, around.Rotary), path, around); break;
            case ShapeKind.Quantity when member.Kind is { } kind: Quantity((Quantity)value, kind, path, around); break;
            case ShapeKind.Condition: ConditionChecks.Check(path, (Condition)value, names!, findings); break;
            case ShapeKind.List:
                var index = 0;
                foreach (var item in (IEnumerable)value)
                {
                    if (item is not null) Value(item, shape.Item!, member, path.Item(index), around);
                    index++;
                }

                break;
            case ShapeKind.Map:
                foreach (var (name, item) in PlanType.Entries(value))
                    if (item is not null) Value(item, shape.Item!, member, path.Member(name), around);
                break;
        }
    }

    private void Quantity(Quantity quantity, KindAttribute kind, PlanPath path, Surroundings around)
    {
        // A plan's channels have checks of their own.
        var measured = kind.Kind is Kind.Channel or Kind.ChannelDifference ? around.Channel : kind.Kind;
        if (measured is { } of && !Unit(quantity.Unit, of == Kind.Torque ? around.Torque : KindUnits.Of(of, around.Rotary), path, around)) return;

        var (number, field) = (quantity.Number, path.Name);
        if (kind.Allowed == Allowed.Positive && number <= 0)
            findings.Add(new(path, $"{field}: '{quantity}' is not above 0", "write more than 0"));
        else if (kind.Allowed == Allowed.NonNegative && number < 0)
            findings.Add(new(path, $"{field}: '{quantity}' is below 0", "write 0 or more"));
        else if (kind.Allowed == Allowed.NonNegativeUnlessSigned && !around.Signed && number < 0)
            findings.Add(new(path, $"{field}: '{quantity}' is below 0, but magnitudes are compared", "write 0 or more, or set \"signed\": true"));
        else if (kind.Kind == Kind.Time && quantity.Exact.Abs() > LongestSeconds)
            findings.Add(new(path, $"{field}: '{quantity}' is longer than 285 years", "write a shorter time"));
    }

    private bool Unit(Unit unit, KindUnits units, PlanPath path, Surroundings around)
    {
        if (units.Dimensions.Contains(unit.Dimension)) return true;
        findings.Add(new(path, $"{path.Name}: unit '{unit}' is no {units.Noun}", units.WouldDo) { Concerns = around.AxisMotion is { } motion ? [motion] : [] });
        return false;
    }

    private void Alternatives(PlanType type, object record, PlanPath path)
    {
        foreach (var (members, atMostOne) in new[] { (type.ExactlyOneOf, true), (type.AtLeastOneOf, false) })
        {
            if (members.Count == 0) continue;
            var set = members.Where(member => type.Find(member)!.Get(record) is not null).ToList();
            PlanPath[] concerns = [.. members.Select(path.Member)];
            var list = string.Join(" or ", members);
            var name = (record as Monitors.MonitorPlan)?.Name ?? path.Name;
            if (set.Count == 0)
                findings.Add(new(path.Member(members[0]), $"{name}: neither {string.Join(" nor ", members)} is set", $"set {list}") { Concerns = concerns });
            else if (atMostOne && set.Count > 1)
                findings.Add(new(path.Member(set[^1]), $"{name}: {string.Join(" and ", set)} exclude one another", $"keep {list}"));
        }
    }
}
