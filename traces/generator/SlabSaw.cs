using System.Globalization;
using System.Text;

namespace MonitorSim.Demo;

/// <summary>Invented recordings of a slab saw in a stone workshop: a bridge, a blade, a turntable and a lift. Seeded: the same bytes everywhere.</summary>
public static class SlabSaw
{
    private const double Step = 0.002;

    /// <summary>Every recording by the name of its case, as CSV text.</summary>
    public static IEnumerable<(string Name, string Text)> Recordings()
    {
        // The gate opens at 0.5 s; the bridge goes on at production speed for a moment too long.
        yield return ("bridge-gate-speed", Csv(2.0, 11, "position [mm];speed [mm/s];gate",
            t => t < 0.9 ? 120 : Math.Max(30, 120 - (t - 0.9) * 500), t => [t >= 0.5 ? "1" : "0"]));
        // The turntable is pushed back by hand against its direction lock.
        yield return ("turntable-direction", Csv(2.0, 12, "position [deg];speed [deg/s];locked",
            t => t < 0.8 ? 12 : t < 1.0 ? 12 - (t - 0.8) * 120 : t < 1.4 ? -12 : 0, t => [t >= 0.2 ? "1" : "0"]));
        // The lift sinks slowly while it should stand.
        yield return ("lift-standstill", Csv(3.0, 13, "position [mm];speed [mm/s];loading",
            t => t < 0.6 ? 40 : t < 0.8 ? 40 - (t - 0.6) * 200 : t < 1.6 ? 0 : -0.6, t => [t >= 1.0 ? "1" : "0"]));
        // The bridge is asked to stop and follows its ramp.
        yield return ("bridge-stop-good", Csv(2.0, 14, "position [mm];speed [mm/s];stop", t => Math.Max(0, t < 0.53 ? 200 : 200 - (t - 0.53) * 420), t => [t is >= 0.5 and < 1.9 ? "1" : "0"]));
        // The same with a worn drive that gives up half-way.
        yield return ("bridge-stop-bad", Csv(2.0, 14, "position [mm];speed [mm/s];stop",
            t => t < 0.53 ? 200 : t < 0.7 ? 200 - (t - 0.53) * 420 : Math.Max(0, 128.6 - (t - 0.7) * 130), t => [t is >= 0.5 and < 1.9 ? "1" : "0"]));
        // The blade spins up past its cap for its size.
        yield return ("blade-overspeed", Csv(2.0, 15, "angle [rev];speed [rpm];small blade", t => Math.Min(1530, t * 1200), t => ["1"], perMinute: true));
    }

    private static string Csv(double seconds, uint seed, string heads, Func<double, double> speed, Func<double, string[]> signals, bool perMinute = false)
    {
        var text = new StringBuilder("time [s];" + heads + "\n");
        var noise = new Noise(seed);
        double position = 0;
        for (var k = 0; k * Step <= seconds; k++)
        {
            var t = k * Step;
            var now = speed(t);
            position += now * Step / (perMinute ? 60 : 1);
            var seen = now + (now == 0 ? 0 : noise.Next() * (perMinute ? 3 : 0.4));
            text.Append(Number(t, 3)).Append(';').Append(Number(position, 3)).Append(';').Append(Number(seen, 2)).Append(';').AppendJoin(';', signals(t)).Append('\n');
        }

        return text.ToString();
    }

    private static string Number(double value, int decimals) => Math.Round((decimal)value, decimals).ToString("F" + decimals, CultureInfo.InvariantCulture);

    /// <summary>A linear congruential sequence (multiplier of D. E. Knuth's MMIX, from memory): enough for the look of noise, and the same everywhere.</summary>
    private sealed class Noise(ulong seed)
    {
        private ulong _state = seed;

        public double Next()
        {
            _state = _state * 6364136223846793005 + 1442695040888963407;
            return (_state >> 11) / (double)(1UL << 52) - 1;
        }
    }
}
