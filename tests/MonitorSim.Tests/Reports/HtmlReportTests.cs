using System.Text.RegularExpressions;
using MonitorSim.Plans;
using MonitorSim.Reports;
using MonitorSim.Tests.Replays;
using MonitorSim.Tuning;

namespace MonitorSim.Tests.Reports;

public sealed partial class HtmlReportTests
{
    private const string Hostile = "<script>alert(1)</script>";

    /// <summary>Names of all kinds are shown, not run.</summary>
    [Fact]
    public void NamesAreShownAndNotRun()
    {
        var plan = PlanReader.Parse($$"""
            { "plan": 1, "title": "{{Hostile}} & \" ' title", "signals": { "{{Hostile}}": { "column": "g" } },
              "axes": { "{{Hostile}}x": { "motion": "linear", "standstill": "1 mm/s", "channels": { "velocity": { "column": "{{Hostile}}v", "unit": "mm/s" } },
                "stops": { "STO": {} },
                "monitors": [ { "name": "{{Hostile}}m", "function": "SLS", "request": "\"{{Hostile}}\"", "limit": "30 mm/s", "reaction": "stop 0" } ] } } }
            """);
        var trace = new Trace($"{Hostile}.csv", [0, 1_000_000, 2_000_000, 3_000_000],
            [new MonitorSim.Traces.NumberColumn($"{Hostile}v", null, [10, 10, 40, 40]), new MonitorSim.Traces.NumberColumn("g", null, [1, 1, 1, 1])]);
        var result = Replay.Run(plan, trace);
        Assert.Single(result.Trips);
        var page = Demo.Page(new(trace, result));
        Assert.DoesNotContain(Hostile, page);
        Assert.DoesNotContain("alert(1)</script>", page);
        foreach (var name in new[] { "x", "v", "m", ".csv" }) Assert.Contains($"&lt;script&gt;alert(1)&lt;/script&gt;{name}", page);
        Assert.Contains("<title>&lt;script&gt;", page);

        // One script and one block of data a scene: as many ends as beginnings.
        Assert.Equal(Regex.Count(page, "<script"), Regex.Count(page, "</script"));
        Assert.Equal(2, Regex.Count(page, "<script"));
    }

    [Fact]
    public void TheSameReportGivesTheSameBytesInEveryCulture()
    {
        var replayed = Demo.Replayed("bridge-stop-bad");
        var tuned = new TuneReport(Tune.Run(replayed.Result.Plan, [replayed.Trace]), replayed.Result.Plan);
        var (first, second) = (Demo.Page(replayed), HtmlReport.Text(tuned));
        InCulture.Each(() => Assert.Equal((first, second), (Demo.Page(replayed), HtmlReport.Text(tuned))));
    }

    [Fact]
    public void AMeasureUnderItsLowerLimitIsBelowIt()
    {
        var page = Demo.Page(Demo.Replayed("lift-slack"));
        Assert.Contains(" is below 4 ", page);
        Assert.DoesNotContain(" exceeds 4 ", page);
    }

    [Theory]
    [InlineData("bridge-gate-speed")]
    [InlineData("bridge-stop-bad")]
    [InlineData("blade-overspeed")]
    public void HeadingsTablesAndPicturesCanBeReadAloud(string name)
    {
        var replayed = Demo.Replayed(name);
        AssertReadable(Demo.Page(replayed));
        AssertReadable(HtmlReport.Text(new TuneReport(Tune.Run(replayed.Result.Plan, [replayed.Trace]))));
    }

    private static void AssertReadable(string page)
    {
        Assert.Contains("<html lang=\"en\">", page);
        var levels = Heading().Matches(page).Select(match => match.Groups[1].Value[0] - '0').ToList();
        Assert.Equal(1, levels[0]);
        Assert.Single(levels, 1);
        Assert.All(levels.Zip(levels.Skip(1)), pair => Assert.True(pair.Second <= pair.First + 1, $"h{pair.First} is followed by h{pair.Second}"));
        Assert.Equal(Regex.Count(page, "<table"), Regex.Count(page, "<caption"));
        Assert.Equal(Regex.Count(page, "<th[ >]"), Regex.Count(page, "<th [^>]*scope="));
        Assert.Equal(Regex.Count(page, "<img"), Regex.Count(page, "<img alt=\"[^\"]+\""));
        Assert.Equal(Regex.Count(page, "<svg"), Regex.Count(page, "<svg [^>]*role=\"img\" aria-label"));
        var ids = Regex.Matches(page, " id=\"([^\"]+)\"").Select(match => match.Groups[1].Value).ToList();
        Assert.Equal(ids.Count, ids.Distinct().Count());
    }

    /// <summary>The page needs nothing from elsewhere: every address in it is data or a place in the page.</summary>
    [Fact]
    public void NothingComesFromElsewhere()
    {
        var page = Demo.Page(Demo.Replayed("lift-standstill"));
        Assert.DoesNotContain("http://", page);
        Assert.DoesNotContain("https://", page);
        Assert.All(Regex.Matches(page, "(?:src|href)=\"([^\"]*)\"").Select(match => System.Net.WebUtility.HtmlDecode(match.Groups[1].Value)),
            address => Assert.True(address.StartsWith("data:image/svg+xml;base64,", StringComparison.Ordinal) || address.StartsWith('#'), address[..Math.Min(60, address.Length)]));
    }

    [Fact]
    public void TheVerdictComesFirstAndEverythingElseIsThere()
    {
        var replayed = Demo.Replayed("bridge-gate-speed");
        var page = System.Net.WebUtility.HtmlDecode(Demo.Page(replayed));
        var avoided = MonitorSim.Explain.Explanation.Lines(replayed.Result).Single(line => line.Contains("Avoided by a limit of", StringComparison.Ordinal)).Trim();
        var room = RoomTexts.Room(new(replayed.Result.Plan), replayed.Result.Headroom.Single());
        Assert.StartsWith("-", room);
        var parts = new[]
        {
            "<h1>Slab saw: bridge speed with the gate open</h1>", ">Tripped</strong>", replayed.Result.Plan.Sha256!, replayed.Trace.Sha256!, "Axis bridge", "came at 0.5 s; after its delay of 400 ms it has watched since 0.9 s",
            avoided, "How it came about", "Headroom:", room, "Coverage:", "StoppingToOff",
            "All settings", "\"limit\": \"33 mm/s\"", "Never defeat a safeguard to record a trace.", "Remarks", "Signature",
        };
        var at = -1;
        foreach (var part in parts)
        {
            var next = page.IndexOf(part, at + 1, StringComparison.Ordinal);
            Assert.True(next > at, $"not there, or too early: {part}");
            at = next;
        }
    }

    [Fact]
    public void ACleanReplaySaysThatItProvesLittle()
    {
        var page = Demo.Page(Demo.Replayed("bridge-stop-good"));
        Assert.Contains(">Clean</strong>", page);
        Assert.Contains("That says nothing about what a recording never challenged", page);
        Assert.Contains("closest to its limit at", page);
    }

    /// <summary>A long recording with many trips makes a page that can still be mailed, and that says what it leaves out.</summary>
    [Fact]
    public void ALongRecordingStaysSmall()
    {
        var plan = Bench.Plan("""
            "motion": "linear", "channels": { "velocity": { "column": "v", "unit": "mm/s" } }, "stops": { "STO": {} },
            "monitors": [ { "name": "m", "function": "SLS", "limit": "30 mm/s", "filter": "1.3 s", "reaction": "none", "request": "on" } ]
            """, """ "signals": { "on": { "column": "g" } }, "acknowledge": { "signal": "on" }, """);
        const int Count = 40_000;
        var v = Enumerable.Range(0, Count).Select(k => k % 1600 < 1500 ? 31 + 0.001 * (k % 7) : 0.0).ToArray();
        var g = Enumerable.Range(0, Count).Select(k => k % 1600 < 1550 ? 1.0 : 0.0).ToArray();
        var trace = Bench.Milliseconds(("v", v), ("g", g));
        var result = Replay.Run(plan, trace);
        Assert.Equal(25, result.Trips.Count);
        var page = Demo.Page(new(trace, result));
        Assert.InRange(page.Length, 1, 3_000_000);
        Assert.Contains("The first 20 trips are told at length", page);
        Assert.Contains("The picture shows 1200 of", page);
    }

    [Fact]
    public void AReportNeedsAReplay() => Assert.Throws<ArgumentException>(() => HtmlReport.Text(new ReplayReport(new Plan(), [])));

    [GeneratedRegex("<h([1-6])[ >]")]
    private static partial Regex Heading();
}
