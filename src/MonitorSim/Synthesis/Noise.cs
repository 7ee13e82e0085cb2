namespace MonitorSim.Synthesis;

/// <summary>Numbers that look random and depend on seed and sample only: the same bits on every machine, and changing a profile at one
/// place leaves the noise at all others as it was.</summary>
/// <remarks>The sum of twelve even numbers less six: standard deviation 1, close to normal, never beyond ±6. It needs no logarithm, whose
/// last digit differs among machines.</remarks>
internal static class Noise
{
    private const int Draws = 12;

    /// <summary>The noise of one sample, standard deviation 1.</summary>
    public static decimal At(ulong seed, int sample)
    {
        ulong sum = 0;
        for (var i = 1; i <= Draws; i++) sum += Scramble(seed, (ulong)sample * Draws + (ulong)i) >> 11;
        return (decimal)sum / (1UL << 53) - Draws / 2;
    }

    /// <summary>64 even bits of one sample.</summary>
    public static ulong Even(ulong seed, int sample) => Scramble(seed, (ulong)sample + 1);

    /// <summary>A seed of its own for something with a name: FNV-1a over the name's UTF-16 codes.</summary>
    public static ulong Seed(int seed, string name)
    {
        var hash = 0xCBF29CE484222325 ^ (ulong)(uint)seed << 32;
        foreach (var letter in name) hash = unchecked((hash ^ letter) * 0x100000001B3);
        return hash;
    }

    // A counter times an odd number, mixed by shifts and products until every bit depends on every other (the finaliser SplitMix64).
    private static ulong Scramble(ulong seed, ulong counter)
    {
        var z = unchecked(Mix(seed) + counter * 0x9E3779B97F4A7C15);
        return Mix(z);
    }

    private static ulong Mix(ulong z)
    {
        unchecked
        {
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }
}
