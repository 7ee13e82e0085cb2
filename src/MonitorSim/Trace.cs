using MonitorSim.Traces;

namespace MonitorSim;

/// <summary>An immutable recording: one time in integer nanoseconds a sample, and columns of numbers or words beside it.</summary>
public sealed class Trace
{
    private readonly long[] _times;
    private readonly Dictionary<string, Column> _byName;
    private Sampling? _sampling;

    /// <param name="name">The file's name, or any name for a trace built in C#.</param>
    /// <param name="times">Nanoseconds since the first sample, strictly rising from 0. The array is taken over, not copied.</param>
    /// <param name="columns">Columns of the same length with distinct names.</param>
    /// <param name="sha256">The hash of the file's bytes, lower-case hexadecimal; null where there is no file.</param>
    /// <exception cref="InputException">No sample, times that do not rise from 0, a column of another length, a repeated name.</exception>
    public Trace(string name, long[] times, IReadOnlyList<Column> columns, string? sha256 = null)
    {
        var count = times.Length;
        Name = name;
        Sha256 = sha256;
        _times = times;
        Columns = columns;
        _byName = new(StringComparer.Ordinal);
        if (count == 0) throw new InputException(new Problem(name, "the recording has no sample", "give at least one"));
        for (var k = 0; k < count; k++)
        {
            if (k == 0 ? times[0] != 0 : times[k] <= times[k - 1])
                throw new InputException(new Problem($"{name}(sample {k})", $"time {times[k]} ns does not rise", "times start at 0 and rise"));
        }

        foreach (var column in columns)
        {
            if (column.Count != count)
                throw new InputException(new Problem(name, $"column '{column.Name}' has {column.Count} values for {count} samples", "one a sample"));
            if (!_byName.TryAdd(column.Name, column))
                throw new InputException(new Problem(name, $"column '{column.Name}' appears twice", "name each column once"));
        }
    }

    /// <summary>The file's name, or the name given in C#.</summary>
    public string Name { get; }

    /// <summary>The hash of the file's bytes, lower-case hexadecimal; null where there is no file.</summary>
    public string? Sha256 { get; }

    /// <summary>How many samples there are; at least one.</summary>
    public int Count => _times.Length;

    /// <summary>Nanoseconds since the first sample, strictly rising from 0.</summary>
    public ReadOnlySpan<long> Times => _times;

    internal long[] TimesArray => _times;

    /// <summary>How regularly it was sampled, found once; null where there is one sample only.</summary>
    internal Sampling? Sampling => _sampling ??= Sampling.Of(Times);

    /// <summary>The columns, in the order of the file.</summary>
    public IReadOnlyList<Column> Columns { get; }

    /// <summary>The column of that name (exact spelling), or null.</summary>
    public Column? Find(string name) => _byName.GetValueOrDefault(name);
}
