using System.Globalization;
using System.Numerics;
using FsCheck;
using FsCheck.Fluent;
using Fractions;

namespace MonitorSim.Tests.Traces;

/// <summary>Any double but NaN and the infinities: random bits, subnormals, extremes and short decimals alike.</summary>
public readonly record struct AnyDouble(double Value);

/// <summary>A decimal text of up to 25 digits and what it stands for.</summary>
public readonly record struct DecimalSample(string Text, Fraction Value);

/// <summary>Generators of texts for the reader's properties.</summary>
public static class Texts
{
    private static readonly double[] Extremes =
        [0.0, -0.0, double.Epsilon, -double.Epsilon, double.MaxValue, double.MinValue, 2.2250738585072014e-308, 2.2250738585072009e-308, 1e22, 1e23, 9007199254740993, 0.1, 0.30000000000000004];

    public static Arbitrary<AnyDouble> Doubles() => Gen.OneOf(
            Bits().Select(BitConverter.UInt64BitsToDouble),
            Bits().Select(b => BitConverter.UInt64BitsToDouble(b & 0x800FFFFFFFFFFFFF)),
            Gen.Elements(Extremes),
            Gen.Choose(-99_999_999, 99_999_999).Select(n => n / 10_000.0))
        .Where(double.IsFinite).Select(d => new AnyDouble(d)).ToArbitrary();

    public static Arbitrary<DecimalSample> Decimals() =>
        (from sign in Gen.Elements("", "", "-", "+")
         from digits in Gen.Choose(0, 9).NonEmptyListOf().Where(l => l.Count <= 25)
         from before in Gen.Choose(0, digits.Count)
         from exponent in Gen.Frequency((3, Gen.Constant((int?)null)), (1, Gen.Choose(-330, 300).Select(e => (int?)e)))
         let text = Write(sign, digits, before, exponent)
         where InRange(digits, before, exponent ?? 0)
         select new DecimalSample(text, Value(sign, digits, before, exponent ?? 0))).ToArbitrary();

    private static Gen<ulong> Bits() =>
        from a in Gen.Choose(0, 0xFFFF)
        from b in Gen.Choose(0, 0xFFFF)
        from c in Gen.Choose(0, 0xFFFF)
        from d in Gen.Choose(0, 0xFFFF)
        select ((ulong)a << 48) | ((ulong)b << 32) | ((ulong)c << 16) | (uint)d;

    private static string Write(string sign, IEnumerable<int> digits, int before, int? exponent)
    {
        var all = string.Concat(digits.Select(d => d.ToString(CultureInfo.InvariantCulture)));
        var mark = before == all.Length && before % 2 == 0 ? "" : ".";
        return sign + all[..before] + mark + all[before..] + (exponent is { } e ? (e % 2 == 0 ? "e" : "E") + e.ToString(CultureInfo.InvariantCulture) : "");
    }

    // What a double does not hold is an error, tested elsewhere.
    private static bool InRange(IList<int> digits, int before, int exponent)
    {
        var first = digits.IndexOf(digits.FirstOrDefault(d => d != 0));
        return first < 0 || before - first + exponent is > -330 and < 308;
    }

    private static Fraction Value(string sign, IList<int> digits, int before, int exponent)
    {
        var number = digits.Aggregate(BigInteger.Zero, (n, d) => n * 10 + d);
        var power = exponent - (digits.Count - before);
        var value = power >= 0 ? new Fraction(number * BigInteger.Pow(10, power)) : new Fraction(number, BigInteger.Pow(10, -power));
        return sign == "-" ? -value : value;
    }
}
