using MonitorSim.Explain;
using MonitorSim.Monitors;
using MonitorSim.Replays;

namespace MonitorSim.Reports.Scenes;

/// <summary>The five links of a chain at one cycle, in words: what the page shows before its script runs, and on paper. The script says the same.</summary>
/// <param name="Request">Since when it is asked for.</param>
/// <param name="Arming">How far the arming clock is.</param>
/// <param name="Measure">The measure against its limit.</param>
/// <param name="Filter">How far the filter clock is.</param>
/// <param name="Trip">The state of the monitor and its axis.</param>
internal sealed record ChainLinks(string Request, string Arming, string Measure, string Filter, string Trip)
{
    public static ChainLinks At(Scene scene, ChainCycle cycle, SceneTexts texts)
    {
        var history = scene.History;
        return new(
            cycle.RequestedAt is { } asked ? $"since {Say.Seconds(asked)}" : "none",
            cycle.RequestedAt is not { } from ? "stands still"
                : cycle.WatchingAt is { } watching ? $"done: watching since {Say.Seconds(watching)}"
                : $"{Say.Seconds(cycle.Time - from)} of {Say.Seconds(history.Delay)}",
            cycle.Value is null ? "not compared" : $"{texts.Value(cycle)} {(cycle.ExceededAt is null ? "keeps" : texts.Beyond)} {texts.Limit(cycle)}",
            cycle.ExceededAt is { } since ? $"{Say.Seconds(cycle.Time - since)} of {Say.Seconds(history.Filter)}" : "stands still",
            $"{(cycle.State == MonitorState.Tripped ? "tripped" : "no trip")}; {history.Window.Axis}: {cycle.Axis}");
    }
}
