using Fractions;

namespace MonitorSim.Channels;

/// <summary>A window of positions from lower to upper. On a modulo axis it may wrap, and a position stands for the representative that is
/// nearest to its middle (of two equally near ones the lower).</summary>
internal sealed class ModuloWindow
{
    private readonly Constant? _modulo;
    private readonly Constant _high, _low;

    public ModuloWindow(Fraction lower, Fraction upper, Constant? modulo)
    {
        _modulo = modulo;
        var written = upper;
        if (modulo is not null)
            while (upper < lower) upper += modulo.Exact;
        (Lower, Upper, UpperAsWritten) = (new(lower), new(upper), written);
        var middle = (lower + upper) / 2;
        var half = (modulo?.Exact ?? Fraction.Zero) / 2;
        (_low, _high) = (new(middle - half), new(middle + half));
    }

    public Constant Lower { get; }

    /// <summary>Not less than <see cref="Lower"/>: where the window wraps, one turn further.</summary>
    public Constant Upper { get; }

    /// <summary>The upper end as the plan has it.</summary>
    public Fraction UpperAsWritten { get; }

    /// <summary>The position that is compared with the window: within [middle - modulo/2, middle + modulo/2).</summary>
    public Reading Representative(Channel position, int sample)
    {
        var reading = Reading.Of(position, sample);
        if (_modulo is null) return reading;
        var turns = (long)Math.Floor((_high.Value - reading.Value) / _modulo.Value);
        while (Reading.Compare(reading.Plus(_modulo, turns), _high) >= 0) turns--;
        while (Reading.Compare(reading.Plus(_modulo, turns), _low) < 0) turns++;
        return reading.Plus(_modulo, turns);
    }
}
