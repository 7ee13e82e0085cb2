using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace MonitorSim.Traces;

/// <summary>Cells of up to 16 characters, which nearly all are, read as one vector: no loop, so no mispredicted loop end.</summary>
internal static class ShortDigits
{
    /// <summary>The longest text that <see cref="TryRead"/> takes.</summary>
    public const int Longest = 16;

    // Entry p moves what stands before the mark at place p one place back, over the mark.
    private static readonly Vector128<byte>[] OverMark = MakeOverMark();

    /// <summary>Reads digits with at most one mark, without a sign.</summary>
    /// <param name="text">1 to 16 characters.</param>
    /// <param name="mark">The decimal mark.</param>
    /// <param name="digits">All digits as one integer.</param>
    /// <param name="fraction">How many of them stand behind the mark.</param>
    /// <returns>False where there is anything else in it, or no digit.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool TryRead(ReadOnlySpan<byte> text, byte mark, out ulong digits, out int fraction)
    {
        var length = text.Length;
        var characters = AtEnd(ref MemoryMarshal.GetReference(text), length);
        var values = characters - Vector128.Create((byte)'0');
        var isDigit = Vector128.Equals(Vector128.Min(values, Vector128.Create((byte)9)), values);
        var marks = Vector128.Equals(characters, Vector128.Create(mark)).ExtractMostSignificantBits();
        var ours = 0xFFFFu << (Longest - length) & 0xFFFF;
        values &= isDigit;
        fraction = 0;
        if ((isDigit.ExtractMostSignificantBits() | marks) != ours || (marks & (marks - 1)) != 0 || marks == ours)
        {
            digits = 0;
            return false;
        }

        if (marks != 0)
        {
            var place = BitOperations.TrailingZeroCount(marks);
            fraction = Longest - 1 - place;
            values = Vector128.ShuffleNative(values, OverMark[place]);
        }

        var (high, low) = Halves(values);
        digits = high * 100_000_000 + low;
        return true;
    }

    /// <summary>The text at the end of a vector, zeros before it, without a look at bytes outside it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector128<byte> AtEnd(ref byte start, int length)
    {
        ulong first = 0, last;
        if (length >= 8)
        {
            // Half the shift twice, because a shift by 64 would be none.
            var half = 4 * (16 - length);
            first = Load<ulong>(ref start, 0) << half << half;
            last = Load<ulong>(ref start, length - 8);
        }
        else if (length >= 4)
        {
            last = (ulong)Load<uint>(ref start, length - 4) << 32 | (ulong)Load<uint>(ref start, 0) << (8 * (8 - length));
        }
        else
        {
            // First, middle and last are all there is; where two coincide they agree.
            last = (ulong)start << (8 * (8 - length)) | (ulong)Unsafe.Add(ref start, length >> 1) << (8 * (8 - length + (length >> 1)))
                | (ulong)Unsafe.Add(ref start, length - 1) << 56;
        }

        return Vector128.Create(first, last).AsByte();
    }

    private static T Load<T>(ref byte start, int offset) where T : unmanaged => Unsafe.ReadUnaligned<T>(ref Unsafe.Add(ref start, offset));

    /// <summary>The first eight digits and the last eight as integers: pairs, then fours, then eight.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static (ulong High, ulong Low) Halves(Vector128<byte> digits)
    {
        if (!Sse41.IsSupported) return (Eight(digits.AsUInt64().ToScalar()), Eight(digits.AsUInt64().GetElement(1)));
        var pairs = Ssse3.MultiplyAddAdjacent(digits, Vector128.Create((ushort)0x010A).AsSByte());
        var fours = Sse2.MultiplyAddAdjacent(pairs, Vector128.Create(0x0001_0064).AsInt16());
        var eights = Sse2.MultiplyAddAdjacent(Sse41.PackUnsignedSaturate(fours, fours).AsInt16(), Vector128.Create(0x0001_2710).AsInt16()).AsUInt64().ToScalar();
        return ((uint)eights, eights >> 32);
    }

    // The first digit is the lowest byte.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ulong Eight(ulong bytes)
    {
        bytes = (bytes * 10 + (bytes >> 8)) & 0x00FF00FF00FF00FF;
        bytes = (bytes * 100 + (bytes >> 16)) & 0x0000FFFF0000FFFF;
        return (bytes * 10_000 + (bytes >> 32)) & 0xFFFFFFFF;
    }

    private static Vector128<byte>[] MakeOverMark()
    {
        var entries = new Vector128<byte>[Longest];
        Span<byte> places = stackalloc byte[Longest];
        for (var mark = 0; mark < Longest; mark++)
        {
            // A place beyond the vector reads as zero, on each kind of processor.
            for (var i = 0; i < Longest; i++) places[i] = i > mark ? (byte)i : i == 0 ? (byte)255 : (byte)(i - 1);
            entries[mark] = Vector128.Create<byte>(places);
        }

        return entries;
    }
}
