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
}
