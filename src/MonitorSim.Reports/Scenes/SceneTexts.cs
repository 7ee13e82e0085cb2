using MonitorSim.Explain;
using MonitorSim.Quantities;
using MonitorSim.Replays;

namespace MonitorSim.Reports.Scenes;

/// <summary>A scene's numbers in the unit in which the plan states the limit.</summary>
internal sealed class SceneTexts(Scene scene, UserUnits units)
{
    private ChainWindow Window => scene.History.Window;

    public Unit? Unit => units.UnitOf(Window.Axis, Window.Monitor, Window.Side, null, scene.History.Unit);

    /// <summary>The measure, with as many digits as tell it from the limit.</summary>
    public string Value(ChainCycle cycle) => Apart(cycle).Value;

    /// <summary>The limit, with as many digits as tell it from the measure.</summary>
    public string Limit(ChainCycle cycle) => Apart(cycle).Limit;

    /// <summary>How a measure that breaks the limit stands to it.</summary>
    public string Beyond => scene.History.Cycles.Any(cycle => cycle.ExceededAt is not null && cycle.Value < cycle.Limit) ? "is below" : "exceeds";

    private (string Value, string Limit) Apart(ChainCycle cycle) =>
        units.Apart(Window.Axis, Window.Monitor, Window.Side, cycle.Level, cycle.Value, cycle.Limit, scene.History.Unit);
}
