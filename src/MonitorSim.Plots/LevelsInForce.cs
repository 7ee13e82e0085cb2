using System.Globalization;
using MonitorSim.Monitors;

namespace MonitorSim.Plots;

/// <summary>Which of several speed levels counted when: the chosen one, or a laxer one that was given up less than the delay ago. Read from the log, in which the
/// replay notes each choice.</summary>
internal static class LevelsInForce
{
    private const string Event = "level ";

    /// <summary>Stretches without a change, in order.</summary>
    /// <param name="result">The replay.</param>
    /// <param name="axis">The axis.</param>
    /// <param name="monitor">The monitor with levels.</param>
    /// <param name="stretch">A stretch of its request in which it watched.</param>
    public static IReadOnlyList<(decimal From, decimal Until, int Level)> Of(ReplayResult result, string axis, Sls monitor, WatchStretch stretch)
    {
        var delay = (monitor.Delay?.Nanoseconds ?? 0) / 1_000_000_000m;
        var choices = result.Events
            .Where(line => line.Axis == axis && line.Source == monitor.Name && line.Event.StartsWith(Event, StringComparison.Ordinal) && line.Time >= stretch.RequestedAt && line.Time <= stretch.Until)
            .Select(line => (line.Time, Level: int.Parse(line.Event[Event.Length..], CultureInfo.InvariantCulture))).ToList();
        var from = stretch.WatchingAt!.Value;
        List<decimal> moments = [from, .. choices.SelectMany(choice => new[] { choice.Time, choice.Time + delay }).Where(time => time > from && time < stretch.Until).Distinct().Order(), stretch.Until];
        var found = new List<(decimal From, decimal Until, int Level)>();
        for (var k = 0; k + 1 < moments.Count; k++)
        {
            if (At(moments[k]) is not { } level) continue;
            if (found.Count > 0 && found[^1].Level == level) found[^1] = found[^1] with { Until = moments[k + 1] };
            else found.Add((moments[k], moments[k + 1], level));
        }

        return found;

        int? At(decimal time)
        {
            int? laxest = null;
            for (var k = 0; k < choices.Count && choices[k].Time <= time; k++)
            {
                var isGivenUp = k + 1 < choices.Count && choices[k + 1].Time <= time && time - choices[k + 1].Time >= delay;
                if (!isGivenUp && (laxest is not { } other || Limit(choices[k].Level) >= Limit(other))) laxest = choices[k].Level;
            }

            return laxest;
        }

        double Limit(int level) => monitor.Levels![level].Limit.Si;
    }
}
