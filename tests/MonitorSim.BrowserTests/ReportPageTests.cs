using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.BrowserTests;

public sealed class ReportPageTests(Chromium chromium) : IClassFixture<Chromium>
{
    private const string Hostile = "<script>alert(1)</script>";

    [SkippableTheory]
    [InlineData("bridge-gate-speed")]
    [InlineData("bridge-two-encoders")]
    [InlineData("lift-standstill")]
    public async Task AReplayIsAccessibleAndQuiet(string name) => await AssertGood(Pages.ReplayOf(name));

    [SkippableFact]
    public async Task ATuningIsAccessibleAndQuiet() => await AssertGood(Pages.TuningOf("bridge-gate-speed"));

    /// <summary>On a telephone pictures and tables scroll, the page does not.</summary>
    [SkippableTheory]
    [InlineData(400)]
    [InlineData(800)]
    public async Task ANarrowPageDoesNotScrollSideways(int width)
    {
        foreach (var html in new[] { Pages.ReplayOf("lift-standstill"), Pages.TuningOf("bridge-gate-speed") })
        {
            await using var open = await chromium.Open(html, width);
            Assert.Equal(width, await open.Page.EvaluateAsync<int>("Math.max(document.documentElement.scrollWidth, window.innerWidth)"));
        }
    }

    [SkippableFact]
    public async Task NamesAreShownAndNotRun()
    {
        var plan = PlanReader.Parse($$"""
            { "plan": 1, "title": "{{Hostile}}", "axes": { "{{Hostile}}x": { "motion": "linear", "channels": { "velocity": { "column": "{{Hostile}}", "unit": "mm/s" } }, "stops": { "STO": {} },
                "monitors": [ { "name": "<img src=x onerror=alert(1)>", "function": "SLS", "limit": "30 mm/s", "reaction": "stop 0" } ] } } }
            """);
        var trace = new Trace("</script>.csv", [0, 1_000_000, 2_000_000, 3_000_000], [new NumberColumn(Hostile, null, [10, 10, 40, 40])]);
        await using var open = await chromium.Open(Pages.Of(new(trace, Replay.Run(plan, trace))));
        Assert.Empty(open.Complaints);
        Assert.Single(open.Requests, address => !address.StartsWith("data:", StringComparison.Ordinal));
        Assert.Equal(Hostile, await open.Page.Locator("h1").InnerTextAsync());
        Assert.Contains($"column “{Hostile}”", await open.Page.Locator("#subject ~ table").Last.InnerTextAsync());
        Assert.Contains("exceeds 30 mm/s", await open.Page.Locator("[data-link=measure] dd").First.InnerTextAsync());
    }

    [SkippableFact]
    public async Task ItPrintsOnA4()
    {
        await using var open = await chromium.Open(Pages.ReplayOf("bridge-gate-speed"));
        var pdf = System.Text.Encoding.Latin1.GetString(await open.Page.PdfAsync(new() { PreferCSSPageSize = true }));
        Assert.StartsWith("%PDF-", pdf);
        Assert.Matches(@"/MediaBox \[0 0 59[45][.\d]* 84[12][.\d]*\]", pdf);
        await open.Page.EmulateMediaAsync(new() { Media = Microsoft.Playwright.Media.Print });
        Assert.False(await open.Page.Locator(".controls").First.IsVisibleAsync());
        Assert.True(await open.Page.Locator(".chain").First.IsVisibleAsync());
        Assert.True(await open.Page.Locator(".lines").IsVisibleAsync());
    }

    private async Task AssertGood(string html)
    {
        await using var open = await chromium.Open(html);
        var found = await open.Page.RunAxe(new AxeRunOptions());
        Assert.Empty(found.Violations.Select(violation => $"{violation.Id}: {violation.Help}: {string.Join(" ", violation.Nodes.Select(node => node.Html))}"));
        Assert.Empty(open.Complaints);
        Assert.Single(open.Requests, address => !address.StartsWith("data:", StringComparison.Ordinal));
    }
}
