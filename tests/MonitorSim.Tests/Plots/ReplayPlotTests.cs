using System.Xml.Linq;
using MonitorSim.Plans;
using MonitorSim.Plots;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Plots;

public sealed class ReplayPlotTests
{
    [Fact]
    public void OnePictureAnAxisAsPngAndSvg()
    {
        var place = Path.Combine(AppContext.BaseDirectory, "traces", "bridge-gate-speed");
        var plan = PlanReader.Read(Path.Combine(place, "plan.json"));
        var trace = PlannedTrace.Read(plan, Path.Combine(place, "trace.csv"));
        var folder = Directory.CreateTempSubdirectory("monitorsim").FullName;
        var files = ReplayPlot.Save(Replay.Run(plan, trace), trace, folder);
        Assert.Equal(["bridge.png", "bridge.svg"], files.Select(Path.GetFileName));
        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], File.ReadAllBytes(files[0])[..4]);
        Assert.Equal("svg", XDocument.Load(files[1]).Root!.Name.LocalName);
        Directory.Delete(folder, recursive: true);
    }

    /// <summary>Every kind of limit is drawn: a level, the ramp of a stop, and those that follow a reference.</summary>
    [Theory]
    [InlineData("bridge-gate-speed", "bridge")]
    [InlineData("bridge-stop-good", "bridge")]
    [InlineData("lift-standstill", "lift")]
    [InlineData("turntable-direction", "turntable")]
    public void LimitsAreDrawn(string name, string axis)
    {
        var place = Path.Combine(AppContext.BaseDirectory, "traces", name);
        var plan = PlanReader.Read(Path.Combine(place, "plan.json"));
        var trace = PlannedTrace.Read(plan, Path.Combine(place, "trace.csv"));
        var folder = Directory.CreateTempSubdirectory("monitorsim").FullName;
        ReplayPlot.Save(Replay.Run(plan, trace), trace, folder);
        var dashes = XDocument.Load(Path.Combine(folder, axis + ".svg")).Descendants()
            .Count(element => string.Equals((string?)element.Attribute("stroke"), "#D55E00", StringComparison.OrdinalIgnoreCase));
        Assert.True(dashes >= 10, $"{dashes} dashes");
        Directory.Delete(folder, recursive: true);
    }

    /// <summary>Up to where the axis left its recording what was recorded, from there on what is simulated, in the unit of the channel; the trip sits on what the monitor met.</summary>
    [Fact]
    public void SimulatedMotionIsDrawnOverTheRecording()
    {
        var place = Path.Combine(AppContext.BaseDirectory, "traces", "bridge-simulated");
        var plan = PlanReader.Read(Path.Combine(place, "plan.json"));
        var trace = PlannedTrace.Read(plan, Path.Combine(place, "trace.csv"));
        var result = Replay.Run(plan, trace);
        var axis = plan.Axes["bridge"];
        var recorded = Series.Of(axis, Kind.Velocity, axis.Channels.Velocity, trace)!;
        var met = SimulatedSeries.Over(recorded, Kind.Velocity, Assert.Single(result.Simulated), null);
        Assert.Equal(recorded.At(0.92), met.At(0.92));
        Assert.InRange(recorded.At(1.4), 199, 201);
        Assert.Equal(0, met.At(1.4));
        Assert.Equal(result.Simulated[0].States[^1].Position * 1000, SimulatedSeries.Over(Series.Of(axis, Kind.Position, axis.Channels.Position, trace)!, Kind.Position, result.Simulated[0], null).Values[^1], 1e-9);
        var folder = Directory.CreateTempSubdirectory("monitorsim").FullName;
        ReplayPlot.Save(result, trace, folder);
        Assert.Contains(XDocument.Load(Path.Combine(folder, "bridge.svg")).Descendants(), element => string.Equals((string?)element.Attribute("stroke"), "#009E73", StringComparison.OrdinalIgnoreCase));
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public void ThinningKeepsPeaksBesideMissingValues()
    {
        var values = Enumerable.Range(0, 100_000).Select(k => k % 50 == 0 ? double.NaN : 0.0).ToArray();
        (values[51], values[77_777]) = (9, -7);
        var thinned = new Series("velocity", MonitorSim.Quantities.Unit.Parse("mm/s"), [.. values.Select((_, k) => k / 1e3)], values).Thinned();
        Assert.InRange(thinned.Values.Length, 1, 4000);
        Assert.Equal(9, thinned.Values.Max());
        Assert.Equal(-7, thinned.Values.Where(double.IsFinite).Min());
        Assert.Equal(77.777, thinned.Times[Array.IndexOf(thinned.Values, -7.0)]);
    }
}
