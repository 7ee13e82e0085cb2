using MonitorSim.Explain;
using MonitorSim.Reports;
using MonitorSim.Reports.Scenes;
using static Microsoft.Playwright.Assertions;

namespace MonitorSim.BrowserTests;

/// <summary>The replay in the page is driven as a teacher would, and held against the library's answer for the same cycle.</summary>
public sealed class DrivenReplayTests(Chromium chromium) : IClassFixture<Chromium>
{
    private readonly ReplayedTrace _replayed = Pages.Replayed("bridge-gate-speed");

    private Scene Scene => SceneList.Of(_replayed, "r1").Trips[0]!;

    /// <summary>Every cycle of the scene, by its slider: request, arming, measure, filter and trip read as the library says.</summary>
    [SkippableFact]
    public async Task EveryCycleShowsWhatTheLibrarySays()
    {
        await using var open = await chromium.Open(Pages.Of(_replayed));
        var scene = Scene;
        var texts = new SceneTexts(scene, new UserUnits(_replayed.Result.Plan));
        var shown = await open.Page.EvaluateAsync<string[]>("""
            () => {
              const scene = document.querySelector(".scene"), slider = scene.querySelector("input[type=range]"), all = [];
              for (let k = 0; k <= Number(slider.max); k++) {
                slider.value = k;
                slider.dispatchEvent(new Event("input"));
                all.push([...scene.querySelectorAll("dd")].map(link => link.textContent).join("|"));
              }
              return all;
            }
            """);
        var expected = scene.History.Cycles.Select(cycle => ChainLinks.At(scene, cycle, texts))
            .Select(links => string.Join('|', links.Request, links.Arming, links.Measure, links.Filter, links.Trip)).ToArray();
        Assert.True(expected.Distinct().Count() > 50);
        Assert.Equal(expected, shown);
        Assert.Empty(open.Complaints);
    }

    [SkippableFact]
    public async Task StepsByButtonAndByKey()
    {
        await using var open = await chromium.Open(Pages.Of(_replayed));
        var scene = Scene;
        Task<string> Now() => open.Page.Locator(".scene .now").First.InnerTextAsync();
        string Cycle(int offset) => $"cycle {scene.Cycle.Index + offset}, {Say.Seconds(scene.History.Cycles[scene.At + offset].Time)}";

        Assert.Equal(Cycle(0), await Now());
        await open.Page.Locator(".back").First.ClickAsync();
        Assert.Equal(Cycle(-1), await Now());
        Assert.StartsWith("no trip", await open.Page.Locator("[data-link=trip] dd").First.InnerTextAsync());
        await open.Page.Locator(".step").First.ClickAsync();
        Assert.StartsWith("tripped", await open.Page.Locator("[data-link=trip] dd").First.InnerTextAsync());
        await open.Page.Locator(".back").First.FocusAsync();
        await open.Page.Keyboard.PressAsync("Enter");
        await open.Page.Keyboard.PressAsync("Space");
        Assert.Equal(Cycle(-2), await Now());
        await open.Page.Locator("input[type=range]").First.FocusAsync();
        await open.Page.Keyboard.PressAsync("ArrowRight");
        Assert.Equal(Cycle(-1), await Now());
        await open.Page.Keyboard.PressAsync("Home");
        Assert.Equal(Cycle(-scene.At), await Now());
        await open.Page.Locator(".home").First.ClickAsync();
        Assert.Equal(Cycle(0), await Now());
    }

    /// <summary>Dragged along the picture, the cursor stands at the cycle under the pointer.</summary>
    [SkippableFact]
    public async Task DragsAlongTheTime()
    {
        await using var open = await chromium.Open(Pages.Of(_replayed));
        var scene = Scene;
        var picture = open.Page.Locator(".scene svg").First;
        await picture.ScrollIntoViewIfNeededAsync();
        var box = (await picture.BoundingBoxAsync())!;
        var drawing = new SceneDrawing(scene, new SceneTexts(scene, new UserUnits(_replayed.Result.Plan)).Unit);
        float Place(int k) => (float)(box.X + drawing.At(scene.History.Cycles[k]).X / SceneDrawing.Width * box.Width);
        await open.Page.Mouse.MoveAsync(Place(scene.At), box.Y + box.Height / 2);
        await open.Page.Mouse.DownAsync();
        foreach (var k in new[] { 0, scene.At / 2, scene.History.Cycles.Count - 1 })
        {
            await open.Page.Mouse.MoveAsync(Place(k), box.Y + box.Height / 2);
            Assert.Equal($"cycle {scene.History.Cycles[k].Index}, {Say.Seconds(scene.History.Cycles[k].Time)}", await open.Page.Locator(".now").First.InnerTextAsync());
        }

        await open.Page.Mouse.UpAsync();
        await open.Page.Mouse.MoveAsync(Place(0), box.Y + box.Height / 2);
        Assert.StartsWith($"cycle {scene.History.Cycles[^1].Index},", await open.Page.Locator(".now").First.InnerTextAsync());
    }

    [SkippableFact]
    public async Task PlaysPausesAndEnds()
    {
        await using var open = await chromium.Open(Pages.Of(_replayed));
        var (play, slider, now) = (open.Page.Locator(".play").First, open.Page.Locator("input[type=range]").First, open.Page.Locator(".now").First);
        await open.Page.Locator(".pace").First.SelectOptionAsync("100");
        await play.ClickAsync();
        await Expect(play).ToHaveTextAsync("Pause");
        await Expect(slider).Not.ToHaveValueAsync($"{Scene.At}");
        await play.ClickAsync();
        await Expect(play).ToHaveTextAsync("Play");
        var stands = await now.InnerTextAsync();
        await Task.Delay(100);
        Assert.Equal(stands, await now.InnerTextAsync());
        await slider.FocusAsync();
        await open.Page.Keyboard.PressAsync("End");
        await open.Page.Keyboard.PressAsync("ArrowLeft");
        await play.ClickAsync();
        await Expect(slider).ToHaveValueAsync($"{Scene.History.Cycles.Count - 1}");
        await Expect(play).ToHaveTextAsync("Play");
        Assert.StartsWith($"cycle {Scene.History.Cycles[^1].Index},", await open.Page.Locator(".now").First.InnerTextAsync());
    }
}
