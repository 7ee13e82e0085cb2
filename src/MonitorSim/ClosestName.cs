namespace MonitorSim;

/// <summary>Finds the known name that a misspelt one was probably meant to be.</summary>
internal static class ClosestName
{
    /// <summary>The nearest of the known names (the first of equals), or null where none is near enough to be a misspelling.</summary>
    public static string? Of(string name, IEnumerable<string> known)
    {
        string? best = null;
        var bestDistance = double.PositiveInfinity;
        foreach (var candidate in known)
        {
            var distance = string.Equals(name, candidate, StringComparison.OrdinalIgnoreCase) ? 0.5 : Distance(name, candidate);
            if (distance < bestDistance) (best, bestDistance) = (candidate, distance);
        }

        if (best is null) return null;
        var shorter = Math.Min(name.Length, best.Length);
        return bestDistance < shorter && bestDistance <= Math.Max(1, shorter / 2) ? best : null;
    }

    /// <summary>"did you mean 'x'?" or the list of what there is, for the second half of an error.</summary>
    public static string Advice(string name, IReadOnlyCollection<string> known, string noun)
    {
        if (Of(name, known) is { } closest) return $"did you mean '{closest}'?";
        if (known.Count == 0) return $"there is no {noun}";
        const int Most = 20;
        var list = string.Join(", ", known.Take(Most)) + (known.Count > Most ? ", …" : "");
        return $"{(noun == "axis" ? "axes" : noun + "s")} are: {list}";
    }

    /// <summary>Insertions, deletions, substitutions and swaps of neighbours, case ignored.</summary>
    private static double Distance(string a, string b)
    {
        const int Longest = 100;
        if (a.Length > Longest || b.Length > Longest) return double.PositiveInfinity;
        var d = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++) d[i, 0] = i;
        for (var j = 0; j <= b.Length; j++) d[0, j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var cost = Same(a[i - 1], b[j - 1]) ? 0 : 1;
                d[i, j] = Math.Min(Math.Min(d[i - 1, j] + 1, d[i, j - 1] + 1), d[i - 1, j - 1] + cost);
                if (i > 1 && j > 1 && Same(a[i - 1], b[j - 2]) && Same(a[i - 2], b[j - 1]))
                    d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
            }
        }

        return d[a.Length, b.Length];
    }

    private static bool Same(char a, char b) => char.ToUpperInvariant(a) == char.ToUpperInvariant(b);
}
