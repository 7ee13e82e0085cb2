using System.Collections.Immutable;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>What the columns of signals hold: a word each.</summary>
internal sealed record Setting(ImmutableSortedDictionary<string, string> Words)
{
    public static readonly Setting Empty = new(ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal));

    public Setting With(string column, string word) => new(Words.SetItem(column, word));

    /// <summary>How many columns differ.</summary>
    public int Distance(Setting other) => Words.Count(pair => other.Words[pair.Key] != pair.Value);
}
