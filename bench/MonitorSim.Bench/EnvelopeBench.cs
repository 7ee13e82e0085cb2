using System.Globalization;
using System.Text;
using BenchmarkDotNet.Attributes;
using MonitorSim.Motion.Envelopes;
using MonitorSim.Motion.Faults;
using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.Bench;

/// <summary>A runaway both ways at every sample of a recording of a lift: with a brake in closed form, with a short-circuited motor integrated.</summary>
[MemoryDiagnoser]
public class EnvelopeBench
{
    private EnvelopeQuestion _question = null!;

    [Params(15_000)]
    public int Samples { get; set; }

    [Params("brake", "shortCircuit")]
    public string Stopping { get; set; } = "";

    [GlobalSetup]
    public void SetUp()
    {
        var text = new StringBuilder("t [s];v\n");
        for (var k = 0; k < Samples; k++) text.Append(CultureInfo.InvariantCulture, $"{k * 0.001:F3};{200 * Math.Sin(k / 600.0):F6}\n");
        var braking = Stopping == "brake" ? """ "brake": { "torque": "7 kN", "apply": "60 ms" } """
            : """ "shortCircuit": { "resistance": "0.5 Ω", "inductance": "2 mH", "flux": "0.08 V·s", "polePairs": 4 } """;
        _question = new()
        {
            Plan = PlanReader.Parse($$"""
                { "plan": 1, "cycle": "4 ms", "reactionDelay": "10 ms", "axes": { "lift": { "motion": "linear", "feed": "5 mm/rev", "standstill": "2 mm/s",
                  "channels": { "velocity": { "column": "v", "unit": "mm/s" } }, "stops": { "STO": {} },
                  "plant": { "mass": "3800 kg", "load": "-6.28 kN", "coulomb": "6.53 kN", "limit": "14 kN", {{braking}} },
                  "monitors": [ { "name": "travel", "function": "SLS", "limit": "250 mm/s", "reaction": "stop 0" } ] } } }
                """),
            Trace = TraceReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(text.ToString())), "bench.csv"),
            Axis = "lift",
            Faults = [new RunawayFault()],
        };
    }

    [Benchmark]
    public EnvelopeResult Enveloped() => Envelope.Of(_question);
}
