namespace MonitorSim.Motion;

/// <summary>When a quantity that rises or falls gets past a bound.</summary>
internal static class Crossing
{
    private const int MostGuesses = 12;

    /// <summary>The first moment at which it is past, to the last bit.</summary>
    /// <remarks>By false position, in which an end that stays counts half (the Illinois algorithm: M. Dowell, P. Jarratt, BIT 11 (1971) 168), and by halving what is left.
    /// Where guesses go astray, as beside a step, halving alone finds it.</remarks>
    /// <param name="excess">How far it is past: 0 or more from some moment on, negative or not a number before.</param>
    /// <param name="low">A moment before.</param>
    /// <param name="high">A moment from which on it is past.</param>
    public static double First(Func<double, double> excess, double low, double high)
    {
        var (below, above) = (excess(low), excess(high));
        bool? wasPast = null;
        for (var n = 0; n < MostGuesses; n++)
        {
            var guess = high - above * ((high - low) / (above - below));
            if (!(guess > low && guess < high)) break;
            var there = excess(guess);
            var isPast = there >= 0;
            if (isPast) (high, above, below) = (guess, there, wasPast == true ? below / 2 : below);
            else (low, below, above) = (guess, there, wasPast == false ? above / 2 : above);
            wasPast = isPast;
        }

        while (true)
        {
            var middle = low + (high - low) / 2;
            if (middle <= low || middle >= high) return high;
            if (excess(middle) >= 0) high = middle;
            else low = middle;
        }
    }
}
