using System.Xml.Linq;
using MonitorSim.Plans;
using MonitorSim.Plots;
using MonitorSim.Tests.Tuning;
using MonitorSim.Tuning;

namespace MonitorSim.Tests.Plots;

public sealed class TunePlotTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("monitorsim").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    /// <summary>A picture for every limit that was challenged, whatever its side, and one of its runs.</summary>
    [Fact]
    public void APictureALimitAndOneOfItsRuns()
    {
        var result = Tune.Run(TuneBench.Plan, [TuneBench.Trace("a", [0x41, 0x47, 0x47, 0x46, 0x45, 0x40]), TuneBench.Trace("b", [0x43, 0x42, 0x49, 0x46, 0x41, 0x40])]);
        var files = TunePlot.Save(result, _folder);
        var challenged = result.Monitors.Count(limit => limit.Frontier.Count > 0);
        Assert.True(challenged >= 3 && result.Monitors.Any(limit => limit.IsLower), $"{challenged} limits");
        Assert.Equal(4 * challenged, files.Count);
        Assert.Equal(files.Count, files.Distinct().Count());
        foreach (var file in files.Where(file => file.EndsWith(".png", StringComparison.Ordinal))) Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], File.ReadAllBytes(file)[..4]);
    }

    /// <summary>What is drawn says the numbers: the verdict at the present limit and filter, what is needed, and the room. By hand: 28 ms of response and v²/2 may be
    /// 10 mm: v = -0.028 + sqrt(0.000784 + 0.02) = 116.1666 mm/s; 1 mm: 24.7636 mm/s.</summary>
    [Fact]
    public void ThePictureSaysTheNumbers()
    {
        var words = Words(Rooms.Of(Result(0.1), new(), new() { Unit = "m/s", Stopping = new ConstantDeceleration(1), Overrun = 0.01 }));
        Assert.Contains("diamond: now, 100 mm/s at 4 ms does not trip", words);
        Assert.Contains("circle: needed at this filter, 80 mm/s (run)", words);
        Assert.Contains("Room of 36.1666 mm/s: production needs 80 mm/s, the hazard allows 116.166 mm/s (overrun)", words);
        words = Words(Rooms.Of(Result(0.05), new(), new() { Unit = "m/s", Stopping = new ConstantDeceleration(1), Overrun = 0.001 }));
        Assert.Contains("diamond: now, 50 mm/s at 4 ms TRIPS", words);
        Assert.Contains("square: any filter longer than 30 ms would keep 50 mm/s", words);
        Assert.Contains(words, word => word.StartsWith("NO ROOM, 55.2364 mm/s are missing", StringComparison.Ordinal));
    }

    /// <summary>Parts that were joined know no frontier of a single run; a limit without a hazard has no bar.</summary>
    [Fact]
    public void WhatIsNotKnownIsNotDrawn()
    {
        Assert.Equal(["bridge-speed-upper.png", "bridge-speed-upper.svg"], TunePlot.Save(Result(0.1), _folder).Select(Path.GetFileName));
        Assert.DoesNotContain(Words(Result(0.1)), word => word.Contains("room", StringComparison.OrdinalIgnoreCase));
    }

    // Text of the picture, line by line.
    private List<string> Words(TuneResult result) =>
        [.. TunePlot.Save(result, _folder).Where(file => file.EndsWith(".svg", StringComparison.Ordinal)).SelectMany(file => XDocument.Load(file).Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value.Trim()))];

    /// <summary>100 mm/s or so at 4 ms; needed are 80 mm/s up to 30 ms.</summary>
    private static TuneResult Result(double limit) => new()
    {
        Plan = new("saw", null, 0.004m, 0, 0.02m),
        Recordings = [new("run", null, 1000, 1, 0.001m)],
        Monitors = [new()
        {
            Axis = "bridge", Monitor = "speed", Function = "SLS", Side = "upper", Unit = "m/s", Written = $"{limit * 1000} mm/s", Limit = limit, Filter = 0.004m, FilterAbove = limit < 0.08 ? 0.03m : null,
            Reaction = Reaction.Stop1, Critical = 0.08, Frontier = [new(0.03m, 0.08, 1, 1.03m, "run")], Runs = [new("run", 0.08)], Bounds = LimitBounds.Of([0.08]),
        }],
    };
}
