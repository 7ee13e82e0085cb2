using System.Collections;
using System.Diagnostics.CodeAnalysis;
using Fractions;

namespace MonitorSim.Traces;

/// <summary>The exact values of the cells whose double is not enough. Programs that write 17 digits make nearly every cell one,
/// so they are kept as short as they are: 14 bytes a cell, made into fractions only when asked for.</summary>
internal sealed class ExactReadings : IReadOnlyDictionary<int, Fraction>
{
    private readonly List<int> _samples = [];
    private readonly List<long> _digits = [];
    private readonly List<short> _exponents = [];
    private Dictionary<int, ExactDecimal>? _longer;

    /// <summary>Adds the next one; samples rise.</summary>
    public void Add(int sample, ExactDecimal exact)
    {
        _samples.Add(sample);
        if (exact.Digits <= long.MaxValue)
        {
            _digits.Add(exact.Negative ? -(long)exact.Digits : (long)exact.Digits);
            _exponents.Add(checked((short)exact.Exponent));
            return;
        }

        // 0 is no digits that this class ever gets: it marks a number that stands elsewhere.
        _digits.Add(0);
        _exponents.Add(0);
        (_longer ??= [])[sample] = exact;
    }

    /// <inheritdoc/>
    public int Count => _samples.Count;

    /// <inheritdoc/>
    public IEnumerable<int> Keys => _samples;

    /// <inheritdoc/>
    public IEnumerable<Fraction> Values => Enumerable.Range(0, Count).Select(At);

    /// <inheritdoc/>
    public Fraction this[int key] => TryGetValue(key, out var value) ? value : throw new KeyNotFoundException($"sample {key}");

    /// <inheritdoc/>
    public bool ContainsKey(int key) => _samples.BinarySearch(key) >= 0;

    /// <inheritdoc/>
    public bool TryGetValue(int key, [MaybeNullWhen(false)] out Fraction value)
    {
        var index = _samples.BinarySearch(key);
        value = index < 0 ? default : At(index);
        return index >= 0;
    }

    /// <inheritdoc/>
    public IEnumerator<KeyValuePair<int, Fraction>> GetEnumerator() =>
        Enumerable.Range(0, Count).Select(i => KeyValuePair.Create(_samples[i], At(i))).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    private Fraction At(int index)
    {
        var digits = _digits[index];
        if (digits == 0) return _longer![_samples[index]].ToFraction();
        return new ExactDecimal(digits < 0, Math.Abs(digits), _exponents[index], 0).ToFraction();
    }
}
