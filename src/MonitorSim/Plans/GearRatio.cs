using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Fractions;

namespace MonitorSim.Plans;

/// <summary>Motor turns to output turns, as written: <c>5:1</c> is a reduction by five.</summary>
public sealed record GearRatio
{
    private GearRatio(string text, Fraction motorPerOutput) => (Text, MotorPerOutput) = (text, motorPerOutput);

    /// <summary>As written.</summary>
    public string Text { get; }

    /// <summary>Motor turns for one output turn, exact.</summary>
    public Fraction MotorPerOutput { get; }

    /// <summary>Reads <c>a:b</c>, both plain numbers above 0.</summary>
    public static bool TryParse(string text, out GearRatio? ratio)
    {
        ratio = null;
        var parts = text.Split(':');
        if (parts.Length != 2) return false;
        if (!Read(parts[0], out var motor) || !Read(parts[1], out var output)) return false;
        ratio = new(text, motor / output);
        return true;
    }

    /// <summary>Reads <c>a:b</c>.</summary>
    /// <exception cref="FormatException">Not two plain numbers above 0.</exception>
    [return: NotNullIfNotNull(nameof(text))]
    public static implicit operator GearRatio?(string? text) =>
        text is null ? null : TryParse(text, out var ratio) ? ratio! : throw new FormatException($"'{text}' is no gear ratio; write motor turns to output turns, such as 5:1");

    /// <inheritdoc/>
    public override string ToString() => Text;

    private static bool Read(string text, out Fraction value) =>
        Fraction.TryParse(text.Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value) && value > Fraction.Zero;
}
