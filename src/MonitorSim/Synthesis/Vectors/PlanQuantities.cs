using System.Collections;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>Every quantity that a part of a plan states, with its kind.</summary>
internal static class PlanQuantities
{
    /// <summary>The quantities of a record, of the records in it, and of the lists in those.</summary>
    public static IEnumerable<(Kind Kind, Quantity Quantity)> Of(object record)
    {
        foreach (var member in PlanType.Of(record.GetType()).Members)
        {
            if (member.Get(record) is not { } value) continue;
            foreach (var found in Of(value, member)) yield return found;
        }
    }

    private static IEnumerable<(Kind Kind, Quantity Quantity)> Of(object value, PlanMember member)
    {
        switch (value)
        {
            case Quantity quantity:
                if (member.Kind is { } kind) yield return (kind.Kind, quantity);
                break;
            case string or Condition or Unit or GearRatio:
                break;
            case IEnumerable items:
                foreach (var item in items)
                    foreach (var found in Of(item, member)) yield return found;
                break;
            default:
                if (!PlanType.IsRecord(value.GetType()) && value is not Monitors.MonitorPlan) break;
                foreach (var found in Of(value)) yield return found;
                break;
        }
    }
}
