using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text.Json;
using MonitorSim.Cli;

namespace MonitorSim.Tests.Cli;

/// <summary><c>stop</c>, as its user runs it.</summary>
public sealed class StopCommandTests : CommandTest
{
    public StopCommandTests()
    {
        File.WriteAllText(Plan, """
            { "plan": 1, "title": "Lift", "cycle": "4 ms", "reactionDelay": "10 ms",
              "axes": { "lift": { "motion": "linear", "standstill": "1 mm/s",
                "channels": { "position": { "column": "p", "unit": "mm" }, "velocity": { "column": "v", "unit": "mm/s" } },
                "stops": { "STO": {}, "SS1": { "variant": "r", "deceleration": "1 m/s²", "tolerance": "50 mm/s", "delay": "20 ms" }, "SBC": { "apply": "60 ms" } },
                "plant": { "mass": "100 kg", "load": "-981 N", "coulomb": "50 N", "limit": "2 kN", "brake": { "torque": "2 kN", "apply": "60 ms" } },
                "monitors": [ { "name": "travel", "function": "SLS", "limit": "200 mm/s", "reaction": "stop 0" } ] } } }
            """);
        File.WriteAllText(Trace, "t [ms];p;v\n" + string.Join('\n', Enumerable.Range(0, 500).Select(k =>
            string.Create(CultureInfo.InvariantCulture, $"{k};{Math.Max(0, k - 200) * 0.1:0.###};{(k < 200 ? 0 : 100)}"))));
    }

    private string Plan => Path.Combine(Folder, "lift.json");

    private string Trace => Path.Combine(Folder, "lift.csv");

    /// <summary>How far does the lift drop if its drive runs away at the worst moment? From 100 mm/s down: (2000 + 981 - 50)/100 = 29.31 m/s² to the limit, one cycle and 10 ms more, 60 ms at
    /// 9.31 m/s² until the brake has closed, then (2000 + 50 - 981)/100 = 10.69 m/s² (derived).</summary>
    [Fact]
    public void HowFarDoesTheLiftDrop()
    {
        Assert.Equal(0, Run("stop", Plan, Trace, "--fault", "runaway", "--direction", "negative", "--json", Path.Combine(Folder, "stop.json")));
        using var result = JsonDocument.Parse(File.ReadAllText(Path.Combine(Folder, "stop.json")));
        var fall = result.RootElement.GetProperty("envelopes")[0].GetProperty("worst").EnumerateArray().First(worst => worst.GetProperty("figure").GetString() == "fall").GetProperty("value").GetDouble();
        var off = 0.2 + 0.014 * 29.31;
        var closed = off + 0.06 * 9.31;
        // The worst begins at rest: from there to the limit it falls v²/2a, upwards it turns first.
        Assert.Equal(off * off / (2 * 29.31) + (off + closed) / 2 * 0.06 + closed * closed / (2 * 10.69), fall, 1e-6);
        Assert.Contains("It falls", Out.ToString());
        Assert.Contains("Found by travel after", Out.ToString());
        Assert.Contains("It is not a safety component", Out.ToString().ReplaceLineEndings(" "));
    }

    /// <summary>The page of the result names every member that there is.</summary>
    [Fact]
    public void ThePageOfTheResultIsComplete()
    {
        var page = File.ReadAllText(Page());
        foreach (var arguments in new string[][] { ["stop", Plan], ["stop", Plan, Trace] })
        {
            Assert.Equal(0, Run([.. arguments, "--json", Path.Combine(Folder, "stop.json")]));
            using var result = JsonDocument.Parse(File.ReadAllText(Path.Combine(Folder, "stop.json")));
            Assert.All(Members(result.RootElement).Distinct(), member => Assert.Contains($"`{member}`", page, StringComparison.Ordinal));
        }
    }

    private static IEnumerable<string> Members(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => element.EnumerateObject().SelectMany(member => Members(member.Value).Prepend(member.Name)),
        JsonValueKind.Array => element.EnumerateArray().SelectMany(Members),
        _ => [],
    };

    private static string Page([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "../../../docs/formats/stop.md"));

    [Fact]
    public void StopsFromTheLimits()
    {
        Assert.Equal(0, Run("stop", Plan, "--csv", Folder));
        Assert.Contains("-200 mm/s", Out.ToString());
        Assert.Equal(3, File.ReadAllLines(Path.Combine(Folder, "stops.csv")).Length);
    }

    /// <summary>Each axis in its own units, and in pictures of its own.</summary>
    [Fact]
    public void TwoAxes()
    {
        File.WriteAllText(Plan, """
            { "plan": 1, "axes": {
                "a b": { "motion": "linear", "channels": { "velocity": { "column": "v", "unit": "mm/s" } }, "stops": { "STO": {} }, "plant": { "mass": "1 kg", "coulomb": "1 N" } },
                "a_b": { "motion": "rotary", "channels": { "velocity": { "column": "v", "unit": "rpm" } }, "stops": { "STO": {} }, "plant": { "inertia": "1 kg·m²", "coulomb": "1 N·m" } } } }
            """);
        File.WriteAllText(Trace, "t [s];v\n0;100\n1;200\n");
        Assert.Equal(0, Run("stop", Plan, Trace, "--demand", "stop0", "--plot", Folder, "--horizon", "100 s"));
        Assert.Contains("from 200 mm/s", Out.ToString());
        Assert.Contains("from 200 rpm", Out.ToString());
        Assert.Equal(4, Directory.GetFiles(Folder, "*.png").Length);
        Assert.Contains("from 200 rpm", File.ReadAllText(Path.Combine(Folder, "a_b-2-stop.svg")));
    }

    [Fact]
    public void ABrakeThatStaysOpenIsSaid()
    {
        Assert.Equal(0, Run("stop", Plan, Trace, "--fault", "runaway", "openBrake", "--horizon", "2 s"));
        Assert.Contains("NOT STOPPED: at 500 of 500 moments", Out.ToString());
    }

    [Fact]
    public void AnEmergencyStopAtEveryMoment()
    {
        Assert.Equal(0, Run("stop", Plan, Trace, "--demand", "stop1", "--csv", Folder));
        Assert.Contains("Worst at 0.2 s: stop 1 from 100 mm/s.", Out.ToString());
        Assert.Equal(501, File.ReadAllLines(Path.Combine(Folder, "envelope.csv")).Length);
    }

    [Fact]
    public void PicturesAreDrawn()
    {
        Assert.Equal(0, Run("stop", Plan, Trace, "--plot", Folder));
        Assert.Equal(0, Run("stop", Plan, "--speed", "300 mm/s", "--plot", Path.Combine(Folder, "speed")));
        foreach (var name in new[] { "lift-envelope", "lift-stop", "speed/lift-stop" })
        {
            Assert.True(new FileInfo(Path.Combine(Folder, name + ".png")).Length > 10_000);
            Assert.Contains("<svg", File.ReadAllText(Path.Combine(Folder, name + ".svg")));
        }

        Assert.Equal("", Error.ToString());
    }

    [Theory]
    [InlineData("there is no fault 'runawy'; did you mean 'runaway'?", "--fault", "runawy")]
    [InlineData("'sideways' is no direction", "--direction", "sideways")]
    [InlineData("there is no axis 'lft'", "--axis", "lft")]
    [InlineData("has no unit", "--speed", "500")]
    [InlineData("is no speed of axis 'lift'", "--speed", "500 rpm")]
    [InlineData("is no time above 0", "--horizon", "2 mm")]
    public void WrongOptionsAreErrors(string message, params string[] options)
    {
        Assert.Equal(2, Run(["stop", Plan, .. options]));
        Assert.Contains(message, Error.ToString());
        Assert.Single(Error.ToString().TrimEnd().Split('\n'));
    }

    [Fact]
    public void APlanWithoutAPlantIsAnError()
    {
        File.WriteAllText(Plan, """{ "plan": 1, "axes": { "x": { "motion": "linear", "stops": { "STO": {} } } } }""");
        Assert.Equal(2, Run("stop", Plan));
        Assert.Contains("axes.x.plant", Error.ToString());
    }

    [Fact]
    public void QuietSaysNothing()
    {
        Assert.Equal(0, Run("stop", Plan, Trace, "--quiet"));
        Assert.Equal("", Out.ToString() + Error);
    }
}
