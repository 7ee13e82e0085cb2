namespace MonitorSim.Channels;

/// <summary>The numbers of a column as doubles that compare just as the exact quantities do: carrying a column to SI keeps its order, so that no rounding and no
/// second look come in. NaN where there is no value.</summary>
internal readonly struct Ranking
{
    private const long SignBit = long.MinValue;
    private readonly Numbers _raw;
    private readonly long _kept, _flipped;

    /// <param name="raw">Numbers that are the shortest decimals of their doubles.</param>
    /// <param name="magnitude">Whether their magnitudes count.</param>
    public Ranking(Numbers raw, bool magnitude) : this(raw, magnitude ? ~SignBit : -1, 0) { }

    private Ranking(Numbers raw, long kept, long flipped) => (_raw, _kept, _flipped) = (raw, kept, flipped);

    /// <summary>The rank of a sample's value: it is worth something only beside another of the same ranking.</summary>
    public double this[int sample] => BitConverter.Int64BitsToDouble((BitConverter.DoubleToInt64Bits(_raw[sample]) & _kept) ^ _flipped);

    /// <summary>The ranking of the negated quantity.</summary>
    public Ranking Reversed() => new(_raw, _kept, _flipped ^ SignBit);
}
