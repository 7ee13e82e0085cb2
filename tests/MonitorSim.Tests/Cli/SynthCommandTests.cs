using MonitorSim.Cli;
using MonitorSim.Tests.Synthesis;

namespace MonitorSim.Tests.Cli;

public sealed class SynthCommandTests : CommandTest
{
    private static readonly string Scenario = Path.Combine(ScenarioErrorTests.Examples(), "worn-encoder.json");

    [Fact]
    public void It_writes_the_recording_and_says_what_is_in_it()
    {
        var file = Path.Combine(Folder, "out.csv");
        Assert.Equal(0, Run("synth", Scenario, "-o", file));
        Assert.Equal($"{file}: 3351 samples, 6.7 s, seed 21; columns: angle [deg], angle 2 [deg], speed [rpm]\n", Out.ToString().ReplaceLineEndings("\n"));
        Assert.StartsWith("time,angle,angle 2,speed\ns,deg,deg,rpm\n0,0,0,", File.ReadAllText(file), StringComparison.Ordinal);
    }

    [Fact]
    public void On_standard_output_it_is_the_same_bytes_and_alone()
    {
        var file = Path.Combine(Folder, "out.csv");
        Assert.Equal(0, Run("synth", Scenario, "--output", file, "--quiet"));
        Assert.Equal(0, Run("synth", Scenario, "-o", "-"));
        Assert.Equal("", Out.ToString());
        Assert.Equal(File.ReadAllBytes(file), Bytes.ToArray());
    }

    [Fact]
    public void A_seed_makes_another_noise_and_has_a_range()
    {
        var (first, second) = (Path.Combine(Folder, "1.csv"), Path.Combine(Folder, "2.csv"));
        Assert.Equal(0, Run("synth", Scenario, "-o", first));
        Assert.Equal(0, Run("synth", Scenario, "-o", second, "--seed", "22"));
        Assert.NotEqual(File.ReadAllBytes(first), File.ReadAllBytes(second));
        Assert.Equal(2, Run("synth", Scenario, "-o", second, "--seed", "-1"));
        Assert.Equal("seed: seed: -1 is below 0; write 0 or more", Error.ToString().TrimEnd());
    }
}
