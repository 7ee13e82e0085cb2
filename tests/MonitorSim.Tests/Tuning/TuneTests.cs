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
}
