using MonitorSim.Traces;

namespace MonitorSim.Tests.Traces;

/// <summary>Open recordings; where they come from stands in the README beside them.</summary>
public class DatasetTests
{
    private static string Path(string name)
    {
        var folder = Environment.GetEnvironmentVariable("MONITORSIM_DATASETS") ?? Root();
        var path = folder is null ? null : System.IO.Path.Combine(folder, name);
        Skip.IfNot(path is not null && File.Exists(path), $"the recording {name} is not there; set MONITORSIM_DATASETS to the folder that holds it");
        return path!;
    }

    private static string? Root()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (!File.Exists(System.IO.Path.Combine(folder.FullName, "MonitorSim.sln"))) continue;
            return System.IO.Path.Combine(folder.Parent!.FullName, "shared", "datasets");
        }

        return null;
    }

    [SkippableFact]
    public void Kr300()
    {
        var trace = TraceReader.Read(Path("kr300/run_a.csv"));
        var speed = trace.Numbers("a6_act_vel_mot_deg_per_s");
        Assert.Equal(2_016_000_000, trace.Times[504]);
        Assert.True(Math.Abs(speed[504]) > 5 && Math.Abs(speed[503]) <= 5);
        var position = trace.Numbers("a1_act_pos_mot_deg");
        Assert.Equal(190, Array.FindIndex(position, p => Math.Abs(p - position[0]) > 0.0075));
        Assert.Equal(25.3308, trace.Numbers("a1_act_vel_mot_deg_per_s").Max(), 4);
    }

    [SkippableFact]
    public void Panda()
    {
        var trace = TraceReader.Read(Path("panda/joint1.csv"));
        Assert.Equal(20544, trace.Count);
        Assert.Equal(20.9991, trace.Times[^1] / 1e9, 4);
        var survey = TraceSurvey.OfFile(Path("panda/joint1.csv"));
        Assert.Equal(4, survey.Gaps.Count);
        Assert.All(survey.Gaps, g => Assert.InRange(g.Duration, 8_200_000, 8_820_000));
        Assert.Equal((0.70, 8.81), (Math.Round(survey.Sampling!.Shortest / 1e6, 2), Math.Round(survey.Sampling.Longest / 1e6, 2)));
        Assert.Equal(["rad", "rad/s", "N·m"], survey.Columns.Select(c => c.Unit));
    }

    [SkippableFact]
    public void Elevator()
    {
        var trace = TraceReader.Read(Path("elevator/ride_up.csv"));
        Assert.Equal(["accz_m_s2"], trace.Columns.Select(c => c.Name));
        Assert.Equal(11.274765, trace.Numbers("accz_m_s2")[0]);
    }

    [SkippableTheory]
    [InlineData("001", 937)]
    [InlineData("020", 937)]
    [InlineData("080", 1088)]
    [InlineData("093", 1088)]
    public void Arm6(string run, int samples)
    {
        var trace = TraceReader.Read(Path($"arm6/run_{run}.csv"));
        Assert.Equal(samples, trace.Count);
        Assert.Equal(12, trace.Columns.Count);
        Assert.All(trace.Columns, c => Assert.IsType<NumberColumn>(c));
    }
}
