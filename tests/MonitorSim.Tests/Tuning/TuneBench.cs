using System.Text;
using MonitorSim.Plans;
using MonitorSim.Traces;
using MonitorSim.Tuning;

namespace MonitorSim.Tests.Tuning;

/// <summary>A plan whose limits every kind of part touches, and small recordings for it.</summary>
internal static class TuneBench
{
    public static readonly Plan Plan = PlanReader.Parse("""
        { "plan": 1, "title": "bench", "gap": "1 s", "signals": { "on": { "column": "r" } },
          "axes": { "x": { "motion": "linear", "stops": { "STO": {} },
            "channels": { "velocity": { "column": "v", "unit": "mm/s" }, "position": { "column": "p", "unit": "mm" } },
            "monitors": [
              { "name": "range", "function": "SSR", "request": "on", "lower": "2 mm/s", "upper": "5 mm/s", "filter": "2 ms", "delay": "1 ms", "reaction": "stop 0" },
              { "name": "stand", "function": "SOS", "request": "on", "window": "3 mm", "reaction": "stop 0" },
              { "name": "steps", "function": "SLS", "reaction": "stop 0", "levels": [ { "when": "on", "limit": "3 mm/s" }, { "when": "always", "limit": "6 mm/s" } ] } ] } } }
        """);

    /// <summary>One sample a millisecond; each cell gives speed, position and request.</summary>
    public static Trace Trace(string name, byte[] cells) => new(name, [.. Enumerable.Range(0, Math.Max(1, cells.Length)).Select(k => k * 1_000_000L)],
        [Column("v", cells, c => c & 7), Column("p", cells, c => c >> 3 & 7), Column("r", cells, c => c < 64 ? 0 : 1)]);

    public static string Json(TuneResult result)
    {
        using var stream = new MemoryStream();
        TuneJson.Write(result, stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static NumberColumn Column(string name, byte[] cells, Func<byte, int> value) => new(name, null, [.. cells.DefaultIfEmpty((byte)0).Select(c => (double)value(c))]);
}
