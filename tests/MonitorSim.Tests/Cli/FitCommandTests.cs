using System.Text.Json;
using MonitorSim.Cli;
using MonitorSim.Plans;
using MonitorSim.Tests.Motion.Fit;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Cli;

public sealed class FitCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("monitorsim").FullName;
    private readonly StringWriter _out = new(), _error = new();
    private MemoryStream _bytes = new();

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private int Run(params string[] args) => CommandLine.Run(args, new Terminal(_out, _error, () => _bytes = new()));

    private (string Plan, string Trace) Write(Plan plan, Trace trace)
    {
        var (planFile, traceFile) = (Path.Combine(_folder, "plan.json"), Path.Combine(_folder, "trace.csv"));
        File.WriteAllText(planFile, PlanWriter.Write(plan));
        using var stream = File.Create(traceFile);
        TraceWriter.Write(trace, stream);
        return (planFile, traceFile);
    }

    [Fact]
    public void A_move_gives_a_table_and_a_plant_to_paste()
    {
        var (plan, trace) = Write(FitTrials.Plan, FitTrials.Moves("0 N", "0 m/s").ToTrace("x"));
        Assert.Equal(0, Run("fit", plan, trace));
        var said = _out.ToString();
        Assert.Contains("trace.csv, bridge: move, ", said, StringComparison.Ordinal);
        Assert.Contains("| mass ", said, StringComparison.Ordinal);
        var block = said[said.IndexOf("\"plant\"", StringComparison.Ordinal)..(said.IndexOf('}', StringComparison.Ordinal) + 1)];
        var pasted = PlanReader.Parse($$"""{ "axes": { "bridge": { "motion": "linear", "stops": { "STO": {} }, {{block}} } } }""").Axes["bridge"].Plant!;
        Assert.Equal((180, 90, 400, -250), (Math.Round(pasted.Mass!.Si, 1), Math.Round(pasted.Coulomb!.Si, 1), Math.Round(pasted.Viscous!.Si, 1), Math.Round(pasted.Load!.Si, 1)));
    }

    [Fact]
    public void A_coast_down_gives_ratios_and_friction_where_the_inertia_is_known()
    {
        var (plan, trace) = Write(FitTrials.CoastPlan, FitTrials.CoastDown(0.2, 50, 300, 1, 2));
        Assert.Equal(0, Run("fit", plan, trace, "--from", "0 s", "--json", "-"));
        Assert.Equal("", _out.ToString());
        using var ratios = JsonDocument.Parse(_bytes.ToArray());
        Assert.Equal("coastDown", ratios.RootElement.GetProperty("method").GetString());
        Assert.Equal("coulomb/inertia", ratios.RootElement.GetProperty("parameters")[2].GetProperty("name").GetString());
        Assert.Equal(JsonValueKind.Null, ratios.RootElement.GetProperty("plant").ValueKind);
        Assert.Equal(0, Run("fit", plan, trace, "--from", "0 s", "--inertia", "0.01 kg·m²", "--json", "-"));
        using var known = JsonDocument.Parse(_bytes.ToArray());
        Assert.Equal("0.01 kg·m²", known.RootElement.GetProperty("plant").GetProperty("inertia").GetString());
        Assert.Equal(0.5, known.RootElement.GetProperty("parameters")[2].GetProperty("value").GetDouble(), 0.01);
    }

    [Fact]
    public void What_synth_writes_fit_reads_friction_from()
    {
        var (plan, trace) = (Path.Combine(_folder, "blade.json"), Path.Combine(_folder, "blade.csv"));
        File.WriteAllText(plan, """
            { "signals": { "off": { "column": "mainsOff" } },
              "axes": { "blade": { "motion": "rotary", "channels": { "velocity": { "column": "speed" } }, "stops": { "STO": { "request": "off" } } } } }
            """);
        Assert.Equal(0, Run("synth", Path.Combine(Synthesis.ScenarioErrorTests.Examples(), "coast-down.json"), "-o", trace, "--quiet"));
        Assert.Equal(0, Run("fit", plan, trace, "--inertia", "0.01 kg·m²", "--json", "-"));
        using var fit = JsonDocument.Parse(_bytes.ToArray());
        foreach (var (index, truth) in new[] { (1, 0.002), (2, 0.5) })
        {
            var parameter = fit.RootElement.GetProperty("parameters")[index];
            Assert.InRange(truth, parameter.GetProperty("lower").GetDouble(), parameter.GetProperty("upper").GetDouble());
        }

        Assert.Equal(1.0, fit.RootElement.GetProperty("from").GetDouble());
    }

    [Fact]
    public void Options_that_are_no_quantities_are_explained()
    {
        var (plan, trace) = Write(FitTrials.CoastPlan, FitTrials.CoastDown(0.2, 50, 300, 1, 2));
        Assert.Equal(2, Run("fit", plan, trace, "--from", "0"));
        Assert.StartsWith("--from: '0' has no unit; write one", _error.ToString(), StringComparison.Ordinal);
    }
}
