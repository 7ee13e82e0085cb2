using System.Globalization;
using System.Text;
using BenchmarkDotNet.Attributes;
using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Traces;
using MonitorSim.Tuning;

namespace MonitorSim.Bench;

/// <summary>Reading, replaying and tuning one axis with one SLS over a quiet recording.</summary>
[MemoryDiagnoser]
public class ReplayBench
{
    private byte[] _csv = [];
    private Trace _trace = null!;
    private Plan _plan = null!;

    [Params(100_000)]
    public int Samples { get; set; }

    [GlobalSetup]
    public void SetUp()
    {
        var text = new StringBuilder("t_s;v\n");
        for (var k = 0; k < Samples; k++)
            text.Append(CultureInfo.InvariantCulture, $"{k * 0.001:F3};{30 * Math.Sin(k / 300.0):F6}\n");
        _csv = Encoding.UTF8.GetBytes(text.ToString());
        _trace = Read();
        _plan = new()
        {
            Axes = new Dictionary<string, AxisPlan>
            {
                ["bridge"] = new()
                {
                    Channels = new() { Velocity = new() { Column = "v", Unit = "mm/s" } },
                    Stops = new() { Sto = new() },
                    Monitors = [new Sls { Name = "speed", Limit = "33 mm/s", Filter = "10 ms", Reaction = Reaction.Stop0 }],
                },
            },
        };
    }

    [Benchmark(Baseline = true)]
    public Trace Read() => TraceReader.Read(new MemoryStream(_csv), "bench.csv");

    [Benchmark]
    public ReplayResult Replayed() => Replay.Run(_plan, _trace);

    [Benchmark]
    public TuneResult Tuned() => Tune.Run(_plan, [_trace]);
}
