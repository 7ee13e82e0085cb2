using Fractions;

namespace MonitorSim.Channels;

/// <summary>What a measure yields at one cycle: ± one channel value ± another + a multiple of a constant. Every measure of every function
/// has this form, so that comparing needs to be exact in one place only: here.</summary>
/// <remarks>Comparing decides in doubles, with a bound on their error, and looks a second time with exact fractions only where the two
/// sides are closer than that bound. A value that is not finite always gets the second look.</remarks>
internal readonly struct Reading
{
    private readonly Channel? _a, _b;
    private readonly Constant? _constant;
    private readonly int _i, _j;
    private readonly long _multiple;
    private readonly sbyte _signA, _signB;

    private Reading(Channel? a, int i, sbyte signA, Channel? b, int j, sbyte signB, Constant? constant, long multiple, double value, double error)
    {
        (_a, _i, _signA, _b, _j, _signB, _constant, _multiple) = (a, i, signA, b, j, signB, constant, multiple);
        (Value, Error) = (value, error);
    }

    /// <summary>The value in SI, at most <see cref="Error"/> from the exact one.</summary>
    public double Value { get; }

    public double Error { get; }

    public static Reading Of(Channel channel, int sample) =>
        new(channel, sample, 1, null, 0, 0, null, 0, channel.Value(sample), channel.Error(sample));

    /// <summary>A duration as a quantity of its own, in seconds.</summary>
    public static Reading OfDuration(long nanoseconds) => default(Reading).Plus(Constant.SecondsPerNanosecond, nanoseconds);

    /// <summary>A value that no longer belongs to a recording.</summary>
    public static Reading Held(double value, double error, Fraction exact) => Of(new HeldValue(value, error, exact), 0);

    /// <summary>The same without the recording that it was read from.</summary>
    public Reading Held() => _a is HeldValue && _b is null && _constant is null ? this : Held(Value, Error, Exact());

    public Reading Minus(Channel channel, int sample) => With(channel, sample, -1);

    /// <summary>Subtracts a reading of a single channel.</summary>
    public Reading Minus(in Reading other) => With(other._a!, other._i, (sbyte)-other._signA);

    public Reading Plus(Constant constant, long multiple)
    {
        var term = multiple * constant.Value;
        return new(_a, _i, _signA, _b, _j, _signB, constant, multiple, Value + term,
            Error + (Math.Abs(Value) + 4 * Math.Abs(term)) * Rounding.Unit + double.Epsilon);
    }

    public Reading Negated() => new(_a, _i, (sbyte)-_signA, _b, _j, (sbyte)-_signB, _constant, -_multiple, -Value, Error);

    public Reading Magnitude() => Sign(this) < 0 ? Negated() : this;

    public static Reading Larger(in Reading x, in Reading y) => Compare(x, y) >= 0 ? x : y;

    public static Reading Smaller(in Reading x, in Reading y) => Compare(x, y) <= 0 ? x : y;

    /// <summary>-1, 0 or 1, exact.</summary>
    public static int Sign(in Reading x) =>
        x.Value > x.Error ? 1 : x.Value < -x.Error ? -1 : x.Exact().Numerator.Sign;

    /// <summary>-1, 0 or 1 as x is less than, equal to or more than the limit, exact.</summary>
    public static int Compare(in Reading x, Constant limit)
    {
        var difference = x.Value - limit.Value;
        var bound = x.Error + limit.Error + (Math.Abs(x.Value) + Math.Abs(limit.Value)) * Rounding.Unit;
        return difference > bound ? 1 : difference < -bound ? -1 : x.Exact().CompareTo(limit.Exact);
    }

    /// <summary>-1, 0 or 1 as x is less than, equal to or more than y, exact.</summary>
    public static int Compare(in Reading x, in Reading y)
    {
        var difference = x.Value - y.Value;
        var bound = x.Error + y.Error + (Math.Abs(x.Value) + Math.Abs(y.Value)) * Rounding.Unit;
        if (difference > bound) return 1;
        if (difference < -bound) return -1;
        return x.IsSameAs(y) ? 0 : x.Exact().CompareTo(y.Exact());
    }

    /// <summary>The exact value behind <see cref="Value"/>.</summary>
    public Fraction Exact()
    {
        var sum = Fraction.Zero;
        if (_a is not null) sum += _signA < 0 ? -_a.Exact(_i) : _a.Exact(_i);
        if (_b is not null) sum += _signB < 0 ? -_b.Exact(_j) : _b.Exact(_j);
        if (_constant is not null) sum += _multiple * _constant.Exact;
        return sum;
    }

    private Reading With(Channel channel, int sample, sbyte sign)
    {
        var value = sign * channel.Value(sample);
        return new(_a, _i, _signA, channel, sample, sign, _constant, _multiple, Value + value,
            Error + channel.Error(sample) + (Math.Abs(Value) + Math.Abs(value)) * Rounding.Unit);
    }

    private bool IsSameAs(in Reading y) =>
        ReferenceEquals(_a, y._a) && _i == y._i && _signA == y._signA && ReferenceEquals(_b, y._b) && _j == y._j && _signB == y._signB
        && ReferenceEquals(_constant, y._constant) && _multiple == y._multiple;
}
