using MonitorSim.Tuning;

namespace MonitorSim.Tests.Tuning;

public class TuneTests
{
    [Fact]
    public void Problems_of_all_recordings_are_told_in_their_order()
    {
        var good = TuneBench.Trace("good", [1, 2, 3]);
        var without = new Trace("without", [0], []);
        var problems = Assert.Throws<InputException>(() => Tune.Run(TuneBench.Plan, [without, good, new Trace("also without", [0], [])])).Problems;
        Assert.Equal(["without", "also without"], problems.Select(problem => problem.Place).Distinct());
    }

    [Fact]
    public void TheLongestStepIsWhatAMonitorMayMiss()
    {
        var columns = TuneBench.Trace("uneven", [1, 2, 3, 4]).Columns;
        var tuned = Tune.Run(TuneBench.Plan, [new Trace("uneven", [0, 1_000_000, 4_000_000, 6_000_000], columns), TuneBench.Trace("even", [1, 2])]);
        Assert.Equal([0.001m, 0.003m], tuned.Recordings.Select(recording => recording.LongestStep));
        Assert.Equal(0.003m, tuned.LongestCycle);
    }

    [Fact]
    public void OnlyLevelsHaveNumbers() => Assert.Equal([null, null, null, 0, 1],
        Tune.Run(TuneBench.Plan, [TuneBench.Trace("run", [1, 2, 3])]).Monitors.Select(limit => limit.Level).Order());

    [Fact]
    public void NothingCannotBeJoined() =>
        Assert.Equal("parts: there is nothing to join; give at least one part", Assert.Single(Assert.Throws<InputException>(() => Tune.Join([])).Problems).ToString());
}
