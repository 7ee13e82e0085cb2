using System.Collections;
using System.Reflection;
using MonitorSim.Quantities;

namespace MonitorSim.Assertions;

/// <summary>The unit in which the plan's author wrote the limits of a monitor.</summary>
internal static class UserUnit
{
    /// <summary>The unit of the monitor's first quantity of that kind; else of its axis's stops; else the SI unit itself.</summary>
    public static Unit Of(Plan plan, string axis, string monitor, string si)
    {
        var unit = Unit.Parse(si);
        if (!plan.Axes.TryGetValue(axis, out var axisPlan)) return unit;
        object? owner = axisPlan.Monitors.FirstOrDefault(m => m.Name == monitor);
        return Quantities(owner ?? axisPlan.Stops).FirstOrDefault(quantity => quantity.Unit.Dimension == unit.Dimension)?.Unit ?? unit;
    }

    private static IEnumerable<Quantity> Quantities(object? node) => node switch
    {
        Quantity quantity => [quantity],
        null or string => [],
        IEnumerable list => list.Cast<object?>().SelectMany(Quantities),
        _ when node.GetType() is { IsClass: true } type && type.Namespace?.StartsWith(nameof(MonitorSim), StringComparison.Ordinal) == true
            && type.GetProperty("EqualityContract", BindingFlags.Instance | BindingFlags.NonPublic) is not null =>
            type.GetProperties(BindingFlags.Instance | BindingFlags.Public).Where(p => p.GetIndexParameters().Length == 0).SelectMany(p => Quantities(p.GetValue(node))),
        _ => [],
    };
}
