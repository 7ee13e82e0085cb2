namespace MonitorSim.Tests.Replays;

/// <summary>The chain from request to trip, word by word and slowly: for every cycle it looks back over all cycles before.</summary>
/// <param name="times">Cycle times, ms.</param>
/// <param name="request">The request.</param>
/// <param name="acknowledged">Whether an acknowledgement comes at the cycle.</param>
/// <param name="measure">The measure.</param>
/// <param name="delay">The arming delay, ms.</param>
/// <param name="filter">The filter, ms.</param>
internal sealed class ChainModel(int[] times, bool[] request, bool[] acknowledged, int[] measure, int delay, int filter)
{
    /// <summary>Time, request, watching, exceeded and largest measure of every trip.</summary>
    public List<(int Time, int RequestedAt, int WatchingAt, int ExceededAt, int Peak)> Trips(int limit)
    {
        var trips = new List<(int, int, int, int, int)>();
        var restarts = new HashSet<int>();
        var isTripped = false;
        for (var n = 0; n < times.Length; n++)
        {
            if (acknowledged[n] && isTripped)
            {
                isTripped = false;
                restarts.Add(n);
            }

            var first = n;
            while (first > 0 && Exceeds(n, restarts, limit) && Exceeds(first - 1, restarts, limit) && !restarts.Contains(first)) first--;
            if (isTripped || !Exceeds(n, restarts, limit) || times[n] - times[first] < filter) continue;
            isTripped = true;
            var asked = AskedAt(n, restarts);
            var watching = Enumerable.Range(asked, n - asked + 1).First(k => times[k] - times[asked] >= delay);
            trips.Add((times[n], times[asked], times[watching], times[first], measure[first..(n + 1)].Max()));
        }

        return trips;
    }

    /// <summary>The largest, over all uninterrupted watching stretches of at least the filter's length, of the smallest measure.</summary>
    public int? Critical()
    {
        int? critical = null;
        for (var j = 0; j < times.Length; j++)
            for (var n = j; n < times.Length && Watches(n, []); n++)
            {
                if (!Watches(j, []) || AskedAt(j, []) != AskedAt(n, [])) break;
                if (times[n] - times[j] >= filter) critical = Math.Max(critical ?? int.MinValue, measure[j..(n + 1)].Min());
            }

        return critical;
    }

    private bool Exceeds(int n, HashSet<int> restarts, int limit) => Watches(n, restarts) && measure[n] > limit;

    private bool Watches(int n, HashSet<int> restarts) => request[n] && times[n] - times[AskedAt(n, restarts)] >= delay;

    private int AskedAt(int n, HashSet<int> restarts)
    {
        var k = n;
        while (k > 0 && request[k - 1] && !restarts.Contains(k)) k--;
        return k;
    }
}
