using MonitorSim.Replays;

namespace MonitorSim.Channels;

/// <summary>One value a sample: of a whole recording, or growing at one end and let go at the other.</summary>
internal class Samples<T> where T : unmanaged
{
    private T[] _values;
    private int _first;

    /// <summary>None yet.</summary>
    public Samples() => _values = new T[64];

    /// <param name="whole">The values of a whole recording: taken over, not copied.</param>
    protected Samples(T[] whole) => (_values, Count) = (whole, whole.Length);

    /// <summary>How many there have been, those let go included.</summary>
    public int Count { get; private set; }

    public T this[int sample] => _values[sample - _first];

    /// <summary>All that are there.</summary>
    public ReadOnlySpan<T> Span => _values.AsSpan(0, Count - _first);

    public ReadOnlySpan<T> Between(int from, int until) => _values.AsSpan(from - _first, until - from);

    public void Append(T value)
    {
        if (Count - _first == _values.Length) Array.Resize(ref _values, 2 * _values.Length);
        _values[Count++ - _first] = value;
    }

    /// <summary>Takes the newest sample back.</summary>
    public void TakeBack() => Count--;

    /// <summary>Lets go of the samples before one.</summary>
    public void LetGo(int before)
    {
        if (before <= _first) return;
        Span[(before - _first)..].CopyTo(_values);
        _first = before;
    }

    public void Carry(Checkpoint checkpoint)
    {
        var values = checkpoint.OfArray(Span);
        (_first, Count) = (checkpoint.Of(_first), checkpoint.Of(Count));
        if (!checkpoint.IsReading) return;
        _values = new T[Math.Max(64, values.Length)];
        values.CopyTo(_values, 0);
    }
}
