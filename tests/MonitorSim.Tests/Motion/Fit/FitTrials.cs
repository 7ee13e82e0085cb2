using MonitorSim.Plans;
using MonitorSim.Synthesis;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Motion.Fit;

/// <summary>Recordings with known parameters.</summary>
internal static class FitTrials
{
    public const double Mass = 180, Viscous = 400, Coulomb = 90, Load = -250;

    /// <summary>A plan that reads columns F, v (and no more) of a linear axis.</summary>
    public static readonly Plan Plan = PlanReader.Parse("""
        { "axes": { "bridge": { "motion": "linear", "channels": { "velocity": { "column": "v" }, "torque": { "column": "F" } }, "stops": { "STO": {} } } } }
        """);

    /// <summary>Moves both ways at two speeds and accelerations, jerk-limited so that the force has no jumps but friction's.</summary>
    public static Scenario Moves(string forceNoise, string speedNoise, string plant = """{ "mass": "180 kg", "viscous": "400 N·s/m", "coulomb": "90 N", "load": "-250 N" }""", string? steps = null) =>
        ScenarioReader.Parse($$"""
            { "scenario": 1, "rate": "1 kHz", "axes": { "bridge": { "motion": "linear", "plant": {{plant}}, "steps": [ {{steps ?? """
                { "step": "hold", "for": "0.1 s" },
                { "step": "move", "by": "300 mm", "speed": "0.3 m/s", "acceleration": "1.5 m/s²", "jerk": "30 m/s³" },
                { "step": "move", "by": "-100 mm", "speed": "0.1 m/s", "acceleration": "0.8 m/s²", "jerk": "30 m/s³" },
                { "step": "move", "by": "-200 mm", "speed": "0.5 m/s", "acceleration": "2 m/s²", "jerk": "30 m/s³" },
                { "step": "hold", "for": "0.1 s" }
                """}} ],
              "columns": { "v": { "of": "velocity", "unit": "m/s", "noise": "{{speedNoise}}" }, "F": { "of": "torque", "unit": "N", "noise": "{{forceNoise}}" } } } } }
            """);

    /// <summary>A recording without noise with the noise of a seed on force and speed.</summary>
    public static Trace Noisy(Trace trace, double force, double speed, int seed)
    {
        double[] Add(string column, double deviation, ulong stream)
        {
            var values = ((NumberColumn)trace.Find(column)!).Values.ToArray();
            for (var k = 0; k < values.Length; k++) values[k] += deviation * (double)Noise.At(stream, k);
            return values;
        }

        return new("trial", trace.Times.ToArray(), [new NumberColumn("v", "m/s", Add("v", speed, 2 * (ulong)seed)), new NumberColumn("F", "N", Add("F", force, 2 * (ulong)seed + 1))]);
    }

    /// <summary>A rotary coast-down from the closed form, with noise.</summary>
    public static Trace CoastDown(double ratioViscous, double ratioCoulomb, double start, double noise, int seed, double rate = 1000)
    {
        List<double> speeds = [];
        for (var k = 0; ; k++)
        {
            var t = k / rate;
            var v = (start + ratioCoulomb / ratioViscous) * Math.Exp(-ratioViscous * t) - ratioCoulomb / ratioViscous;
            speeds.Add(Math.Max(0, v) + noise * (double)Noise.At((ulong)seed, k));
            if (v <= 0 && k > 10) break;
        }

        return new("coast", [.. Enumerable.Range(0, speeds.Count).Select(k => (long)(k * 1e9 / rate))], [new NumberColumn("w", "rad/s", [.. speeds])]);
    }

    public static readonly Plan CoastPlan = PlanReader.Parse("""
        { "axes": { "blade": { "motion": "rotary", "channels": { "velocity": { "column": "w" } }, "stops": { "STO": {} } } } }
        """);
}
