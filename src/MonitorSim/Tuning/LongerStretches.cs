using System.Numerics;

namespace MonitorSim.Tuning;

/// <summary>The best limit found so far over stretches longer than a length, to within a sixteenth of it: most candidates of a frontier are beaten by a longer
/// stretch and need not be kept.</summary>
internal sealed class LongerStretches
{
    // Sixteen classes an octave; lengths below sixteen have one each.
    private const int ClassesAnOctave = 16, Octaves = 60;
    private readonly double[] _best = CreateUnbeaten();

    /// <summary>Whether a stretch of a longer class has at least this limit.</summary>
    /// <param name="length">The length, ns, 0 or more.</param>
    /// <param name="atMost">The most that the limit may be.</param>
    public bool Beat(long length, double atMost) => atMost <= _best[Class(length)];

    /// <summary>Takes note of a stretch.</summary>
    /// <param name="length">The length, ns, 0 or more.</param>
    /// <param name="atLeast">The least that the limit may be.</param>
    public void Add(long length, double atLeast)
    {
        // What beats a class beats those below it.
        for (var k = Class(length) - 1; k >= 0 && _best[k] < atLeast; k--) _best[k] = atLeast;
    }

    private static int Class(long length)
    {
        if (length < ClassesAnOctave) return (int)length;
        var octave = BitOperations.Log2((ulong)length);
        return ((octave - 3) * ClassesAnOctave) + (int)((length >> (octave - 4)) & (ClassesAnOctave - 1));
    }

    private static double[] CreateUnbeaten()
    {
        var best = new double[ClassesAnOctave * (Octaves + 1)];
        best.AsSpan().Fill(double.NegativeInfinity);
        return best;
    }
}
