using Fractions;
using FsCheck.Xunit;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Traces;

public class SurveyTests
{
    private static TraceSurvey Of(string text)
    {
        var trace = TraceReader.Read(new MemoryStream(System.Text.Encoding.UTF8.GetBytes(text)), "run.csv", null, null, out var found);
        return TraceSurvey.Of(trace, found);
    }

    [Fact]
    public void Columns_with_ranges_units_words_and_missing_cells()
    {
        var survey = Of("t_ms,speed [mm/s],qd1_rad_s,mode,door\n0,-1.5,1,a,on\n10,,2,b,OFF\n20,7,3,,on\n");
        Assert.Equal(20_000_000, survey.Duration);
        Assert.Equal(["speed [mm/s]", "qd1_rad_s", "mode", "door"], survey.Columns.Select(c => c.Name));
        Assert.Equal(("mm/s", false), (survey.Columns[0].Unit, survey.Columns[0].UnitIsGuess));
        Assert.Equal((-1.5, 7.0, 1), (survey.Columns[0].Smallest, survey.Columns[0].Largest, survey.Columns[0].Missing));
        Assert.Equal(("rad/s", true), (survey.Columns[1].Unit, survey.Columns[1].UnitIsGuess));
        Assert.Equal((2, 1, false), (survey.Columns[2].DistinctWords, survey.Columns[2].Missing, survey.Columns[2].IsSwitch));
        Assert.Equal(["a", "b"], survey.Columns[2].Words);
        Assert.True(survey.Columns[3].IsSwitch);
    }

    [Theory]
    [InlineData("a1_act_vel_mot_deg_per_s", "deg/s")]
    [InlineData("qd1_rad_s", "rad/s")]
    [InlineData("q1_rad", "rad")]
    [InlineData("accz_m_s2", "m/s²")]
    [InlineData("tau_Nm", "N·m")]
    [InlineData("a1_act_torque_abs_nm", "N·m")]
    [InlineData("a1_act_pos_mot_deg", "deg")]
    [InlineData("t_s", "s")]
    [InlineData("drive_rpm", "rpm")]
    [InlineData("pull_N", "N")]
    [InlineData("press_n", null)]
    [InlineData("speed", null)]
    [InlineData("_s", null)]
    [InlineData("mode", null)]
    public void Units_guessed_from_names(string name, string? unit) => Assert.Equal(unit, HeaderText.Guessed(name));

    [Fact]
    public void Steps_gaps_and_jitter()
    {
        var survey = Of("t_ms,v\n0,1\n10,1\n20.5,1\n30,1\n40,1\n100,1\n");
        Assert.Equal((9_500_000, 60_000_000), (survey.Sampling!.Shortest, survey.Sampling.Longest));
        Assert.Equal(new Fraction(10_000_000), survey.Sampling.Median);
        Assert.Equal([new Gap(5, 40_000_000, 100_000_000)], survey.Gaps);
        Assert.Equal(500_000, survey.Jitter);
        Assert.Equal(100, survey.Sampling.Rate);
    }

    [Fact]
    public void At_five_medians_there_is_no_gap_yet()
    {
        Assert.Empty(Of("t_ns,v\n0,1\n1,1\n2,1\n7,1\n").Gaps);
        Assert.Single(Of("t_ns,v\n0,1\n1,1\n2,1\n8,1\n").Gaps);

        // Four steps 1, 1, 2, 8: the median is 1.5, five of them 7.5.
        Assert.Single(Of("t_ns,v\n0,1\n1,1\n2,1\n4,1\n12,1\n").Gaps);
        Assert.Empty(Of("t_ns,v\n0,1\n1,1\n2,1\n4,1\n11,1\n").Gaps);
    }

    [Fact]
    public void One_sample_has_no_steps()
    {
        var survey = Of("t,v\n5,1\n");
        Assert.Null(survey.Sampling);
        Assert.Empty(survey.Gaps);
    }

    [Property(MaxTest = 300)]
    public void The_median_is_that_of_the_sorted_steps(uint[] raw)
    {
        var steps = raw.Select(r => (long)r * r + 1).ToArray();
        var times = new long[steps.Length + 1];
        for (var k = 0; k < steps.Length; k++) times[k + 1] = times[k] + steps[k];
        var sampling = Sampling.Of(times);
        if (steps.Length == 0)
        {
            Assert.Null(sampling);
            return;
        }

        Array.Sort(steps);
        Assert.Equal((new Fraction(steps[(steps.Length - 1) / 2]) + new Fraction(steps[steps.Length / 2])) / 2, sampling!.Median);
        Assert.Equal((steps[0], steps[^1]), (sampling.Shortest, sampling.Longest));
    }
}
