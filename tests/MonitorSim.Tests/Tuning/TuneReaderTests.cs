using MonitorSim.Tuning;

namespace MonitorSim.Tests.Tuning;

public sealed class TuneReaderTests
{
    private static readonly string Good = TuneBench.Json(Tune.Run(TuneBench.Plan, [TuneBench.Trace("run", [0x41, 0x47, 0x47, 0x46, 0x45, 0x40])]));

    /// <summary>Each message has file, line and column, what was found, and what would be right.</summary>
    [Theory]
    [InlineData("\"tune\": 1", "\"tune\": 2", "part(1,1): this is no tuning result: it lacks \"tune\": 1; name a file that tune --json wrote")]
    [InlineData("\"samples\": 6", "\"samples\": -6", "part(14,18): 'samples' is the number -6; it is a whole number, 0 or more; write the file again with tune --json")]
    [InlineData("\"samples\": 6", "\"simples\": 6", "part(11,5): 'samples' is missing; it is a whole number, 0 or more; write the file again with tune --json")]
    [InlineData("\"unit\": \"m/s\"", "\"unit\": 4", "part(26,15): 'unit' is the number 4; it is a text; write the file again with tune --json")]
    [InlineData("\"limit\": 0.002", "\"limit\": null", "part(30,16): 'limit' is null; it is a number; write the file again with tune --json")]
    [InlineData("\"written\": \"2 mm/s\"", "\"written\": \"2 elephants\"", "part(27,18): ")]
    [InlineData("\"title\": \"bench\"", "\"title\": ", "part(4,")]
    [InlineData("\"reaction\": \"stop 0\"", "\"reaction\": \"stop 7\"", "part(28,19): 'stop 7' is no reaction; write stop 0, stop 1, stop 2 or none")]
    public void WhatIsWrongIsSaidWithItsPlace(string right, string wrong, string message)
    {
        var at = Good.IndexOf(right, StringComparison.Ordinal);
        Assert.True(at >= 0, Good[..1200]);
        var problem = Assert.Throws<InputException>(() => TuneReader.Parse(Good[..at] + wrong + Good[(at + right.Length)..])).Problems[0];
        Assert.StartsWith(message, problem.ToString());
    }

    /// <summary>A part that somebody edited is not believed.</summary>
    [Fact]
    public void AFrontierThatContradictsItselfIsRefused()
    {
        var wrong = Assert.Throws<InputException>(() => TuneReader.Parse(Good.Replace("\"critical\": 0.006", "\"critical\": 0.0061", StringComparison.Ordinal)));
        Assert.Contains(wrong.Problems, problem => problem.What == "the critical limit is not that of the frontier");
        wrong = Assert.Throws<InputException>(() => TuneReader.Parse(Good.Replace("\"trace\": \"run\",\n          \"critical\"", "\"trace\": \"ran\",\n          \"critical\"", StringComparison.Ordinal)));
        Assert.All(wrong.Problems, problem => Assert.Equal("'ran' is not among the recordings", problem.What));
    }

    [Fact]
    public void NoSuchFile() => Assert.StartsWith("no such part.json: there is no such file;", Assert.Throws<InputException>(() => TuneReader.Read("no such part.json")).Message);

    [Fact]
    public void AFrontierThatDoesNotFallIsRefused()
    {
        var part = Tune.Run(TuneBench.Plan, [TuneBench.Trace("run", [0x41, 0x47, 0x47, 0x46, 0x45, 0x40])]);
        var falling = part.Monitors.First(limit => limit.Frontier.Count > 1);
        foreach (FrontierStep[] wrong in new FrontierStep[][] { [.. falling.Frontier.Reverse()], [falling.Frontier[0], falling.Frontier[0] with { Filter = 1 }], [falling.Frontier[0], falling.Frontier[1] with { Filter = falling.Frontier[0].Filter }] })
        {
            var text = TuneBench.Json(part with { Monitors = [.. part.Monitors.Select(limit => limit == falling ? limit with { Frontier = wrong } : limit)] });
            Assert.Contains(Assert.Throws<InputException>(() => TuneReader.Parse(text)).Problems, problem => problem.What == "the steps of this frontier do not fall");
        }
    }

    /// <summary>Every member with a value of its own, so that none can stand for another.</summary>
    [Fact]
    public void PhasesAreReadAsTheyWereWritten()
    {
        var part = Tune.Run(TuneBench.Plan, [TuneBench.Trace("run", [1, 2, 3])]) with
        {
            Phases = [new("run", new("x", "range", 0.001m, 0.002m, 0.003m, 0.004m, 0.005m) { Limits = [new("upper", 1, 0.6, 0.007m, 0.8, 0.009m), new("lower", null, null, 0.01m, null, 0.011m)] })],
        };
        var read = Assert.Single(TuneReader.Parse(TuneBench.Json(part)).Phases);
        var limits = part.Phases[0].Outcome.Limits;
        Assert.Equal(limits, read.Outcome.Limits);
        Assert.Equal(part.Phases[0], read with { Outcome = read.Outcome with { Limits = limits } });
    }

    [Fact]
    public void AListIsNoResult() =>
        Assert.Equal("part(1,1): this is no tuning result; name a file that tune --json wrote", Assert.Single(Assert.Throws<InputException>(() => TuneReader.Parse("[]")).Problems).ToString());

    [Fact]
    public void WhatCannotBeReadIsSaid()
    {
        var folder = Path.GetTempPath();
        var said = Assert.Single(Assert.Throws<InputException>(() => TuneReader.Read(folder)).Problems);
        Assert.Equal((folder, "name a file that tune --json wrote"), (said.Place, said.Fix));
        Assert.StartsWith("the file cannot be read (", said.What, StringComparison.Ordinal);
    }
}
