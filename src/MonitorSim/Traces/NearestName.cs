namespace MonitorSim.Traces;

/// <summary>Finds the known name that a misspelt one was most likely meant to be.</summary>
internal static class NearestName
{
    /// <summary>The closest of the names by edits (case does not count), or null where none comes near.</summary>
    public static string? Of(string name, IEnumerable<string> known)
    {
        string? best = null;
        var least = Math.Max(2, name.Length / 3) + 1;
        foreach (var candidate in known)
        {
            var distance = Distance(name.ToUpperInvariant(), candidate.ToUpperInvariant());
            if (distance < least && distance < Math.Max(name.Length, candidate.Length)) (best, least) = (candidate, distance);
        }

        return best;
    }

    // Edits are insertions, deletions, replacements: the textbook row by row table.
    private static int Distance(string a, string b)
    {
        var row = new int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++) row[j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var replaced = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(replaced, Math.Min(row[j], row[j - 1]) + 1);
            }
        }

        return row[b.Length];
    }
}
