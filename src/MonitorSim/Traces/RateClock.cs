using System.Numerics;
using Fractions;

namespace MonitorSim.Traces;

/// <summary>The times of samples at a rate: t_k = k / rate in nanoseconds, rounded to the nearest, halves up. Quotient and
/// remainder go from sample to sample, so nothing accumulates.</summary>
internal sealed class RateClock
{
    private readonly UInt128 _denominator;
    private readonly UInt128 _stepRemainder;
    private readonly long _step;
    private UInt128 _remainder;
    private long _next;

    /// <param name="rate">Samples a second, more than 0 and at most 10^9.</param>
    /// <param name="file">What problems name.</param>
    /// <exception cref="InputException">The rate is out of that range, or no number of reasonable size.</exception>
    public RateClock(Fraction rate, string file)
    {
        if (rate <= Fraction.Zero) throw new InputException(new Problem(file, $"a rate of {rate} Hz", "a rate is more than 0 Hz"));
        if (rate > new Fraction(1_000_000_000L))
            throw new InputException(new Problem(file, "a rate above 1 GHz", "time has a resolution of 1 ns"));

        // round(x) = floor((2·k·10^9·q + p) / 2p) with rate = p/q.
        var p = BigInteger.Abs(rate.Numerator);
        var twice = 2 * BigInteger.Abs(rate.Denominator) * 1_000_000_000;
        var step = BigInteger.DivRem(twice, 2 * p, out var remainder);
        if (step > long.MaxValue / 4 || p > (BigInteger)UInt128.MaxValue / 8)
            throw new InputException(new Problem(file, $"a rate of {rate} Hz", "give a rate such as 1 kHz"));
        (_denominator, _step, _stepRemainder, _remainder) = ((UInt128)(2 * p), (long)step, (UInt128)remainder, (UInt128)p);
    }

    /// <summary>The time of the next sample; the first is 0.</summary>
    /// <exception cref="OverflowException">More than 292 years.</exception>
    public long Next()
    {
        var now = _next;
        _remainder += _stepRemainder;
        _next = checked(_next + _step);
        if (_remainder >= _denominator)
        {
            _remainder -= _denominator;
            _next++;
        }

        return now;
    }
}
