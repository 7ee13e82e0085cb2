using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Fractions;
using MonitorSim.Channels;

namespace MonitorSim.Replays;

/// <summary>Carries the state of a replay out to bytes, or back in. Whoever has a state names its values once, in one method for both ways (<c>x = checkpoint.Of(x)</c>), so that writing
/// and reading cannot get out of step.</summary>
internal sealed class Checkpoint
{
    private readonly BinaryWriter? _writer;
    private readonly BinaryReader? _reader;

    /// <summary>Writes.</summary>
    public Checkpoint(BinaryWriter writer) => _writer = writer;

    /// <summary>Reads.</summary>
    public Checkpoint(BinaryReader reader) => _reader = reader;

    public bool IsReading => _reader is not null;

    public long Of(long value)
    {
        if (_reader is not null) return _reader.ReadInt64();
        _writer!.Write(value);
        return value;
    }

    public int Of(int value) => (int)Of((long)value);

    public bool Of(bool value) => Of(value ? 1L : 0) != 0;

    /// <summary>A double, NaN included, to the bit.</summary>
    public double Of(double value) => BitConverter.Int64BitsToDouble(Of(BitConverter.DoubleToInt64Bits(value)));

    public long? Of(long? value) => Of(value.HasValue) ? Of(value.GetValueOrDefault()) : null;

    public bool? Of(bool? value) => Of(value.HasValue) ? Of(value.GetValueOrDefault()) : null;

    public string Of(string value)
    {
        if (_reader is not null) return _reader.ReadString();
        _writer!.Write(value);
        return value;
    }

    public T OfEnum<T>(T value) where T : struct, Enum => (T)Enum.ToObject(typeof(T), Of(Convert.ToInt64(value, null)));

    public Fraction Of(Fraction value) => new(Of(value.Numerator), Of(value.Denominator));

    /// <summary>A reading: what was read is no longer one of a recording, and compares as before.</summary>
    public Reading Of(in Reading reading) => Reading.Held(Of(reading.Value), Of(reading.Error), Of(IsReading ? default : reading.Exact()));

    public Reading? Of(Reading? reading) => Of(reading.HasValue) ? Of(reading.GetValueOrDefault()) : null;

    /// <summary>A list, item by item.</summary>
    public void List<T>(List<T> items, Func<T, T> each)
    {
        var count = Of(items.Count);
        if (IsReading) items.Clear();
        for (var k = 0; k < count; k++)
        {
            var item = each(IsReading ? default! : items[k]);
            if (IsReading) items.Add(item);
        }
    }

    /// <summary>An array as it lies in memory, byte by byte.</summary>
    public T[] OfArray<T>(ReadOnlySpan<T> values) where T : unmanaged
    {
        var length = Of(values.Length) * Unsafe.SizeOf<T>();
        if (_reader is null)
        {
            _writer!.Write(MemoryMarshal.AsBytes(values));
            return [];
        }

        return MemoryMarshal.Cast<byte, T>(_reader.ReadBytes(length)).ToArray();
    }

    private BigInteger Of(BigInteger value)
    {
        var bytes = OfArray<byte>(IsReading ? default : value.ToByteArray());
        return IsReading ? new(bytes) : value;
    }
}
