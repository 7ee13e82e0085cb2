using MonitorSim.Tests.Replays;

namespace MonitorSim.Tests.Tuning;

/// <summary>The critical limit of a level whose exceedance another level carries on.</summary>
public class CriticalLevelTests
{
    [Fact]
    public void A_stretch_that_another_level_carries_to_the_filter_counts_for_the_level_that_began_it()
    {
        // Level 0 at 1 and 2 ms (1 and 3 mm/s), level 1 (limit 0) from 3 ms on. The stretch 2 ms..8 ms has only the 3 mm/s of level 0;
        // 1 ms..3 ms lasts too, but has the 1 mm/s in it.
        var plan = Bench.Linear("v", """ "function": "SLS", "filter": "1.5 ms", "levels": [ { "when": "early", "limit": "1 mm/s" }, { "when": "always", "limit": "0 mm/s" } ] """,
            """ "signals": { "early": { "windows": [["1 ms", "3 ms"]] } }, """);
        var headroom = Replay.Run(plan, Bench.At([0, 1_000_000, 2_000_000, 3_000_000, 8_000_000], ("v", [0, 1, 3, 3, 1]))).Headroom.Single(h => h.Level == 0);
        Assert.Equal((0.003, 0.008m), (headroom.Critical, headroom.Time));
    }
}
