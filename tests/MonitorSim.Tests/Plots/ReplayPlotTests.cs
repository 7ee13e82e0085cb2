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

    [Theory]
    [InlineData("../../x axis", "______x_axis")]
    [InlineData("", "_")]
    public void NamesStayInTheirFolder(string axis, string file) => Assert.Equal(file, ReplayPlot.SafeName(axis));
}
